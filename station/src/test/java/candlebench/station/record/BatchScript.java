package candlebench.station.record;

import candlebench.shared.Basis;
import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.shared.Tolerance;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.HarbourLane;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Remedy;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.Goal;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.Place;
import candlebench.station.guidance.Trace;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Writes the entries of batches as a bench would, weight by weight, without a bench: each event is folded as it is written, and a
 * weighing takes its target from what the bench would ask for.
 */
public final class BatchScript {
  public static final String WAX = HarbourLane.CANDLE.parts().get(0).name();
  public static final String OIL = HarbourLane.CANDLE.parts().get(1).name();
  public static final String GLASS = HarbourLane.CANDLE.vessel().name();

  private static final DateTimeFormatter WALL =
      DateTimeFormatter.ISO_OFFSET_DATE_TIME.withZone(ZoneOffset.ofHours(1));

  private final List<Recorded> entries = new ArrayList<>();
  private Stamp now = new Stamp(Instant.parse("2026-11-25T08:00:00Z"), 0);
  private BenchProgress bench = BenchProgress.EMPTY;
  private Mass onPan = Mass.ZERO;

  /** A whole candle batch with every lot named, a shade over its fill in each vessel. */
  public static BatchScript candles(String code, int vessels, Map<String, String> lots) {
    BatchScript script = new BatchScript().start(code, HarbourLane.CANDLE, vessels, lots);
    script.intoPot(HarbourLane.CANDLE, vessels);
    for (int vessel = 0; vessel < vessels; vessel++)
      script.vessel(vessel, vessel % 2 == 0 ? "252.1" : "252.3");
    return script.done();
  }

  public static Map<String, String> lots(String wax, String oil, String glass, String wick) {
    return Map.of(WAX, wax, OIL, oil, GLASS, glass, BatchRecord.WICK, wick);
  }

  /** The pot, wax and oil as planned, and the waits between. */
  public BatchScript intoPot(Recipe recipe, int vessels) {
    List<Mass> targets = new BatchPlan(recipe, vessels).targets();
    return prepared()
        .pot("350.2")
        .part(0, shown(targets.get(0)))
        .waited(Wait.MELT)
        .reweighed()
        .part(1, shown(targets.get(1)))
        .waited(Wait.MIX);
  }

  private static String shown(Mass target) {
    return target.text(MassUnit.GRAM, 1);
  }

  public List<Recorded> entries() {
    return List.copyOf(entries);
  }

  public BenchProgress bench() {
    return bench;
  }

  public BatchRecord record() {
    return BatchRecord.of(entries);
  }

  /** The number of the entry written last. */
  public long last() {
    return entries.get(entries.size() - 1).entry();
  }

  public BatchScript event(GuidanceEvent event) {
    bench = bench.after(event);
    entries.add(new Recorded(entries.size() + 1L, WALL.format(now.wall()), event));
    now = now.plus(Duration.ofSeconds(20));
    return this;
  }

  public BatchScript start(String code, Recipe recipe, int vessels, Map<String, String> lots) {
    return event(new GuidanceEvent.BatchStarted(now, code, recipe, vessels, "Robin", lots));
  }

  public BatchScript prepared() {
    return event(new GuidanceEvent.Prepared(now, false));
  }

  public BatchScript pot(String grams) {
    onPan = Mass.ofGrams(grams);
    return event(new GuidanceEvent.PotTared(
        now, 0, "bench scale", "blue pot", shown(onPan, 1), Basis.GROSS, onPan, How.SETTLED));
  }

  public BatchScript reweighed() {
    return event(new GuidanceEvent.PotReweighed(now, 0, shown(onPan, 1), onPan, onPan));
  }

  public BatchScript waited(Wait wait) {
    return event(new GuidanceEvent.WaitStarted(now, wait, Duration.ofMinutes(2)))
        .event(new GuidanceEvent.WaitEnded(now, wait, false));
  }

