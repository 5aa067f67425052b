package candlebench.simulator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One pour found in a trace of weights, with its figures.
 *
 * <p>Flow is the slope over half a second; a pour runs while it is over 0.3 g/s, pauses under half a second included, and counts from
 * 5 g on. Because of that half second a stream cut off at once seems to fall for 0.4 s.
 *
 * @param fallSeconds from 90 to 10 % of the last steady flow, where it falls so far
 * @param tailGrams what still arrives after the flow fell under half of its last steady value, where rest follows
 * @param settleSeconds from then until within 0.1 g of the value 1.8 to 3 s later
 */
record TracedPour(
    double startSeconds,
    double endSeconds,
    double gainGrams,
    double medianFlow,
    double highFlow,
    double lastFlow,
    OptionalDouble fallSeconds,
    OptionalDouble tailGrams,
    OptionalDouble settleSeconds) {

  private static final double STEP = 0.05;
  private static final int HALF = 5;
  private static final double FLOWING = 0.3;
  private static final int PAUSE = 10;
  private static final double LEAST_GAIN = 5;
  private static final int SETTLED_FROM = 36;
  private static final int SETTLED_TO = 60;

  static List<TracedPour> in(WeightTrace trace) {
    if (trace.size() < 2) return List.of();
    double[] grams = trace.evenly(STEP);
    double[] flow = flow(grams);
    List<TracedPour> pours = new ArrayList<>();
    for (int at = 0; at < flow.length; at++) {
      if (flow[at] <= FLOWING) continue;
      int start = at;
      int end = at;
      for (; at < flow.length && at - end < PAUSE; at++) if (flow[at] > FLOWING) end = at;
      if (at(grams, end + HALF) - at(grams, start - HALF) > LEAST_GAIN)
        pours.add(measure(grams, flow, start, end));
    }
    return pours;
  }

  private static TracedPour measure(double[] grams, double[] flow, int start, int end) {
    double[] flows = Arrays.copyOfRange(flow, start, end + 1);
    double half = Figures.median(Arrays.stream(flows).filter(each -> each > 0.5).toArray()) / 2;
    int strong = end;
    while (strong > start && flow[strong] < half) strong--;
    double last = Figures.median(
        Arrays.copyOfRange(flow, Math.max(start, strong - 20), Math.max(start, strong - 4) + 1));
    int cut = end;
    while (cut > start && flow[cut] < last / 2) cut--;
    OptionalDouble tail = OptionalDouble.empty();
    OptionalDouble settle = OptionalDouble.empty();
    if (restFollows(flow, cut)) {
      double settled =
          Figures.mean(Arrays.copyOfRange(grams, cut + SETTLED_FROM, cut + SETTLED_TO + 1));
      int within = SETTLED_TO;
      while (within > 0 && Math.abs(grams[cut + within] - settled) <= 0.1) within--;
      tail = OptionalDouble.of(settled - grams[cut]);
      settle = OptionalDouble.of(within * STEP);
    }
    return new TracedPour(
        start * STEP,
        end * STEP,
        at(grams, end + HALF) - at(grams, start - HALF),
        Figures.median(flows),
        Figures.quantile(flows, 0.95),
        last,
        fall(flow, start, cut, last),
        tail,
        settle);
  }

  private static OptionalDouble fall(double[] flow, int start, int cut, double last) {
    int full = cut;
    while (full > start && flow[full] < 0.9 * last) full--;
    int low = cut;
    while (low < flow.length && flow[low] > 0.1 * last) low++;
    return low == flow.length ? OptionalDouble.empty() : OptionalDouble.of((low - full) * STEP);
  }

  private static boolean restFollows(double[] flow, int cut) {
    if (cut + SETTLED_TO >= flow.length) return false;
    for (int i = cut + SETTLED_FROM; i < cut + SETTLED_TO; i++)
      if (flow[i] >= 2 * FLOWING) return false;
    return true;
  }

  private static double[] flow(double[] grams) {
    double[] flow = new double[grams.length];
    for (int i = 0; i < grams.length; i++) {
      int from = Math.max(0, i - HALF);
      int to = Math.min(grams.length - 1, i + HALF);
      flow[i] = to == from ? 0 : (grams[to] - grams[from]) / ((to - from) * STEP);
    }
    return flow;
  }

  private static double at(double[] grams, int place) {
    return grams[Math.max(0, Math.min(grams.length - 1, place))];
  }
}
