package candlebench.station.batch;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import java.time.Duration;
import java.util.List;

/** Recipes for tests. All invented. */
public final class Recipes {
  public static final Part WAX = Part.wax("wax", Way.BY_PIECES, "5");

  private Recipes() {}

  public static Part oil(Load load) {
    return part("oil", PartKind.OIL, load);
  }

  public static Part part(String name, PartKind kind, Load load) {
    return new Part(name, kind, Way.POURED, load, Tolerance.ofGrams("0.5", "0.5"), Fraction.ZERO);
  }

  public static Recipe of(String fillGrams, Loss loss, Part... parts) {
    return new Recipe(
        "test",
        "test",
        List.of(parts),
        new VesselKind("glass", Mass.ofGrams(fillGrams), Tolerance.ofGrams("2", "3")),
        true,
        loss,
        new Waits(Duration.ofMinutes(20), Duration.ofMinutes(2), Duration.ZERO),
        "");
  }
}
