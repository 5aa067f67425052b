package candlebench.web;

import candlebench.shared.Basis;
import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.HarbourLane;
import candlebench.station.batch.Remedy;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.Goal;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.Place;
import candlebench.station.guidance.Trace;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.record.BatchRecord;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A record with batches in it, written straight to a journal: the pages of the record have something to show. */
final class RecordScenes {
  static final String WAX = HarbourLane.CANDLE.parts().get(0).name();
  static final String OIL = HarbourLane.CANDLE.parts().get(1).name();
  static final String GLASS = HarbourLane.CANDLE.vessel().name();
  private static final Division STEP = new Division(Mass.ofGrams("0.1"));
  private static final DateTimeFormatter WALL =
      DateTimeFormatter.ISO_OFFSET_DATE_TIME.withZone(ZoneOffset.ofHours(1));

  private final SqliteJournal journal;
  private Stamp now = new Stamp(Instant.parse("2026-11-25T08:12:00Z"), 0);
  private BenchProgress bench = BenchProgress.EMPTY;
  private Mass onPan = Mass.ZERO;

  RecordScenes(SqliteJournal journal) {
    this.journal = journal;
  }

  /** Twelve candles with an over-pour that was kept, a bottle of oil that ran out, a vessel weighed twice and no lot for the wicks. */
  RecordScenes twelveWithTroubles(String code) throws JournalFailed {
    event(new GuidanceEvent.LotReceived(
        now, OIL, "Q-31", Mass.ofGrams("500"), "Dock Street Oils (invented)", "Robin"));
    start(code, 12, Map.of(WAX, "W-12", OIL, "Q-31", GLASS, "G-9"));
    event(new GuidanceEvent.Prepared(now, true));
    pot("612.4");
    weigh(Place.Kind.PART, 0, "2803.2");
    waited(Wait.MELT);
    event(new GuidanceEvent.TemperatureNoted(now, 846));
    event(new GuidanceEvent.PotReweighed(now, 0, shown(onPan), onPan, onPan));
    event(new GuidanceEvent.LotChanged(now, OIL, "Q-31", "Q-32", Mass.ofGrams("180.3"), "Robin"));
    event(new GuidanceEvent.OverPoured(
        now,
        new Place(Place.Kind.PART, 1),
        OIL,
        Mass.ofGrams("224.256"),
        Tolerance.ofGrams("0.5", "0.5"),
        Mass.ofGrams("229.8"),
        true));
    weigh(Place.Kind.PART, 1, "229.8");
    event(new GuidanceEvent.RemedyChosen(
        now,
        new Place(Place.Kind.PART, 1),
        Remedy.Kind.KEEP,
        "below the tested 10 % of the wax",
        Mass.ofGrams("5.544"),
        Map.of(),
        Mass.ZERO,
        Mass.ofGrams("3033"),
        Fraction.of(2298, 28032)));
    waited(Wait.MIX);
    for (int i = 0; i < 12; i++) {
      vessel(i, i == 4 ? "249.6" : "25" + (1 + i % 3) + "." + (i * 7 % 10));
      if (i == 4) {
        event(new GuidanceEvent.Undone(now, "weight-accepted"));
        weigh(Place.Kind.VESSEL, 4, "252.1");
      }
      event(new GuidanceEvent.VesselLifted(now, i));
    }
    event(new GuidanceEvent.BatchDone(now));
    event(new GuidanceEvent.Noted(now, code, "Frosting on the second glass.", "Robin"));
    return this;
  }

  /** Three candles without a hitch. */
  RecordScenes three(String code) throws JournalFailed {
    event(new GuidanceEvent.ScaleChecked(
        now,
        0,
        "bench scale",
        Mass.ofGrams("200"),
        shown(Mass.ofGrams("200.1")),
        Mass.ofGrams("200.1"),
        "Robin"));
    start(code, 3, Map.of(WAX, "W-12", OIL, "Q-32", GLASS, "G-9", BatchRecord.WICK, "K-2"));
    event(new GuidanceEvent.Prepared(now, true));
    pot("350.2");
    weigh(Place.Kind.PART, 0, "700.8");
    waited(Wait.MELT);
    event(new GuidanceEvent.PotReweighed(now, 0, shown(onPan), onPan, onPan));
    weigh(Place.Kind.PART, 1, "56.1");
    waited(Wait.MIX);
    for (int i = 0; i < 3; i++) {
      vessel(i, "252." + (i + 1));
      event(new GuidanceEvent.VesselLifted(now, i));
    }
    event(new GuidanceEvent.BatchDone(now));
    return this;
  }

