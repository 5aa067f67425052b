package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.shared.Tolerance;
import candlebench.shared.Verdict;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.pour.PourKind;
import candlebench.station.guidance.pour.StopDelay;
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
          Mass.of("12.353", MassUnit.OUNCE)),
      WEIGHT,
      new GuidanceEvent.DelayLearnt(
          AT, 0, "Robin", PourKind.OIL, 1.05, new StopDelay(0.95, List.of(0.8, 1.05))),
      new GuidanceEvent.Undone(AT, "weight-accepted"),
      new GuidanceEvent.AcceptanceReopened(
          AT, new Place(Place.Kind.VESSEL, 11), Mass.ofGrams("252"), Mass.ofGrams("253.1")),
      new GuidanceEvent.BatchDone(AT),
      new GuidanceEvent.BatchAbandoned(AT, "power cut"),
      new GuidanceEvent.LotReceived(
          AT, "Quay Cedar (invented)", "Q-31", Mass.ofGrams("2500"), "Dock Street Oils", "Robin"),
      new GuidanceEvent.LotChanged(
          AT, "Quay Cedar (invented)", "Q-31", "Q-32", Mass.ofGrams("31.4"), "Robin"),
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
