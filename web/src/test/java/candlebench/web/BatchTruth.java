package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Holds what a finished batch recorded against what the hands truly had in pot and vessels. */
final class BatchTruth {
  private static final Mass STEP = Mass.ofGrams("0.1");
  private static final Pattern TAKEN =
      Pattern.compile("\"place\":\"([a-z-]+ \\d+)\".*?\"net\":\"(-?\\d+(?:\\.\\d+)?)\"");

  private BatchTruth() {}

  /** Every recorded weight is what was truly there, within a division; the parts sum to what the pot held. */
  static void check(RealBench real, BatchHands hands, int vessels) throws Exception {
    Map<String, Mass> recorded = recorded(real);
    List<Mass> inPot = real.bench().ask(hands::inPot);
    isNear("wax", recorded.get("part 1"), inPot.get(0), STEP);
    Mass parts = recorded.entrySet().stream()
        .filter(weight -> !weight.getKey().startsWith("vessel"))
        .map(Map.Entry::getValue)
        .reduce(Mass.ZERO, Mass::plus);
    isNear("all parts", parts, inPot.get(inPot.size() - 1), STEP.times(recorded.size() - vessels));
    Map<String, Mass> filled = real.bench().ask(hands::contents);
    assertThat(filled).hasSize(vessels);
    filled.forEach((vessel, truth) -> isNear(vessel, recorded.get(vessel), truth, STEP));
  }

  private static void isNear(String what, Mass recorded, Mass truth, Mass most) {
    assertThat(recorded.minus(truth).abs())
        .as("%s: recorded %s, true %s", what, recorded, truth)
        .isLessThanOrEqualTo(most);
  }

  /** The accepted weights of the export, by place. */
  private static Map<String, Mass> recorded(RealBench real) throws Exception {
    Map<String, Mass> weights = new TreeMap<>();
    String out = Program.run("export", "--data", real.data().toString()).out();
    for (String line : out.split("\n")) {
      if (!line.contains("\"kind\":\"weight-accepted\"")) continue;
      Matcher taken = TAKEN.matcher(line);
      assertThat(taken.find()).as(line).isTrue();
      assertThat(weights.put(taken.group(1), Mass.ofGrams(taken.group(2)))).isNull();
    }
    return weights;
  }
}
