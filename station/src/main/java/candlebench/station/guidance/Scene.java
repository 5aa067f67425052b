package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.shared.Stamp;
import candlebench.station.guidance.BenchProgress.Pourer;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.pour.Habits;
import candlebench.station.guidance.pour.PourKind;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that a stage may look at: the setup, what is known for good, what the scales show, and the time.
 *
 * @param how a weight that is taken now comes to be taken, if off the scale
 */
record Scene(BenchSetup setup, BenchProgress progress, List<Pan> pans, Stamp now, How how) {

  Scene(BenchSetup setup, BenchProgress progress, List<Pan> pans, Stamp now) {
    this(setup, progress, pans, now, How.SETTLED);
  }

  /** The same, while someone presses PRINT on the scale. */
  Scene byPrintKey() {
    return new Scene(setup, progress, pans, now, How.PRINT_KEY);
  }

  Pan pan(int scale) {
    return pans.get(scale);
  }

  /** The pots whose empty weight is known: from the settings, and as they were taught since. */
  List<BenchSetup.Pot> pots() {
    Map<String, BenchSetup.Pot> known = new LinkedHashMap<>();
    for (BenchSetup.Pot pot : setup.pots()) known.put(pot.name(), pot);
    progress.taught().forEach((name, empty) -> {
      Mass room = known.containsKey(name) ? known.get(name).room() : Mass.ZERO;
      known.put(name, new BenchSetup.Pot(name, empty, room));
    });
    return List.copyOf(known.values());
  }

  /** What stands on a pan by a reading of it: what the scale showed, and its shifted zero made good. */
  Mass load(int scale, Reading reading) {
    return reading.mass().plus(progress.zero(scale));
  }

  Optional<Mass> load(int scale) {
    return pan(scale).fresh(now.nanos()).map(reading -> load(scale, reading));
  }

  Optional<Reading> settled(int scale) {
    return pan(scale).settled(now.nanos());
  }

  /** The reading, if the load is at rest by the station's own rule, whatever the scale says. */
  Optional<Reading> resting(int scale) {
    return pan(scale).resting(now.nanos());
  }

  /** For what a key asks for: what was settled lately, if it is still about the same. */
  Optional<Reading> settledLately(int scale) {
    return pan(scale).settledLately(now.nanos());
  }

  /** The batch that runs; asked for only by stages that belong to one. */
  BatchProgress batch() {
    return progress.batch().orElseThrow();
  }

  String person() {
    return batch().started().person();
  }

  Habits habits(int scale, PourKind kind) {
    return progress.habits(new Pourer(scale, person(), kind));
  }

  Optional<Words> trouble(int scale) {
    return Trouble.of(pan(scale), now.nanos());
  }

  /** What is wrong with the first scale, where none gives a number. */
  Optional<Words> troubleEverywhere() {
    boolean anyNumber = pans.stream().anyMatch(pan -> pan.fresh(now.nanos()).isPresent());
    return anyNumber ? Optional.empty() : trouble(0);
  }

  Optional<Prompt.Running> countIn(CountIn countIn, Words what) {
    return countIn.running(what, setup.timing().countIn(), now.nanos());
  }

  boolean countedIn(CountIn countIn) {
    return countIn.over(setup.timing().countIn(), now.nanos());
  }
}
