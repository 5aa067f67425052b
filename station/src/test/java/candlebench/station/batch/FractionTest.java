package candlebench.station.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Mass;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FractionTest {

  @Test
  void a_share_no_decimal_holds_is_exact() {
    Fraction ofTotal = Load.ofWax("10").otherWay().share();
    assertThat(ofTotal).isEqualTo(Fraction.of(1, 11));
    assertThat(ofTotal.of(Mass.ofGrams("11"))).isEqualTo(Mass.ofGrams("1"));
    assertThat(ofTotal.percentText(2)).isEqualTo("9.09");
  }

  @Test
  void a_percentage_with_decimals_is_read_exactly() {
    assertThat(Fraction.percent("0.05")).isEqualTo(Fraction.of(1, 2000));
    assertThat(Fraction.percent("8")).isEqualTo(Fraction.of(2, 25));
    assertThat(Fraction.percent("1E+2")).isEqualTo(Fraction.ONE);
  }

  @Test
  void half_a_picogram_is_rounded_to_even_once() {
    assertThat(Fraction.of(1, 2).of(new Mass(5))).isEqualTo(new Mass(2));
    assertThat(Fraction.of(1, 2).of(new Mass(7))).isEqualTo(new Mass(4));
    assertThat(Fraction.of(-1, 2).of(new Mass(5))).isEqualTo(new Mass(-2));
  }

  @Test
  void a_share_comes_back_from_its_text() {
    SplittableRandom random = new SplittableRandom(7);
    for (int i = 0; i < 1000; i++) {
      Fraction share = Fraction.of(random.nextInt(-999, 999), random.nextInt(1, 999));
      assertThat(Fraction.parse(share.toString())).isEqualTo(share);
      if (!share.isZero())
        assertThat(share.dividedBy(share).minus(Fraction.ONE)).isEqualTo(Fraction.ZERO);
    }
  }

  @Test
  void a_share_of_nothing_is_refused() {
    assertThatThrownBy(() -> Fraction.of(1, 0)).hasMessageContaining("denominator is zero");
  }

  @Test
  void loads_convert_as_printed_tables_of_the_trade_say() {
    // f/(1+f) and f/(1-f), worked by hand to two decimals.
    String[][] rows = {
      {"6", "5.66", "6.38"},
      {"8", "7.41", "8.70"},
      {"10", "9.09", "11.11"},
      {"12", "10.71", "13.64"},
      {"15", "13.04", "17.65"}
    };
    for (String[] row : rows) {
      assertThat(Load.ofWax(row[0]).otherWay().share().percentText(2)).isEqualTo(row[1]);
      assertThat(Load.ofTotal(row[0]).otherWay().share().percentText(2)).isEqualTo(row[2]);
      assertThat(Load.ofWax(row[0]).otherWay().otherWay()).isEqualTo(Load.ofWax(row[0]));
    }
  }
}
