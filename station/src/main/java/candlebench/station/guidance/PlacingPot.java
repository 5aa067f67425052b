package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.Optional;

/** The empty pot is awaited on any of the scales; settled, its own weight is taken. */
record PlacingPot(CountIn countIn) implements Stage {
  /** Lighter than this is no pot but a spoon or a hand (common practice, no source). */
  static final Mass LIGHTEST_POT = Mass.ofGrams("20");

  /** An empty pan that shows less than so many steps under zero has its zero elsewhere. */
  private static final long ZERO_STEPS = 3;

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof ReadingArrived arrived) return weighed(arrived.scale(), scene);
    if (input instanceof MakerSaid) return Outcome.refuse(this, Words.of("refused.place-pot"));
    return Outcome.to(this);
  }

  private Outcome weighed(int scale, Scene scene) {
    Optional<Reading> settled = scene.settled(scale);
    if (settled.isEmpty()) return Outcome.to(new PlacingPot(CountIn.NONE));
    Reading reading = settled.get();
    Mass load = scene.load(scale, reading);
    Pan pan = scene.pan(scale);
    if (load.isNegative() && pan.differs(load, ZERO_STEPS))
      return Outcome.to(
          this,
          new ZeroFound(scene.now(), scale, reading.indication(), reading.mass().negated()));
    CountIn counting = countIn.on(!load.isLessThan(LIGHTEST_POT), scene.now().nanos());
    if (!counting.over(scene.setup().timing().countIn(), scene.now().nanos()))
      return Outcome.to(new PlacingPot(counting));
    return Outcome.record(new PotTared(
        scene.now(),
        scale,
        scene.setup().scales().get(scale).name(),
        "",
        reading.indication(),
        reading.basis(),
        load));
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say("PLACE_POT", Words.of("now.place-pot"))
        .cue(countIn.fromNanos().isPresent() ? Cue.HOLD_STILL : Cue.WAITING)
        .countIn(countIn.running(
            Words.of("count-in.pot"),
            scene.setup().timing().countIn(),
            scene.now().nanos()));
  }
}
