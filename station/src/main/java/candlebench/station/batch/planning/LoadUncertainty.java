package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * How surely a load is known from the weighings planned for it: standard uncertainties, JCGM 100:2008 (GUM), 5.1.2.
 *
 * <p>The load is a function of all readings. Where two parts are weighed into one pot one after the other, the reading between them ends
 * the one and begins the other; it stands in the sum once, with what it does to both. Buoyancy in air is left out: wax and oil are
 * nearly as dense as each other, so it all but cancels in a load.
 *
 * @param ofNet of the part's own net weight, in grams
 * @param ofWax of its share of the wax
 * @param ofTotal of its share of the total
 */
public record LoadUncertainty(BigDecimal ofNet, BigDecimal ofWax, BigDecimal ofTotal) {
  /** Twice the standard uncertainty covers about 95 % (JCGM 100:2008, 6.3.3). */
  public static final int COVERAGE = 2;

  /** A part's net weight, as the difference of two readings of a list. */
  public record Net(Mass mass, boolean isWax, int before, int after) {}

  /**
   * The variance in g² of a reading by a scale of which only the step is known: rounding to that step, and what a scale of class III may
   * be off in use at the load on the pan, taken as a rectangle. Its repeatability was not tried; it is part of what it may be off (OIML
   * R 76-1:2006, 3.6.1, from memory).
   */
  public static BigDecimal varianceByStep(Mass load, Mass step) {
    BigDecimal error = PanReading.grams(AccuracyClass.III.errorInService(load, step));
    return PanReading.rounding(step).add(error.pow(2).divide(new BigDecimal(3), PanReading.DIGITS));
  }

  /**
   * @param part which of the nets
   * @param variances of the readings, in g²
   */
  static LoadUncertainty of(int part, List<Net> nets, List<BigDecimal> variances) {
    return of(Set.of(part), nets, variances);
  }

  /**
   * The same of a part that was weighed in several times.
   *
   * @param part which of the nets are of that part
   */
  public static LoadUncertainty of(Set<Integer> part, List<Net> nets, List<BigDecimal> variances) {
    BigDecimal one = sum(part.stream().map(nets::get).toList());
    BigDecimal wax = sum(nets.stream().filter(Net::isWax).toList());
    BigDecimal total = sum(nets);
    BigDecimal[] ofNet = zeros(variances.size());
    BigDecimal[] ofWax = zeros(variances.size());
    BigDecimal[] ofTotal = zeros(variances.size());
    for (int i = 0; i < nets.size(); i++) {
      Net net = nets.get(i);
      BigDecimal own = part.contains(i) ? BigDecimal.ONE : BigDecimal.ZERO;
      BigDecimal inWax = net.isWax() ? one.divide(wax, PanReading.DIGITS) : BigDecimal.ZERO;
      BigDecimal inTotal = one.divide(total, PanReading.DIGITS);
      weigh(ofNet, net, own);
      weigh(ofWax, net, own.subtract(inWax).divide(wax, PanReading.DIGITS));
      weigh(ofTotal, net, own.subtract(inTotal).divide(total, PanReading.DIGITS));
    }
    return new LoadUncertainty(
        root(ofNet, variances), root(ofWax, variances), root(ofTotal, variances));
  }

  /** What a change of a net weight does, done to both its readings. */
  private static void weigh(BigDecimal[] sensitivity, Net net, BigDecimal change) {
    sensitivity[net.after()] = sensitivity[net.after()].add(change);
    sensitivity[net.before()] = sensitivity[net.before()].subtract(change);
  }

  private static BigDecimal root(BigDecimal[] sensitivity, List<BigDecimal> variances) {
    BigDecimal sum = BigDecimal.ZERO;
    for (int i = 0; i < sensitivity.length; i++)
      sum = sum.add(sensitivity[i].pow(2, PanReading.DIGITS).multiply(variances.get(i)));
    return sum.sqrt(PanReading.DIGITS);
  }

  private static BigDecimal[] zeros(int count) {
    BigDecimal[] zeros = new BigDecimal[count];
    Arrays.fill(zeros, BigDecimal.ZERO);
    return zeros;
  }

  private static BigDecimal sum(List<Net> nets) {
    return nets.stream().map(LoadUncertainty::grams).reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  private static BigDecimal grams(Net net) {
    return PanReading.grams(net.mass());
  }
}
