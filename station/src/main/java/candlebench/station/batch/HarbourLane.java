package candlebench.station.batch;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import java.time.Duration;
import java.util.List;

/** Recipes of the Harbour Lane Workshop, which is invented, like its waxes and oils: for practice and for tests. */
public final class HarbourLane {
  private static final Part WAX = Part.wax("Lane Soy 1 (invented)", Way.BY_PIECES, "5");
  private static final Part OIL = new Part(
      "Quay Cedar (invented)",
      PartKind.OIL,
      Way.POURED,
      Load.ofWax("8"),
      Tolerance.ofGrams("0.5", "0.5"),
      Fraction.percent("10"));
  private static final VesselKind GLASS =
      new VesselKind("Lane Glass (invented)", Mass.ofGrams("252"), Tolerance.ofGrams("2", "3"));
  private static final String TRIM = "3/16 in";

  /** Three glasses of 252 g at 8 % of the wax: 700 g of wax and 56 g of oil. */
  public static final Recipe CANDLE = new Recipe(
      "harbour-lane",
      "Harbour Lane candle (invented)",
      List.of(WAX, OIL),
      GLASS,
      true,
      Loss.NONE,
      new Waits(Duration.ofMinutes(25), Duration.ofMinutes(2), Duration.ofHours(24)),
      TRIM);

  /** The same with waits of seconds, for practice with the simulated bench. */
  public static final Recipe QUICK = new Recipe(
      "harbour-lane-quick",
      "Harbour Lane candle, quick practice (invented)",
      List.of(WAX, OIL),
      GLASS,
      true,
      Loss.NONE,
      new Waits(Duration.ofSeconds(15), Duration.ofSeconds(10), Duration.ofHours(24)),
      TRIM);

  /** One part: 56 g of oil into a pot. */
  public static final Recipe OIL_ONLY = new Recipe(
      "harbour-lane-oil",
      "Quay Cedar, 56 g into a pot (invented)",
      List.of(new Part(
          OIL.name(),
          PartKind.OIL,
          Way.POURED,
          Load.ofTotal("100"),
          OIL.tolerance(),
          Fraction.ZERO)),
      new VesselKind("Pot", Mass.ofGrams("56"), OIL.tolerance()),
      false,
      Loss.NONE,
      Waits.NONE,
      "");

  private HarbourLane() {}

  public static List<Recipe> all() {
    return List.of(CANDLE, QUICK, OIL_ONLY);
  }
}
