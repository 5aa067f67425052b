package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Recognition.Finding;
import candlebench.protocol.WireLayout.Shown;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecognitionTest {
  private static final long SEED = 20261125;
  private static final LineSettings LISTENING = LineSettings.of("9600-8N1");

  static Stream<Arguments> layouts() {
    return ScaleFormats.all().stream()
        .flatMap(format -> format.layouts().stream()
            .filter(layout -> !pour(layout).isEmpty())
            .map(layout -> Arguments.of(format.id(), layout.name(), layout)));
  }

  static Stream<Arguments> sevenBitLayouts() {
    return layouts()
        .filter(each -> ScaleFormats.of((String) each.get()[0]).lines().stream()
            .anyMatch(line -> line.dataBits() == 7));
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("layouts")
  void a_pour_sent_in_any_layout_names_its_format_or_those_that_look_alike(
      String id, String name, WireLayout layout) {
    Recognition recognition = recognise(joined(pour(layout)));
    assertThat(recognition.finding())
        .as(recognition.words())
        .isIn(Finding.RECOGNISED, Finding.SEVERAL_REMAIN);
    assertThat(ids(recognition)).as(recognition.words()).contains(id);
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("sevenBitLayouts")
  void seven_data_bits_heard_as_eight_are_noticed(String id, String name, WireLayout layout) {
    for (String parity : List.of("7E1", "7O1", "7N2")) {
      LineSettings sender = LineSettings.of("9600-" + parity);
      byte[] bytes = SerialLine.heard(pour(layout), sender, LISTENING);
      Recognition recognition = recognise(bytes);
      assertThat(ids(recognition)).as(parity + " " + recognition.words()).contains(id);
      assertThat(new Heard(LISTENING, recognition).suggested()).isEqualTo(sender);
    }
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("layouts")
  void a_wrong_speed_is_told_from_a_wrong_format(String id, String name, WireLayout layout) {
    for (String sender : List.of("1200-7O1", "2400-7E1", "4800-8N1", "9600-8N1", "19200-8N1")) {
      for (String receiver : List.of("1200-8N1", "2400-8N1", "4800-8N1", "9600-8N1", "19200-8N1")) {
        LineSettings from = LineSettings.of(sender);
        LineSettings at = LineSettings.of(receiver);
        if (from.baud() == at.baud()) continue;
        Recognition recognition = recognise(SerialLine.heard(pour(layout), from, at));
        assertThat(recognition.finding())
            .as(
                "sent at %s, heard at %s: %s %s",
                sender,
                receiver,
                recognition.words(),
                EscapedBytes.text(SerialLine.heard(pour(layout), from, at)))
            .isEqualTo(Finding.WRONG_SPEED);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "weight 12.34 and more to come\r\n", // a person's words
        "+007.12/3 X S\r\n", // invented: a digit behind a slash
        "     N       0.3746 g   \r\n", // a mode letter in front, as printed by a balance
        "<W>12.34</W><U>g</U>\r\n",
        "{\"w\":12.34,\"u\":\"g\"}\r\n",
        "12.34;g;stable\r\n",
        "0001234\r\n",
        "T=12.34g N=10.00g\r\n"
      })
  void lines_of_no_format_we_have_stay_unknown(String line) {
    Recognition recognition = recognise(line.repeat(40).getBytes(StandardCharsets.US_ASCII));
    assertThat(recognition.finding()).as(recognition.words()).isEqualTo(Finding.UNKNOWN_FORMAT);
    assertThat(recognition.fitting()).isEmpty();
  }

  @Test
  void a_printed_ticket_is_not_taken_for_a_stream_of_weights() {
    String ticket =
        "*LOT 17*\r\n2026-11-25\r\n17:19:26\r\n  0.00 kg\r\n  1.94 kg\r\n0\r\n  1.94 kg\r\n    0 pcs\r\n \r\nE\r\n=END=\r\n";
    Recognition recognition = recognise(ticket.getBytes(StandardCharsets.US_ASCII));
    assertThat(recognition.finding()).as(recognition.words()).isEqualTo(Finding.UNKNOWN_FORMAT);
  }

  @Test
  void noise_is_never_given_a_name() {
    Random random = new Random(SEED);
    for (int round = 0; round < 200; round++) {
      byte[] noise = new byte[40 + random.nextInt(2000)];
      random.nextBytes(noise);
      Recognition recognition = recognise(noise);
      assertThat(recognition.finding())
          .as("seed %d round %d: %s", SEED, round, recognition.words())
          .isEqualTo(Finding.WRONG_SPEED);
    }
  }

  @Test
  void silence_is_too_little() {
    assertThat(recognise(new byte[0]).finding()).isEqualTo(Finding.TOO_LITTLE);
    assertThat(recognise(new byte[] {'S', 'T'}).words()).contains("Press the print key");
  }

  @Test
  void answers_without_a_weight_name_nothing() {
    Recognition recognition =
        recognise("S I\r\nES\r\nZ A\r\n".repeat(5).getBytes(StandardCharsets.US_ASCII));
    assertThat(recognition.finding()).isEqualTo(Finding.UNKNOWN_FORMAT);
  }

  @Test
  void a_capture_that_begins_and_ends_within_a_line_is_recognised() {
    byte[] stream = joined(pour(layout("ohaus", "d3-short")));
    Recognition recognition = recognise(Arrays.copyOfRange(stream, 12, stream.length - 5));
    assertThat(recognition.finding()).isEqualTo(Finding.RECOGNISED);
    assertThat(ids(recognition)).containsExactly("ohaus");
    assertThat(recognition.words()).contains("sure").doesNotContain("against it");
  }

  @Test
  void what_was_not_understood_speaks_against_a_format() {
    List<byte[]> frames = new ArrayList<>(pour(layout("sics", "reply")));
    frames.add(5, "??\r\n".getBytes(StandardCharsets.US_ASCII));
    Recognition recognition = recognise(joined(frames));
    assertThat(ids(recognition)).containsExactly("sics");
    assertThat(recognition.words()).contains("likely").contains("against it: 4 bytes");
  }

  @Test
  void one_line_only_makes_a_format_possible() {
    Recognition recognition = recognise("ST,+00123.45  g\r\n".getBytes(StandardCharsets.US_ASCII));
    assertThat(ids(recognition)).containsExactly("and");
    assertThat(recognition.words()).contains("possible, from 1 weight");
  }

  @Test
  void formats_whose_lines_are_the_same_are_both_named_with_what_tells_them_apart() {
    Recognition recognition =
        recognise("+   123.45 g  \r\n".repeat(20).getBytes(StandardCharsets.US_ASCII));
    assertThat(recognition.finding()).isEqualTo(Finding.SEVERAL_REMAIN);
    assertThat(ids(recognition)).startsWith("sbi", "and");
    assertThat(recognition.words()).contains("empty the pan and press zero");
  }

  @Test
  void the_plan_listens_once_at_each_speed_where_eight_bits_hear_seven() {
    List<LineSettings> plan = Heard.plan(ScaleFormats.all());
    assertThat(plan).doesNotHaveDuplicates().startsWith(LISTENING);
    assertThat(plan)
        .contains(
            LineSettings.of("2400-8N1"), LineSettings.of("1200-8N1"), LineSettings.of("9600-8O1"));
    assertThat(plan).noneMatch(line -> line.toString().endsWith("7E1"));
  }

  @Test
  void of_several_speeds_the_one_that_names_the_format_is_best() {
    LineSettings sender = LineSettings.of("2400-7E1");
    List<Heard> heard = Heard.plan(ScaleFormats.all()).stream()
        .map(at ->
            new Heard(at, recognise(SerialLine.heard(pour(layout("and", "standard")), sender, at))))
        .toList();
    Heard best = Heard.best(heard).orElseThrow();
    assertThat(ids(best.recognition())).containsExactly("and");
    assertThat(best.suggested()).isEqualTo(sender);
  }

  private static Recognition recognise(byte[] bytes) {
    return Recognition.of(bytes, ScaleFormats.all());
  }

  private static List<String> ids(Recognition recognition) {
    return recognition.fitting().stream().map(each -> each.format().id()).toList();
  }

  private static WireLayout layout(String id, String name) {
    return ScaleFormats.of(id).layouts().stream()
        .filter(layout -> layout.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** A tare, a pour and a rest, as this layout sends them; empty if it sends no weights. */
  private static List<byte[]> pour(WireLayout layout) {
    Random random = new Random(SEED);
    List<byte[]> frames = new ArrayList<>();
    for (int at = 0; at < 40; at++) {
      boolean resting = at < 8 || at > 30;
      BigDecimal grams = BigDecimal.valueOf(
          at < 8 ? 0 : Math.min(at, 30) * 173L + (resting ? 0 : random.nextInt(9)), 2);
      Stability stability = resting ? Stability.STABLE : Stability.UNSTABLE;
      sent(layout, grams.toPlainString(), stability).ifPresent(frames::add);
    }
    return frames;
  }

  /** The first way in which the layout can say it: with unit and basis, or as much of them as it sends. */
  private static Optional<byte[]> sent(WireLayout layout, String number, Stability stability) {
    for (Stability said : List.of(stability, Stability.UNSTATED))
      for (Basis basis : List.of(Basis.NET, Basis.UNSTATED, Basis.GROSS))
        for (MassUnit unit : List.of(MassUnit.GRAM, MassUnit.KILOGRAM, MassUnit.OUNCE))
          for (Indication shown :
              List.of(Indication.of(number, unit), Indication.withoutUnit(number))) {
            Optional<byte[]> frame =
                layout.encode(new Weighed(shown, basis, said), new Shown(unit, 2, 0));
            if (frame.isPresent()) return frame;
          }
    return Optional.empty();
  }

  private static byte[] joined(List<byte[]> frames) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    frames.forEach(joined::writeBytes);
    return joined.toByteArray();
  }
}
