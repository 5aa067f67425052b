package candlebench.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class MassTest {

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 200);
  }

  @ParameterizedTest
  @CsvSource({
    "1, oz, 28349523125000", // NIST Handbook 44 appendix C: 28.349523125 g
    "0.001, oz, 28349523125",
    "0.125, oz, 3543690390625",
    "0.0000001, lb, 45359237",
    "1, ct, 200000000000",
    "0.1, mg, 100000000",
    "9223372, g, 9223372000000000000",
  })
  void what_bench_scales_show_is_a_whole_number_of_picograms(
      String amount, String symbol, long picograms) {
    for (MassUnit unit : MassUnit.values())
      if (unit.symbol().equals(symbol)) {
        assertThat(Mass.of(amount, unit).picograms()).isEqualTo(picograms);
        BigDecimal exact =
            new BigDecimal(amount).multiply(unit.grams()).multiply(BigDecimal.TEN.pow(12));
        assertThat(exact).isEqualByComparingTo(BigDecimal.valueOf(picograms));
      }
  }

  @Test
  void what_is_finer_rounds_once_half_to_even() {
    assertThat(Mass.ofGrams("0.0000000000005")).isEqualTo(Mass.ZERO);
    assertThat(Mass.ofGrams("0.0000000000015")).isEqualTo(new Mass(2));
    assertThat(Mass.ofGrams("-0.0000000000025")).isEqualTo(new Mass(-2));
    assertThat(Mass.of("0.0005", MassUnit.OUNCE)).isEqualTo(new Mass(14_174_761_562L));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void adding_and_taking_away_undo_each_other(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Mass a = new Mass(random.nextLong(-4_000_000_000_000_000_000L, 4_000_000_000_000_000_000L));
    Mass b = new Mass(random.nextLong(-4_000_000_000_000_000_000L, 4_000_000_000_000_000_000L));
    assertThat(a.plus(b).minus(b)).isEqualTo(a);
    assertThat(a.plus(b)).isEqualTo(b.plus(a));
    assertThat(a.minus(b)).isEqualTo(b.minus(a).negated());
    assertThat(Integer.signum(a.compareTo(b)))
        .isEqualTo(a.minus(b).isNegative() ? -1 : a.equals(b) ? 0 : 1);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void a_share_is_rounded_as_exact_decimals_are(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Mass mass = new Mass(random.nextLong(-1_000_000_000_000_000L, 1_000_000_000_000_000L));
    shareIsExact(mass, random.nextLong(1, 1000), random.nextLong(1, 1000));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void a_share_whose_product_is_beyond_a_long_is_rounded_the_same(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Mass mass = new Mass(random.nextLong(1L << 50, Long.MAX_VALUE));
    long denominator = random.nextLong(1L << 20, 1L << 62);
    shareIsExact(mass, random.nextLong(1, denominator), denominator);
    shareIsExact(mass.negated(), random.nextLong(1, denominator), denominator);
  }

  private static void shareIsExact(Mass mass, long numerator, long denominator) {
    BigInteger expected = new BigDecimal(mass.picograms())
        .multiply(BigDecimal.valueOf(numerator))
        .divide(BigDecimal.valueOf(denominator), 0, RoundingMode.HALF_EVEN)
        .toBigIntegerExact();
    assertThat(mass.times(numerator, denominator).picograms()).isEqualTo(expected.longValueExact());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void grams_as_text_give_the_same_mass_back(long seed) {
    Mass mass = new Mass(new SplittableRandom(seed).nextLong());
    assertThat(Mass.ofGrams(mass.grams())).isEqualTo(mass);
  }

  @Test
  void half_a_share_goes_to_the_even_picogram() {
    assertThat(new Mass(5).times(1, 2)).isEqualTo(new Mass(2));
    assertThat(new Mass(7).times(1, 2)).isEqualTo(new Mass(4));
    assertThat(new Mass(-5).times(1, 2)).isEqualTo(new Mass(-2));
    assertThat(new Mass(-7).times(1, 2)).isEqualTo(new Mass(-4));
    assertThat(new Mass(-1).times(1, 2)).isEqualTo(Mass.ZERO);
  }

  @Test
  void what_lies_beyond_the_range_is_refused_and_never_wraps() {
    Mass most = new Mass(Long.MAX_VALUE);
    Mass least = new Mass(Long.MIN_VALUE);
    assertThatThrownBy(() -> most.plus(new Mass(1))).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> least.minus(new Mass(1))).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(least::negated).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> most.times(2)).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> most.times(3, 2)).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> Mass.ofGrams("9223373")).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> new Mass(1).times(1, 0)).hasMessageContaining("denominator");
  }

  @Test
  void text_is_rounded_once_and_keeps_its_decimals() {
    assertThat(Mass.ofGrams("56.05").text(MassUnit.GRAM, 1)).isEqualTo("56.0");
    assertThat(Mass.ofGrams("56.15").text(MassUnit.GRAM, 1)).isEqualTo("56.2");
    assertThat(Mass.ofGrams("1250").text(MassUnit.KILOGRAM, 3)).isEqualTo("1.250");
    assertThat(Mass.ofGrams("1000").grams()).isEqualTo("1000");
    assertThat(Mass.ofGrams("-0.50")).hasToString("-0.5 g");
  }
}
