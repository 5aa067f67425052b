package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.shared.Tolerance;
import candlebench.shared.Verdict;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.HarbourLane;
import candlebench.station.batch.PotShare;
import candlebench.station.batch.ProcessWindows;
import candlebench.station.batch.Remedy;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.pour.Habits;
import candlebench.station.guidance.pour.PourKind;
import candlebench.station.guidance.pour.PourShown;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/** One event of each kind. */
public final class EventSamples {
  private static final Stamp AT =
      new Stamp(Instant.parse("2026-11-25T08:00:00.123456789Z"), 123_456_789_012L);

  public static final WeightAccepted WEIGHT = new WeightAccepted(
      AT,
      new Place(Place.Kind.PART, 1),
      "Quay Cedar (invented)",
      "lot 7 \"b\"",
      Mass.ofGrams("60.48"),
      Mass.ofGrams("60.5"),
      Tolerance.ofGrams("0.5", "0.5"),
      Indication.of("810.7", MassUnit.GRAM),
      Basis.UNSTATED,
      Mass.ofGrams("750.2"),
      Mass.ofGrams("810.7"),
      Mass.ofGrams("60.5"),
      Verdict.WITHIN,
      How.SETTLED,
      "",
      0,
      "bench scale",
      "Robin",
      List.of(new Trace.Point(0, 0), new Trace.Point(120, 1400)));

