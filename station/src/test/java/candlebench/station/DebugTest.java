package candlebench.station;

import org.junit.jupiter.api.Test;

class DebugTest {
  @Test
  void x() {
    for (int rate : new int[] {2, 5, 10, 25}) {
      StringBuilder all = new StringBuilder();
      for (int seed = 0; seed < 20; seed++) {
        Scenario s = Scenario.oilJobWithPot(Scenario.at(rate).seed(seed));
        s.pour("56", 4);
        double t = 0;
        while (s.takings() == 0 && t < 60) {
          s.bench.run(0.1);
          t += 0.1;
        }
        all.append(String.format(" %.1f", t));
      }
      System.out.println("TIME " + rate + all);
    }
  }
}
