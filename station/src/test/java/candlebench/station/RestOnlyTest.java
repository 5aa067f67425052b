package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import candlebench.shared.Stamp;
import candlebench.simulator.Pan;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.SendMode;
import candlebench.simulator.VirtualScale;
import candlebench.station.journal.MemoryJournal;
import candlebench.station.journal.Purpose;
import candlebench.station.link.LinkState;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RestOnlyTest {
  private static final long SECOND = 1_000_000_000L;

  private final RestOnly restOnly = new RestOnly();

  @Test
  void a_scale_that_speaks_up_now_and_then_and_never_moves_sends_only_at_rest() {
    speakUp(stable("120.0"));
    assertThat(restOnly.holds()).as("the first silence may be sleep").isFalse();
    speakUp(stable("120.1"));
    assertThat(restOnly.holds()).isTrue();
    restOnly.changed(LinkState.SILENT);
    assertThat(restOnly.holds()).isTrue();
  }

  @Test
  void one_that_says_it_moves_does_not() {
    for (int i = 0; i < 5; i++) {
      speakUp(stable("120.0"));
      restOnly.heard(weighed("121.0", Stability.UNSTABLE));
    }
    assertThat(restOnly.holds()).isFalse();
    for (int i = 0; i < 5; i++) {
      speakUp(weighed("120.0", Stability.UNSTATED));
      restOnly.heard(weighed("121.0", Stability.UNSTATED));
    }
    assertThat(restOnly.holds()).isFalse();
  }

  @Test
  void a_cable_that_is_plugged_in_again_and_again_says_nothing_about_it() {
    for (int i = 0; i < 5; i++) {
      restOnly.changed(LinkState.LOST);
      speakUp(stable("120.0"));
    }
    assertThat(restOnly.holds()).isFalse();
  }

  @ParameterizedTest
  @EnumSource(
      value = SendMode.class,
      names = {"CONTINUOUS", "WHILE_STABLE", "ONCE_STABLE"})
  void it_is_noticed_of_a_virtual_scale_by_the_second_cup(SendMode mode) {
    ScaleFormat format = ScaleFormats.of("and");
    Framer framer = format.newFramer();
    ScaleTraits bench = ScaleTraits.benchThreeKilograms();
    Pan pan = new Pan();
    VirtualScale scale = new VirtualScale(
        bench.with(bench.cell().withNoise(0.005).withoutDrift()).with(mode),
        ScaleQuirks.none(),
        format,
        format.layouts().get(0),
        pan,
        7);
    long[] heard = {0};
    LinkState[] state = {LinkState.LIVE};
    for (long nanos = 0; nanos < 40 * SECOND; nanos += 20_000_000) {
      long within = nanos % (12 * SECOND);
      if (within == SECOND) pan.putOn("cup", Mass.ofGrams("20"));
      if (within > 5 * SECOND && within < 8 * SECOND) pan.add(Mass.ofGrams("0.1"));
      if (within == 12 * SECOND - 20_000_000) pan.liftOff("cup");
      scale.advanceTo(
          nanos,
          (at, bytes) -> framer.feed(bytes, bytes.length, new Stamp(Instant.EPOCH, at), frame -> {
            heard[0] = at;
            if (state[0] != LinkState.LIVE) restOnly.changed(state[0] = LinkState.LIVE);
            restOnly.heard(format.decode(frame));
          }));
      if (nanos - heard[0] > 1.2 * SECOND && state[0] != LinkState.SILENT)
        restOnly.changed(state[0] = LinkState.SILENT);
    }
    assertThat(restOnly.holds()).isEqualTo(mode != SendMode.CONTINUOUS);
  }

  @Test
  void the_page_is_told_what_to_set() throws Exception {
    try (StationRig rig = StationRig.on(new MemoryJournal(Purpose.RECORD))) {
      for (int cup = 0; cup < 3; cup++) {
        rig.show("120.00", 1);
        rig.pass(Duration.ofMillis(1_500));
        rig.wires.get(0).silence();
        rig.wires.get(0).silence();
        rig.wires.get(0).awaitAllRead();
        rig.tick();
      }
      rig.show("120.00", 1);
      rig.await(view -> view.scales().get(0).link().equals("live"));
      assertThat(rig.view().scales().get(0).trouble().orElseThrow().key())
          .isEqualTo("scale.rest-only");
    }
  }

  private void speakUp(Decoded decoded) {
    restOnly.changed(LinkState.SILENT);
    restOnly.changed(LinkState.LIVE);
    restOnly.heard(decoded);
  }

  private static Decoded stable(String grams) {
    return weighed(grams, Stability.STABLE);
  }

  private static Decoded weighed(String grams, Stability stability) {
    return new Weighed(Indication.of(grams, MassUnit.GRAM), Basis.UNSTATED, stability);
  }
}