  /** So many candles without a hitch, from one pot. */
  RecordScenes many(String code, int vessels) throws JournalFailed {
    start(code, vessels, Map.of(WAX, "W-13", OIL, "Q-40", GLASS, "G-9", BatchRecord.WICK, "K-2"));
    event(new GuidanceEvent.Prepared(now, true));
    pot("1350.2");
    weigh(Place.Kind.PART, 0, Mass.ofGrams("233.5").times(vessels).grams());
    waited(Wait.MELT);
    event(new GuidanceEvent.PotReweighed(now, 0, shown(onPan), onPan, onPan));
    weigh(Place.Kind.PART, 1, Mass.ofGrams("18.7").times(vessels).grams());
    waited(Wait.MIX);
    for (int i = 0; i < vessels; i++) {
      vessel(i, "252." + i % 3);
      event(new GuidanceEvent.VesselLifted(now, i));
    }
    event(new GuidanceEvent.BatchDone(now));
    return this;
  }

  private void start(String code, int vessels, Map<String, String> lots) throws JournalFailed {
    event(new GuidanceEvent.BatchStarted(now, code, HarbourLane.CANDLE, vessels, "Robin", lots));
  }

  private void pot(String grams) throws JournalFailed {
    onPan = Mass.ofGrams(grams);
    event(new GuidanceEvent.PotTared(
        now, 0, "bench scale", "blue pot", shown(onPan), Basis.GROSS, onPan, How.SETTLED));
  }

  private void waited(Wait wait) throws JournalFailed {
    event(new GuidanceEvent.WaitStarted(now, wait, Duration.ofMinutes(2)));
    now = now.plus(Duration.ofMinutes(9));
    event(new GuidanceEvent.WaitEnded(now, wait, false));
  }

  private void vessel(int number, String grams) throws JournalFailed {
    onPan = Mass.ofGrams("181.3");
    event(new GuidanceEvent.VesselTared(
        now, number, 0, "bench scale", shown(onPan), Basis.GROSS, onPan, How.SETTLED));
    weigh(Place.Kind.VESSEL, number, grams);
  }

  private void weigh(Place.Kind kind, int number, String grams) throws JournalFailed {
    Goal goal = bench.running().orElseThrow().goal().orElseThrow();
    Mass net = Mass.ofGrams(grams);
    Mass tare = kind == Place.Kind.VESSEL ? Mass.ofGrams("181.3") : onPan;
    onPan = tare.plus(net);
    event(new GuidanceEvent.WeightAccepted(
        now,
        new Place(kind, number),
        goal.name(),
        bench.running().orElseThrow().started().lots().getOrDefault(goal.name(), ""),
        goal.target(),
        STEP.nearest(goal.target()),
        goal.tolerance(),
        shown(onPan),
        Basis.UNSTATED,
        tare,
        onPan,
        net,
        goal.tolerance().judge(goal.target(), net, STEP),
        How.SETTLED,
        "",
        0,
        "bench scale",
        "Robin",
        trace(net)));
  }

  private void event(GuidanceEvent event) throws JournalFailed {
    bench = bench.after(event);
    journal.append(WALL.format(now.wall()), List.of(EntryJson.text(event)));
    now = now.plus(Duration.ofSeconds(31));
  }

  private static Indication shown(Mass mass) {
    return Indication.of(mass.text(MassUnit.GRAM, 1), MassUnit.GRAM);
  }

  /** Quick at first, thin towards the end, a rest, a last drop. */
  private static List<Trace.Point> trace(Mass net) {
    List<Trace.Point> points = new ArrayList<>();
    double full = net.roughGrams() * 1000;
    for (int i = 0; i <= 60; i++) {
      double way = Math.min(1, i < 30 ? i / 33.0 : 0.909 + (i - 30) / 25.0 * 0.09);
      points.add(new Trace.Point(i * 300, (int) Math.round(full * (i > 56 ? 1 : way))));
    }
    return points;
  }
}
