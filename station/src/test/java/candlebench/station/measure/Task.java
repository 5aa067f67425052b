package candlebench.station.measure;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Tolerance;
import candlebench.simulator.PourKind;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.Loss;
import candlebench.station.batch.Part;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.VesselKind;
import candlebench.station.batch.Waits;
import candlebench.station.batch.Way;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.record.BatchScript;
import java.util.List;
import java.util.Map;

/**
 * What is to be poured, and how the bench comes to ask for it.
 *
 * @param name as it stands in the table
 * @param tare what stands on the pan before
 * @param open the bench, as it was folded from the entries up to the moment at which this is asked for
 */
record Task(
    String name,
    PourKind liquid,
    Mass target,
    Tolerance tolerance,
    Mass tare,
    Recipe recipe,
    BenchProgress open) {
  /** Whether it is poured; pieces are put in, and there is no habit of pouring to compare with. */
  boolean isPoured() {
    return !name.contains("pieces");
  }

  private static final Mass POT = Mass.ofGrams("350.2");
  private static final Mass GLASS = Mass.ofGrams("181.3");

  /** So many grams of oil into a pot. */
  static Task oil(String grams, String tolerance) {
    Recipe recipe = onePart(PartKind.OIL, Way.POURED, grams, tolerance);
    BatchScript script =
        new BatchScript().start("20261125-1", recipe, 1, Map.of()).pot("350.2");
    return new Task(
        "oil " + grams + " g",
        PourKind.OIL_BOTTLE,
        Mass.ofGrams(grams),
        Tolerance.ofGrams(tolerance, tolerance),
        POT,
        recipe,
        script.bench());
  }

  /** So many grams of wax into a pot, piece by piece. */
  static Task pieces(String grams, String tolerance) {
    Recipe recipe = onePart(PartKind.WAX, Way.BY_PIECES, grams, tolerance);
    BatchScript script =
        new BatchScript().start("20261125-1", recipe, 1, Map.of()).pot("350.2");
    return new Task(
        "wax " + grams + " g by pieces",
        PourKind.WAX_PITCHER,
        Mass.ofGrams(grams),
        Tolerance.ofGrams(tolerance, tolerance),
        POT,
        recipe,
        script.bench());
  }

  /** A vessel to its fill. */
  static Task vessel(String grams, String tolerance) {
    Part wax = Part.wax("Lane Soy 1 (invented)", Way.POURED, "5");
    Recipe recipe = recipe(wax, grams, tolerance, true);
    BatchScript script = new BatchScript()
        .start("20261125-1", recipe, 1, Map.of())
        .prepared()
        .pot("350.2")
        .part(0, grams)
        .event(new GuidanceEvent.VesselTared(
            new BatchScript().now(),
            0,
            0,
            "bench scale",
            Indication.of("181.3", MassUnit.GRAM),
            Basis.GROSS,
            GLASS,
            GuidanceEvent.How.SETTLED));
    return new Task(
        "vessel " + grams + " g",
        PourKind.WAX_PITCHER,
        Mass.ofGrams(grams),
        Tolerance.ofGrams(tolerance, tolerance),
        GLASS,
        recipe,
        script.bench());
  }

  private static Recipe onePart(PartKind kind, Way way, String grams, String tolerance) {
    Load load = kind == PartKind.WAX ? Load.ofWax("100") : Load.ofTotal("100");
    Tolerance allowed = Tolerance.ofGrams(tolerance, tolerance);
    return recipe(
        new Part("Quay Cedar (invented)", kind, way, load, allowed, Fraction.ZERO),
        grams,
        tolerance,
        false);
  }

  private static Recipe recipe(Part part, String grams, String tolerance, boolean fillsVessels) {
    return new Recipe(
        "measure",
        "A pour to be measured (invented)",
        List.of(part),
        new VesselKind(
            "Lane Glass (invented)", Mass.ofGrams(grams), Tolerance.ofGrams(tolerance, tolerance)),
        fillsVessels,
        Loss.NONE,
        Waits.NONE,
        "");
  }
}
