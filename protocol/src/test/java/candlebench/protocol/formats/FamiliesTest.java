package candlebench.protocol.formats;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.EscapedBytes;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Several formats under one name, and streams read by a format that is not quite theirs. */
class FamiliesTest {

  @Test
  void what_two_layouts_read_differently_is_refused_with_their_names() {
    assertThat(said("yaohua", "=000.3000"))
        .singleElement()
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> assertThat(refused.refusal().words())
                .contains("yaohua/eq-rev and yaohua/eq-fwd", "name the one"));
  }

  @Test
  void what_only_one_layout_understands_is_read_by_it() {
    assertThat(numbers("yaohua", "=-0001.00=00.1000-\\x02+00123431C\\x03wn-0000.1kg\\r\\n"))
        .containsExactly("-1.00", "-1.00", "1.234", "-0.1 kg");
    assertThat(numbers("cas", "ST,GS,1\\x8d,000013.5\\rkg\\r\\n000013.5\\r\\nwn00015.000kg\\r\\n"))
        .containsExactly("13.5 kg", "13.5", "15.000 kg");
    assertThat(numbers("kern", "      123.45 g  \\r\\nN+012.3456\\r\\nST,GS    20.7g  \\r\\n"))
        .containsExactly("123.45 g", "12.3456", "20.7 g");
  }

  @Test
  void a_wrong_checksum_is_called_so_though_other_layouts_know_less() {
    assertThat(said("yaohua", "\\x02+00123431D\\x03"))
        .singleElement()
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> assertThat(refused.refusal().reason()).hasToString("WRONG_CHECKSUM"));
  }

  @Test
  void a_family_asks_as_its_usual_member_does() {
    assertThat(ScaleFormats.of("cas").command(ScaleCommand.SEND).map(EscapedBytes::text))
        .contains("01RW\\r\\n");
    assertThat(ScaleFormats.of("cas/pds").command(ScaleCommand.SEND).map(EscapedBytes::text))
        .contains("WT\\r\\n");
    assertThat(ScaleFormats.of("kern").command(ScaleCommand.SEND)).isEmpty();
  }

  @Test
  void no_unit_is_a_setting_only_where_no_member_ever_names_one() {
    Stream<ScaleFormat> unitless = Stream.concat(
            ScaleFormats.all().stream(), ScaleFormats.families().stream())
        .filter(ScaleFormat::unitIsASetting);
    assertThat(unitless.map(ScaleFormat::id))
        .containsExactlyInAnyOrder(
            "cas/10", "kern/gn", "yaohua/12", "yaohua/cmd", "yaohua/eq-rev", "yaohua/eq-fwd");
    assertThat(ScaleFormats.of("kern/18").unitMayBeBorrowed()).isTrue();
    assertThat(ScaleFormats.of("kern").unitMayBeBorrowed()).isTrue();
  }

  @Test
  void a_checksum_behind_every_frame_is_left_over_where_none_is_expected() {
    String stream = "\\x02+0!001234000000\\r+".repeat(3);
    assertThat(numbers("toledo", stream)).containsExactly("123.4 g", "123.4 g", "123.4 g");
    assertThat(said("toledo", stream).stream().filter(each -> each instanceof Refused))
        .hasSize(3);
    assertThat(numbers("toledo/short", stream)).isEmpty();
    assertThat(numbers("toledo/chk", "\\x02+0!001234000000\\r".repeat(3))).isEmpty();
  }

  private static List<String> numbers(String id, String stream) {
    return said(id, stream).stream()
        .filter(each -> each instanceof Weighed)
        .map(each -> ((Weighed) each).indication().toString())
        .toList();
  }

  private static List<Decoded> said(String id, String stream) {
    ScaleFormat format = ScaleFormats.of(id);
    Framer framer = format.newFramer();
    List<Frame> frames = new ArrayList<>();
    byte[] bytes = EscapedBytes.bytes(stream);
    framer.feed(bytes, bytes.length, Framer.NEVER, frames::add);
    framer.rest().ifPresent(frames::add);
    return frames.stream().map(format::decode).toList();
  }
}
