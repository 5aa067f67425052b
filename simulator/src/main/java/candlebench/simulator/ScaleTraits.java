package candlebench.simulator;

import candlebench.protocol.LineSettings;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.time.Duration;
import java.util.List;

/**
 * What kind of scale it is.
 *
 * @param capacity Max: above it by more than nine steps of the first face the display goes blank (OIML R 76)
 * @param faces the units its unit key goes through, the first one shown when switched on
 * @param conversionsPerSecond how often the converter feels the cell: 10 or 80 for the usual 24-bit converter
 * @param sendsPerSecond how often it sends when it sends by itself: 5 to 20 is usual (common practice, no source)
 * @param line how its own end of the line is set; a slow line holds back the next frame
 * @param stableDivisions within how many divisions the reading must stay to be called at rest
 * @param stableSeconds for how long it must stay there: 0.4 to 1.0 s in published indicator manuals
 * @param switchesOffAfter how long a steady reading counts as idle, for a scale that switches itself off: 45 s to 5 min on kitchen
 *     scales, 10 to 30 min on bench scales, from their manuals
 * @param linkDelay what the way to the host adds to every frame
 */
public record ScaleTraits(
    Mass capacity,
    List<ScaleFace> faces,
    CellTraits cell,
    double conversionsPerSecond,
    SendMode mode,
    double sendsPerSecond,
    LineSettings line,
    double stableDivisions,
    double stableSeconds,
    Duration switchesOffAfter,
    Duration linkDelay) {

  public ScaleTraits {
    faces = List.copyOf(faces);
    if (faces.isEmpty()) throw new IllegalArgumentException("a scale shows at least one unit");
    if (!(conversionsPerSecond > 0) || !(sendsPerSecond > 0))
      throw new IllegalArgumentException(
          "a scale converts and sends more than zero times a second");
  }

  /** A bench scale of 3 kg by 0.1 g that sends ten times a second. */
  public static ScaleTraits benchThreeKilograms() {
    return new ScaleTraits(
        Mass.ofGrams("3000"),
        List.of(ScaleFace.grams(1), new ScaleFace(MassUnit.OUNCE, 3, 5)),
        CellTraits.benchThreeKilograms(),
        80,
        SendMode.CONTINUOUS,
        10,
        LineSettings.of("9600-8N1"),
        1,
        0.6,
        Duration.ofMinutes(10),
        Duration.ZERO);
  }

  /** A balance of 500 g by 0.01 g that sends five times a second. */
  public static ScaleTraits balanceFiveHundredGrams() {
    ScaleTraits bench = benchThreeKilograms();
    return new ScaleTraits(
        Mass.ofGrams("500"),
        List.of(ScaleFace.grams(2)),
        CellTraits.balanceFiveHundredGrams(),
        bench.conversionsPerSecond,
        SendMode.CONTINUOUS,
        5,
        bench.line,
        2,
        1,
        bench.switchesOffAfter,
        Duration.ZERO);
  }

  /** A kitchen scale of 5 kg by 1 g that sends five times a second and, where that quirk is on, switches off after two minutes. */
  public static ScaleTraits kitchenFiveKilograms() {
    ScaleTraits bench = benchThreeKilograms();
    return new ScaleTraits(
        Mass.ofGrams("5000"),
        List.of(ScaleFace.grams(0), new ScaleFace(MassUnit.OUNCE, 1, 1)),
        CellTraits.kitchenFiveKilograms(),
        10,
        SendMode.CONTINUOUS,
        5,
        bench.line,
        1,
        1,
        Duration.ofMinutes(2),
        Duration.ZERO);
  }

  public ScaleTraits with(CellTraits other) {
    return new ScaleTraits(
        capacity,
        faces,
        other,
        conversionsPerSecond,
        mode,
        sendsPerSecond,
        line,
        stableDivisions,
        stableSeconds,
        switchesOffAfter,
        linkDelay);
  }

  public ScaleTraits with(SendMode other) {
    return new ScaleTraits(
        capacity,
        faces,
        cell,
        conversionsPerSecond,
        other,
        sendsPerSecond,
        line,
        stableDivisions,
        stableSeconds,
        switchesOffAfter,
        linkDelay);
  }

  public ScaleTraits with(LineSettings other) {
    return new ScaleTraits(
        capacity,
        faces,
        cell,
        conversionsPerSecond,
        mode,
        sendsPerSecond,
        other,
        stableDivisions,
        stableSeconds,
        switchesOffAfter,
        linkDelay);
  }

  public ScaleTraits withFaces(ScaleFace... others) {
    return new ScaleTraits(
        capacity,
        List.of(others),
        cell,
        conversionsPerSecond,
        mode,
        sendsPerSecond,
        line,
        stableDivisions,
        stableSeconds,
        switchesOffAfter,
        linkDelay);
  }

  public ScaleTraits withSendsPerSecond(double rate) {
    return new ScaleTraits(
        capacity,
        faces,
        cell,
        conversionsPerSecond,
        mode,
        rate,
        line,
        stableDivisions,
        stableSeconds,
        switchesOffAfter,
        linkDelay);
  }

  public ScaleTraits withSwitchingOffAfter(Duration steady) {
    return new ScaleTraits(
        capacity,
        faces,
        cell,
        conversionsPerSecond,
        mode,
        sendsPerSecond,
        line,
        stableDivisions,
        stableSeconds,
        steady,
        linkDelay);
  }

  public ScaleTraits withLinkDelay(Duration delay) {
    return new ScaleTraits(
        capacity,
        faces,
        cell,
        conversionsPerSecond,
        mode,
        sendsPerSecond,
        line,
        stableDivisions,
        stableSeconds,
        switchesOffAfter,
        delay);
  }
}
