package candlebench.station.link.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.protocol.Candidate;
import candlebench.protocol.LineSettings;
import candlebench.protocol.LineSettings.Parity;
import candlebench.protocol.Recognition.Finding;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.simulator.LineFaults;
import candlebench.simulator.Pan;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.SendMode;
import candlebench.simulator.VirtualLine;
import candlebench.simulator.VirtualScale;
import candlebench.station.link.ScaleUri;
import candlebench.station.link.find.Found.Sending;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.Set;
import java.util.function.LongConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A search in virtual time, for virtual scales on lines worked out bit by bit. */
class SweepTest {
  private static final long SECOND = 1_000_000_000L;
  private static final long TICK = 20_000_000L;
  /** Formats that may name a unit, spoken here by scales that do not. */
  private static final Set<String> UNIT_LEFT_OUT = Set.of("nci/8213");

  private static final long SEED = 20261125;

  static Stream<Arguments> lines() {
    return ScaleFormats.all().stream()
        .flatMap(format -> format.lines().stream().map(line -> Arguments.of(format.id(), line)));
  }

  static Stream<Arguments> linesThatCanBeAsked() {
    return lines()
        .filter(each ->
            ScaleFormats.of((String) each.get()[0]).command(ScaleCommand.SEND).isPresent());
  }

  @ParameterizedTest
  @MethodSource("lines")
  void a_scale_that_sends_by_itself_is_found_at_any_of_its_settings(String id, LineSettings line) {
    Bench bench = new Bench(ScaleFormats.of(id), line, SendMode.CONTINUOUS);
    Found found = bench.search();
    assertFound(found, id, line, Sending.BY_ITSELF);
    assertThat(bench.seconds()).isLessThan(20);
  }

  @ParameterizedTest
  @MethodSource("linesThatCanBeAsked")
  void a_scale_that_sends_when_asked_is_asked_and_not_tared(String id, LineSettings line) {
    Bench bench = new Bench(ScaleFormats.of(id), line, SendMode.ON_REQUEST);
    Found found = bench.search();
    assertFound(found, id, line, Sending.WHEN_ASKED);
    assertThat(bench.seconds()).isLessThan(20);
    String shown = bench.scale.display().orElseThrow().number();
    assertThat(Double.parseDouble(shown)).isCloseTo(450, within(0.5));
  }

  @Test
  void a_scale_that_sends_a_load_once_is_found_when_the_maker_puts_things_on() {
    ScaleFormat format = ScaleFormats.of("and");
    Bench bench = new Bench(format, LineSettings.of("2400-7E1"), SendMode.ONCE_STABLE);
    bench.deaf = true;
    bench.hands = nanos -> {
      if (nanos % (4 * SECOND) == 0) bench.pan.putOn("cup", Mass.ofGrams("120"));
      if (nanos % (4 * SECOND) == 2 * SECOND && bench.pan.holds("cup")) bench.pan.liftOff("cup");
    };
    Found found = bench.search();
    assertFound(found, "and", LineSettings.of("2400-7E1"), Sending.NOW_AND_THEN);
  }

  @Test
  void a_silent_port_is_said_to_be_silent_once_the_maker_has_had_time() {
    Bench bench =
        new Bench(ScaleFormats.of("and"), LineSettings.of("9600-8N1"), SendMode.ON_PRINT_KEY);
    bench.deaf = true;
    Found found = bench.search();
    assertThat(found.sending()).isEqualTo(Sending.NEVER);
    assertThat(found.heard().recognition().finding()).isEqualTo(Finding.TOO_LITTLE);
    assertThat(bench.seconds()).isBetween(15.0, 35.0);
  }

  @Test
  void readable_lines_of_an_unknown_scale_are_no_matter_of_speed() {
    Found found = search(nanos -> nanos % (SECOND / 10) == 0
        ? "<W>12.34</W><U>g</U>\r\n".getBytes(StandardCharsets.US_ASCII)
        : new byte[0]);
    assertThat(found.heard().recognition().finding()).isEqualTo(Finding.UNKNOWN_FORMAT);
    assertThat(found.line()).isEqualTo(LineSettings.of("9600-8N1"));
  }

  @Test
  void noise_at_every_speed_is_given_no_name() {
    Random random = new Random(SEED);
    Found found = search(nanos -> {
      byte[] noise = new byte[8];
      random.nextBytes(noise);
      return noise;
    });
    assertThat(found.heard().recognition().finding()).isEqualTo(Finding.WRONG_SPEED);
    assertThat(found.heard().recognition().fitting()).isEmpty();
  }

