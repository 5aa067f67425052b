package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The virtual scale speaks every format of the list through every layout that has a word for a live weight. */
class EveryFormatTest {
  private static final ScaleTraits BENCH = ScaleTraits.benchThreeKilograms();
  private static final ScaleTraits QUIET =
      BENCH.with(BENCH.cell().withNoise(0.005).withoutDrift());

  static Stream<Arguments> layouts() {
    return ScaleFormats.all().stream()
        .flatMap(format ->
            format.layouts().stream().map(layout -> Arguments.of(format.id(), layout.name())));
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("layouts")
  void what_it_says_is_understood_and_true(String id, String name) {
    ScaleFormat format = ScaleFormats.of(id);
    Pan pan = new Pan();
    VirtualScale scale = scale(format, layout(format, name), pan);
    pan.putOn("pot", Mass.ofGrams("450.3"));
    List<Decoded> heard = during(scale, format, 8);
    assertThat(heard).noneMatch(each -> each instanceof Decoded.Refused);
    for (Decoded each : heard.subList(Math.min(heard.size(), 60), heard.size()))
      if (each instanceof Weighed weighed)
        assertThat(weighed.indication().mass(MassUnit.GRAM).roughGrams())
            .isCloseTo(450.3, within(0.11));
    pan.add(Mass.ofGrams("3000"));
    List<Decoded> over = during(scale, format, 8);
    assertThat(over.subList(Math.min(over.size(), 60), over.size()))
        .noneMatch(each -> each instanceof Weighed);
    assertThat(over).noneMatch(each -> each instanceof Decoded.Refused);
  }

  /** At most the layouts for acknowledgements, remarks and the like may be silent; each format has one that says weights. */
  @Test
  void every_format_has_a_layout_in_which_a_live_weight_can_be_sent() {
    for (ScaleFormat format : ScaleFormats.all()) {
      boolean speaks = false;
      for (WireLayout layout : format.layouts()) {
        Pan pan = new Pan();
        VirtualScale scale = scale(format, layout, pan);
        speaks |= during(scale, format, 3).stream().anyMatch(each -> each instanceof Weighed);
      }
      assertThat(speaks).as(format.id()).isTrue();
    }
  }

  static Stream<String> formatsThatTare() {
    return ScaleFormats.all().stream()
        .filter(format -> format.command(ScaleCommand.TARE).isPresent())
        .map(ScaleFormat::id);
  }

  @ParameterizedTest
  @MethodSource("formatsThatTare")
  void its_own_tare_command_is_obeyed(String id) {
    ScaleFormat format = ScaleFormats.of(id);
    Pan pan = new Pan();
    VirtualScale scale = scale(format, format.layouts().get(0), pan);
    pan.putOn("pot", Mass.ofGrams("450"));
    during(scale, format, 6);
    assertThat(scale.display().orElseThrow().number()).isEqualTo("450.0");
    scale.receive(format.command(ScaleCommand.TARE).orElseThrow());
    during(scale, format, 2);
    assertThat(scale.display().orElseThrow().number()).isEqualTo("0.0");
    assertThat(scale.commandsNotUnderstood()).isZero();
  }

  private static VirtualScale scale(ScaleFormat format, WireLayout layout, Pan pan) {
    return new VirtualScale(QUIET, ScaleQuirks.none(), format, layout, pan, 1);
  }

  private static WireLayout layout(ScaleFormat format, String name) {
    return format.layouts().stream()
        .filter(layout -> layout.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static List<Decoded> during(VirtualScale scale, ScaleFormat format, int seconds) {
    List<Decoded> heard = new ArrayList<>();
    Framer framer = format.newFramer();
    scale.advanceTo(
        scale.nanos() + seconds * 1_000_000_000L,
        (nanos, bytes) -> framer.feed(
            bytes,
            bytes.length,
            new Stamp(Instant.EPOCH, nanos),
            frame -> heard.add(format.decode(frame))));
    return heard;
  }
}