  public static final List<GuidanceEvent> ALL = List.of(
      new GuidanceEvent.CommandTaken(AT, "k3f9", "go-on"),
      new GuidanceEvent.BatchStarted(
          AT, "20261125-1", HarbourLane.CANDLE, 3, "Robin", Map.of("wax", "W-12")),
      new GuidanceEvent.ZeroFound(
          AT, 0, Indication.of("-350.2", MassUnit.GRAM), Mass.ofGrams("350.2")),
      new GuidanceEvent.PotTared(
          AT,
          0,
          "bench scale",
          "",
          Indication.of("12.353", MassUnit.OUNCE),
          Basis.GROSS,
          Mass.of("12.353", MassUnit.OUNCE),
          How.SETTLED),
      WEIGHT,
      new GuidanceEvent.HabitsLearnt(
          AT,
          0,
          "Robin",
          PourKind.OIL,
          new PourShown(Map.of(PourShown.Of.STOP, 1.05)),
          Habits.unlearnt(PourKind.OIL)),
      new GuidanceEvent.PanNoted(AT, 0, Mass.ofGrams("380.2")),
      new GuidanceEvent.Prepared(AT, true),
      new GuidanceEvent.PotReweighed(
          AT,
          0,
          Indication.of("1049.9", MassUnit.GRAM),
          Mass.ofGrams("1050.2"),
          Mass.ofGrams("1049.9")),
      new GuidanceEvent.ReweighSkipped(AT),
      new GuidanceEvent.VesselTared(
          AT,
          2,
          0,
          "bench scale",
          Indication.withoutUnit("182"),
          Basis.NET,
          Mass.ofGrams("182"),
          How.BY_HAND),
      new GuidanceEvent.BottleWeighed(
          AT,
          1,
          0,
          "bench scale",
          Indication.of("412.3", MassUnit.GRAM),
          Basis.GROSS,
          Mass.ofGrams("412.3"),
          How.SETTLED),
      new GuidanceEvent.VesselLifted(AT, 2),
      new GuidanceEvent.MixCompared(
          AT, 3, Mass.ofGrams("2034"), 9, Mass.ofGrams("226"), MixStanding.EVENLY_LESS),
      new GuidanceEvent.MixSpilt(AT, Mass.ofGrams("40")),
      new GuidanceEvent.VesselsLeftOut(AT, 1, Mass.ofGrams("1800")),
      new GuidanceEvent.WaitStarted(AT, GuidanceEvent.Wait.MELT, Duration.ofMinutes(25)),
      new GuidanceEvent.WaitEnded(AT, GuidanceEvent.Wait.MIX, false),
      new GuidanceEvent.OverPoured(
          AT,
          new Place(Place.Kind.PART, 1),
          "Quay Cedar (invented)",
          Mass.ofGrams("56"),
          Tolerance.ofGrams("0.5", "0.5"),
          Mass.ofGrams("61"),
          true),
      new GuidanceEvent.OverGone(
          AT, new Place(Place.Kind.PART, 1), Mass.ofGrams("56.2"), "was-touched"),
      new GuidanceEvent.RemedyChosen(
          AT,
          new Place(Place.Kind.PART, 1),
          Remedy.Kind.ADD_MORE,
          "",
          Mass.ofGrams("5"),
          Map.of(0, Mass.ofGrams("62.5")),
          Mass.ZERO,
          Mass.ofGrams("823.5"),
          Fraction.percent("8")),
      new GuidanceEvent.CureChecked(
          AT, "Quay Cedar (invented)", Mass.ofGrams("61.02"), Mass.ofGrams("61"), Verdict.WITHIN),
      new GuidanceEvent.Asked(
          AT, GuidanceEvent.Question.PAN_DIFFERS, 0, Mass.ofGrams("350.2"), Mass.ofGrams("390.2")),
      new GuidanceEvent.Answered(
          AT, GuidanceEvent.Question.PAN_DIFFERS, "count-it", Mass.ofGrams("390.2"), false),
      new GuidanceEvent.TemperatureNoted(AT, 853),
      new GuidanceEvent.TemperatureOutside(AT, 853, ProcessWindows.Process.OIL, 700, 800),
      new GuidanceEvent.BatchScrapped(AT, "too strong to keep"),
      new GuidanceEvent.Undone(AT, "weight-accepted"),
      new GuidanceEvent.AcceptanceReopened(
          AT, new Place(Place.Kind.VESSEL, 11), Mass.ofGrams("252"), Mass.ofGrams("253.1")),
      new GuidanceEvent.BatchDone(AT),
      new GuidanceEvent.BatchAbandoned(AT, "power cut"),
      new GuidanceEvent.LotReceived(
          AT, "Quay Cedar (invented)", "Q-31", Mass.ofGrams("2500"), "Dock Street Oils", "Robin"),
      new GuidanceEvent.LotChanged(
          AT, "Quay Cedar (invented)", "Q-31", "Q-32", Mass.ofGrams("31.4"), "Robin"),
      new GuidanceEvent.ScaleChecked(
          AT,
          0,
          "bench scale",
          Mass.ofGrams("200"),
          Indication.of("200.1", MassUnit.GRAM),
          Mass.ofGrams("200.1"),
          "Robin"),
      new GuidanceEvent.CupTared(
          AT,
          2,
          1,
          "fine scale",
          Indication.of("45.13", MassUnit.GRAM),
          Basis.GROSS,
          Mass.ofGrams("45.13"),
          How.SETTLED),
      new GuidanceEvent.CupTipped(AT, 2, 1, Mass.ofGrams("45.2"), Mass.ofGrams("0.07"), true),
      new GuidanceEvent.PotTaught(
          AT,
          0,
          "bench scale",
          "Pot A",
          Indication.of("400.1", MassUnit.GRAM),
          Mass.ofGrams("400.1"),
          "Robin"),
      new GuidanceEvent.WorkDivided(
          AT,
          "harbour-lane",
          "Robin",
          Map.of("wax", "W-12"),
          List.of(
              new PotShare("Pot A", 2, HarbourLane.CANDLE),
              new PotShare("Pot B", 1, HarbourLane.CANDLE))),
      new GuidanceEvent.ShareBegun(AT, "20261125-1", 0, "Pot A"),
      new GuidanceEvent.PotTaken(AT, "20261125-2", GuidanceEvent.Told.BY_WEIGHT),
      new GuidanceEvent.WorkEnded(AT, "no more glasses"),
      new GuidanceEvent.Noted(AT, "20261125-1", "frosting on the third glass", "Robin"),
      new GuidanceEvent.Corrected(
          AT,
          "20261125-1",
          4,
          GuidanceEvent.Correctable.LOT,
          "",
          "Q-31",
          "Q-33",
          "bottle misread",
          "Robin"));

  private EventSamples() {}
}
