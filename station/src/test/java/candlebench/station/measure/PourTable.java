package candlebench.station.measure;

import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;

/** What many pours came to, as lines of a table. */
final class PourTable {
  private static final double HALF_STEP = 0.05;
  private static final double STEP = 0.1;
  private static final double LATE = 0.5;

  private PourTable() {}

  static String head() {
    return String.format(
        "%-34s %6s  %-17s %7s %7s %6s %6s %6s %6s",
        "", "pours", "over (95 % bound)", "<=0.1 g", "<=2 g", "95%,g", "mean s", "50%,s", "95%,s");
  }

  static String row(String name, List<PourResult> pours, double tolerance) {
    int n = pours.size();
    long over = pours.stream().filter(pour -> pour.error() > tolerance).count();
    double[] off =
        pours.stream().mapToDouble(pour -> Math.abs(pour.error())).sorted().toArray();
    double[] seconds = pours.stream().mapToDouble(PourResult::seconds).sorted().toArray();
    return String.format(
        Locale.ROOT,
        "%-34s %6d  %-17s %6.1f%% %6.1f%% %6.2f %6.1f %6.1f %6.1f",
        name,
        n,
        String.format(Locale.ROOT, "%.2f%% (%.2f%%)", 100.0 * over / n, 100 * bound(over, n)),
        100 * share(off, STEP),
        100 * share(off, 2),
        off[n * 95 / 100],
        DoubleStream.of(seconds).average().orElse(0),
        seconds[n / 2],
        seconds[n * 95 / 100]);
  }

  /** What the station said of over-pours, and what it took. */
  static String promises(List<PourResult> pours, double tolerance) {
    int n = pours.size();
    long real =
        pours.stream().filter(pour -> pour.shownError() > tolerance + HALF_STEP).count();
    long missed = pours.stream()
        .filter(pour -> pour.shownError() > tolerance + HALF_STEP && !pour.saidOver())
        .count();
    long late =
        pours.stream().filter(pour -> pour.saidOver() && pour.late() > LATE).count();
    long alarms = pours.stream().filter(PourResult::saidOver).count();
    long cried = pours.stream()
        .filter(pour -> pour.saidOver() && pour.shownError() <= tolerance - HALF_STEP)
        .count();
    long askedFirst = pours.stream()
        .filter(pour -> pour.shownError() > tolerance + HALF_STEP && pour.asked() > 0)
        .count();
    long asked = pours.stream().filter(pour -> pour.asked() > 0).count();
    long wrong =
        pours.stream().filter(pour -> Math.abs(pour.off()) > STEP * 1.01).count();
    return String.format(
        Locale.ROOT,
        "    announced %d, of them false %d (bound %.3f%%); really over by more than half a division %d, of them missed %d, late %d, asked about first %d;"
            + " asked about what stands there in %d pours;"
            + " weights off by more than a division %d (bound %.3f%%)",
        alarms,
        cried,
        100 * bound(cried, n),
        real,
        missed,
        late,
        askedFirst,
        asked,
        wrong,
        100 * bound(wrong, n));
  }

  private static double share(double[] sorted, double most) {
    long within = DoubleStream.of(sorted).filter(value -> value <= most).count();
    return (double) within / sorted.length;
  }

  /** The upper bound of 95 %: 3/n for none, else the bound of Wilson. */
  static double bound(long hits, long n) {
    if (hits == 0) return 3.0 / n;
    double z = 1.645;
    double p = (double) hits / n;
    double middle = p + z * z / (2 * n);
    double wide = z * Math.sqrt(p * (1 - p) / n + z * z / (4.0 * n * n));
    return (middle + wide) / (1 + z * z / n);
  }
}
