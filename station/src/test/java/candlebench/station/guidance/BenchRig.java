package candlebench.station.guidance;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Basis;
import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.shared.Stability;
import candlebench.shared.Stamp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A bench in virtual time, fed with readings straight away: what stands on the pan is what the scale shows, at once and in steps of
 * 0.1 g. After every input, what was folded from the events must be what lives.
 */
final class BenchRig {
  static final Instant START = Instant.parse("2026-11-25T08:00:00Z");

  final List<GuidanceEvent> events = new ArrayList<>();
  final List<GuidanceEffect> effects = new ArrayList<>();
  private final Duration between;
  private GuidanceState state;
  private Stamp now = new Stamp(START, 0);
  private Mass onPan = Mass.ZERO;
  private int commands;

  BenchRig(BenchSetup setup, int readingsPerSecond) {
    this.state = GuidanceState.begin(setup);
    this.between = Duration.ofNanos(1_000_000_000L / readingsPerSecond);
  }

  GuidanceState state() {
    return state;
  }

  Stamp now() {
    return now;
  }

  Prompt prompt() {
    return state.prompt(now);
  }

  void start(String recipe, int vessels) {
    say(new MakerCommand.StartBatch(recipe, vessels, "Robin", Map.of()));
  }

  void say(MakerCommand command) {
    give(new GuidanceInput.MakerSaid("c" + ++commands, command, now));
  }

  void put(String grams) {
    onPan = Mass.ofGrams(grams);
  }

  /** Puts so much more on, or takes it off where it is below zero, at once. */
  void add(String grams) {
    onPan = onPan.plus(Mass.ofGrams(grams));
  }

  /** Pours by the cues alone until the goal is taken, a way is asked for or a minute has passed. */
  void followCues(double freeFlow, double thinFlow) {
    int taken = all(GuidanceEvent.WeightAccepted.class).size();
    for (int tick = 0;
        tick < 600 && all(GuidanceEvent.WeightAccepted.class).size() == taken;
        tick++) {
      Prompt now = prompt();
      switch (now.cue()) {
        case POUR -> pour(freeFlow, 0.1);
        case SLOW -> pour(thinFlow, 0.1);
        case DROPS -> {
          add("0.03");
          rest(1.5);
        }
        case PIECES -> {
          add("7.3");
          rest(1.5);
        }
        case STOP, HOLD_STILL, WAITING, NONE -> rest(0.1);
        case OVER -> {
          return;
        }
      }
    }
  }

  /** Time passes with readings of what stands on the pan. */
  void rest(double seconds) {
    pour(0, seconds);
  }

  /** Something flows onto the pan for a time. */
  void pour(double gramsPerSecond, double seconds) {
    Stamp end = now.plus(Duration.ofMillis(Math.round(seconds * 1000)));
    while (now.nanos() < end.nanos()) {
      now = now.plus(between);
      onPan = onPan.plus(new Mass(Math.round(gramsPerSecond * between.toNanos() / 1e9 * 1e12)));
      show(new Division(Mass.ofGrams("0.1")).nearest(onPan), Stability.UNSTATED);
    }
  }

  private void show(Mass mass, Stability stability) {
    Indication shown = Indication.of(mass.text(MassUnit.GRAM, 1), MassUnit.GRAM);
    give(new GuidanceInput.ReadingArrived(
        0, new Reading(shown, shown.mass(MassUnit.GRAM), Basis.UNSTATED, stability, false, now)));
  }

  void give(GuidanceInput input) {
    GuidanceStep step = state.on(input);
    events.addAll(step.events());
    effects.addAll(step.effects());
    state = step.next();
    assertThat(BenchProgress.EMPTY.after(events)).isEqualTo(state.progress());
  }

  <E extends GuidanceEvent> List<E> all(Class<E> type) {
    return events.stream().filter(type::isInstance).map(type::cast).toList();
  }

  <E extends GuidanceEvent> E last(Class<E> type) {
    List<E> found = all(type);
    assertThat(found).as(type.getSimpleName()).isNotEmpty();
    return found.get(found.size() - 1);
  }
}