  public BatchScript part(int part, String grams) {
    return weight(new Place(Place.Kind.PART, part), grams, How.SETTLED, "");
  }

  public BatchScript more(int part, String grams) {
    return weight(new Place(Place.Kind.MORE, part), grams, How.SETTLED, "");
  }

  public BatchScript byHand(int part, String grams, String reason) {
    return weight(new Place(Place.Kind.PART, part), grams, How.BY_HAND, reason);
  }

  public BatchScript vessel(int number, String grams) {
    return emptyVessel(number).fill(number, grams);
  }

  public BatchScript emptyVessel(int number) {
    onPan = Mass.ofGrams("181.3");
    return event(new GuidanceEvent.VesselTared(
        now, number, 0, "bench scale", shown(onPan, 1), Basis.GROSS, onPan, How.SETTLED));
  }

  public BatchScript fill(int number, String grams) {
    weight(new Place(Place.Kind.VESSEL, number), grams, How.SETTLED, "");
    return event(new GuidanceEvent.VesselLifted(now, number));
  }

  public BatchScript keep(int part, String over, String reason) {
    return event(new GuidanceEvent.RemedyChosen(
        now,
        new Place(Place.Kind.PART, part),
        Remedy.Kind.KEEP,
        reason,
        Mass.ofGrams(over),
        Map.of(),
        Mass.ZERO,
        bench.batch().orElseThrow().charge().contents(),
        candlebench.station.batch.Fraction.percent("8.7")));
  }

  public BatchScript lotChanged(String material, String from, String to, String poured) {
    return event(
        new GuidanceEvent.LotChanged(now, material, from, to, Mass.ofGrams(poured), "Robin"));
  }

  public BatchScript undone() {
    return event(new GuidanceEvent.Undone(now, "weight-accepted"));
  }

  public BatchScript noted(String text) {
    return event(new GuidanceEvent.Noted(now, code(), text, "Robin"));
  }

  public BatchScript corrected(
      long entry, Correctable what, String material, String was, String is, String reason) {
    return event(
        new GuidanceEvent.Corrected(now, code(), entry, what, material, was, is, reason, "Sascha"));
  }

  public BatchScript done() {
    return event(new GuidanceEvent.BatchDone(now));
  }

  public Stamp now() {
    return now;
  }

  private String code() {
    return bench.batch().orElseThrow().started().code();
  }

  private BatchScript weight(Place place, String grams, How how, String reason) {
    Goal goal = bench.running().orElseThrow().goal().orElseThrow();
    if (!goal.place().equals(place)) throw new AssertionError(goal.place() + ", not " + place);
    Mass net = Mass.ofGrams(grams);
    Mass tare = onPan;
    onPan = onPan.plus(net);
    Tolerance tolerance = goal.tolerance();
    return event(new GuidanceEvent.WeightAccepted(
        now,
        place,
        goal.name(),
        bench.running().orElseThrow().started().lots().getOrDefault(goal.name(), ""),
        goal.target(),
        new Division(Mass.ofGrams("0.1")).nearest(goal.target()),
        tolerance,
        shown(onPan, 1),
        Basis.UNSTATED,
        tare,
        onPan,
        net,
        tolerance.judge(goal.target(), net, new Division(Mass.ofGrams("0.1"))),
        how,
        reason,
        0,
        "bench scale",
        "Robin",
        how == How.BY_HAND ? List.of() : trace(net)));
  }

  private static Indication shown(Mass mass, int decimals) {
    return Indication.of(mass.text(MassUnit.GRAM, decimals), MassUnit.GRAM);
  }

  private static List<Trace.Point> trace(Mass net) {
    List<Trace.Point> points = new ArrayList<>();
    for (int i = 0; i <= 40; i++)
      points.add(new Trace.Point(i * 250, (int)
          (net.times(Math.min(i, 32), 32).picograms() / 1_000_000_000L)));
    return points;
  }
}
