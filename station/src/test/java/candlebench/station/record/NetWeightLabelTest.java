package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NetWeightLabelTest {

  @ParameterizedTest(name = "{0} g prints {1} and {2}")
  @CsvSource({
    "227, 8 oz, 227 g", // 8.007 oz
    "226.9, 8 oz, 226 g", // 8.0037 oz
    "226.796185, 8 oz, 226 g", // 8 oz to the picogram
    "226.7, 7.99 oz, 226 g",
    "252, 8.88 oz, 252 g",
    "85.04, 2.99 oz, 85 g",
    "6.39, 0.22 oz, 6.3 g",
    "999.9, 35.27 oz, 999 g",
    "1000, 35.27 oz, 1 kg",
    "1139.9, 40.2 oz, 1.13 kg"
  })
  void both_figures_are_rounded_down(String net, String ounces, String metric) {
    assertThat(NetWeightLabel.of(Mass.ofGrams(net))).isEqualTo(new NetWeightLabel(ounces, metric));
  }

  @ParameterizedTest(name = "{0} oz prints {1}")
  @CsvSource({"8, 226 g", "10, 283 g", "3.5, 99 g", "7.25, 205 g", "16, 453 g", "40, 1.13 kg"})
  void a_label_in_whole_ounces_never_claims_a_gram_more(String ounces, String metric) {
    NetWeightLabel label = NetWeightLabel.ofOunces(ounces);
    assertThat(label.ounces()).isEqualTo(ounces + " oz");
    assertThat(label.metric()).isEqualTo(metric);
  }

  @Test
  void neither_figure_ever_states_more_than_is_there_seed_11() {
    Random random = new Random(11);
    for (int i = 0; i < 20_000; i++) {
      Mass net = new Mass(1_000_000_000_000L + (long) (random.nextDouble() * 3e15));
      NetWeightLabel label = NetWeightLabel.of(net);
      assertThat(stated(label.ounces())).isLessThanOrEqualTo(net);
      assertThat(stated(label.metric())).isLessThanOrEqualTo(net);
    }
  }

  @Test
  void a_third_decimal_of_an_ounce_and_less_than_a_gram_are_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> NetWeightLabel.ofOunces("8.125"));
    assertThatIllegalArgumentException().isThrownBy(() -> NetWeightLabel.of(Mass.ofGrams("0.999")));
  }

  private static Mass stated(String figure) {
    String[] words = figure.split(" ");
    for (MassUnit unit : MassUnit.values())
      if (unit.symbol().equals(words[1])) return Mass.of(new BigDecimal(words[0]), unit);
    throw new AssertionError(figure);
  }
}