  private static void assertFound(Found found, String id, LineSettings line, Sending sending) {
    assertThat(found.heard().recognition().fitting().stream()
            .map(each -> each.format().id()))
        .as(found.heard().recognition().words())
        .contains(id);
    assertThat(found.sending()).isEqualTo(sending);
    assertThat(found.line()).isEqualTo(heardBest(line, sending));
    ScaleFormat format = ScaleFormats.of(id);
    Candidate candidate = found.heard().recognition().fitting().stream()
        .filter(each -> each.format() == format)
        .findFirst()
        .orElseThrow();
    assertThat(Found.needsUnit(candidate))
        .as(id)
        .isEqualTo(format.unitIsASetting() || UNIT_LEFT_OUT.contains(id));
    String unit = format.unitIsASetting() ? "&unit=g" : "";
    assertThat(ScaleUri.of(found.uri("/dev/serial/by id/x?y", format) + unit)
            .format()
            .id())
        .isEqualTo(id);
  }

  /**
   * What is sent with eight bits and parity is heard as well without; only a scale that is asked needs it. A second stop bit is a pause
   * like any other.
   */
  private static LineSettings heardBest(LineSettings line, Sending sending) {
    boolean parityIsHeard = line.dataBits() == 7 || sending == Sending.WHEN_ASKED;
    if (!parityIsHeard) return new LineSettings(line.baud(), 8, Parity.NONE, 1);
    int stopBits = line.parity() == Parity.NONE ? line.stopBits() : 1;
    return new LineSettings(line.baud(), line.dataBits(), line.parity(), stopBits);
  }

  private interface Source {
    byte[] sent(long nanos);
  }

  /** Searches a port that gives the same bytes at any speed. */
  private static Found search(Source source) {
    Sweep sweep = new Sweep(ScaleFormats.all());
    long nanos = 0;
    while (sweep.found().isEmpty()) {
      sweep.opened(nanos);
      while (sweep.isOpen()) {
        nanos += TICK;
        byte[] sent = source.sent(nanos);
        sweep.heard(sent, sent.length, nanos);
      }
      assertThat(nanos).isLessThan(120 * SECOND);
    }
    return sweep.found().get();
  }

  /** A virtual scale with 450 g on it and a line to it that is opened in the middle of a frame each time. */
  private static final class Bench {
    private final Pan pan = new Pan();
    private final LineSettings own;
    private final VirtualScale scale;
    private final boolean sendsByItself;
    private final Random random = new Random(SEED);
    private LongConsumer hands = nanos -> {};
    private boolean deaf;
    private long nanos;
    private long began;

    Bench(ScaleFormat format, LineSettings own, SendMode mode) {
      this.own = own;
      this.sendsByItself = mode == SendMode.CONTINUOUS;
      ScaleTraits traits = ScaleTraits.benchThreeKilograms().with(mode).with(own);
      scale =
          new VirtualScale(traits, ScaleQuirks.none(), format, format.layouts().get(0), pan, SEED);
      pan.putOn("pot", Mass.ofGrams("450"));
    }

    double seconds() {
      return (nanos - began) / 1e9;
    }

    Found search() {
      Sweep sweep = new Sweep(ScaleFormats.all());
      advance(6 * SECOND, new VirtualLine(LineFaults.none(), SEED));
      began = nanos;
      while (sweep.found().isEmpty()) {
        LineSettings host = sweep.line();
        VirtualLine toHost = new VirtualLine(LineFaults.none(), own, host, SEED);
        VirtualLine toScale = new VirtualLine(LineFaults.none(), host, own, SEED);
        int missed = sendsByItself ? random.nextInt(12) : 0;
        sweep.opened(nanos);
        while (sweep.isOpen()) {
          sweep.ask(nanos).ifPresent(asked -> toScale.bytes(nanos, asked));
          if (!deaf) toScale.deliver(nanos, (at, bytes) -> scale.receive(bytes));
          byte[] heard = advance(nanos + TICK, toHost);
          int cut = Math.min(missed, heard.length);
          missed -= cut;
          sweep.heard(Arrays.copyOfRange(heard, cut, heard.length), heard.length - cut, nanos);
        }
        assertThat(nanos).isLessThan(120 * SECOND);
      }
      return sweep.found().get();
    }

    private byte[] advance(long until, VirtualLine toHost) {
      ByteArrayOutputStream heard = new ByteArrayOutputStream();
      while (nanos < until) {
        nanos += TICK;
        scale.advanceTo(nanos, toHost);
        toHost.deliver(nanos, (at, bytes) -> heard.writeBytes(bytes));
        hands.accept(nanos);
      }
      return heard.toByteArray();
    }
  }
}
