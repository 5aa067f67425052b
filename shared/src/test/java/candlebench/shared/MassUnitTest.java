package candlebench.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Stream;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import tech.units.indriya.unit.Units;

/** Units against published factors and against an independent units library (JSR 385's reference implementation). */
class MassUnitTest {

  record Row(MassUnit from, MassUnit to, BigDecimal factor, boolean exact, String labelFactor) {}

  static Stream<Row> published() throws IOException {
    try (InputStream table = MassUnitTest.class.getResourceAsStream("/conversions.tsv")) {
      return new String(table.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split("\t"))
          .map(cell -> new Row(
              bySymbol(cell[0]),
              bySymbol(cell[1]),
              new BigDecimal(cell[2]),
              cell[3].equals("yes"),
              cell[4]));
    }
  }

  @ParameterizedTest
  @MethodSource("published")
  void each_factor_is_the_published_one(Row row) {
    if (row.exact()) {
      assertThat(row.from().grams())
          .isEqualByComparingTo(row.factor().multiply(row.to().grams()));
    } else {
      double ratio =
          row.from().grams().divide(row.to().grams(), MathContext.DECIMAL128).doubleValue();
      assertThat(ratio).isEqualTo(row.factor().doubleValue());
    }
  }

  @ParameterizedTest
  @MethodSource("published")
  void each_factor_rounds_to_the_one_for_labels(Row row) {
    if (row.labelFactor().equals("-")) return;
    MathContext six = new MathContext(6, RoundingMode.HALF_EVEN);
    assertThat(row.from().grams().divide(row.to().grams(), six))
        .isEqualByComparingTo(new BigDecimal(row.labelFactor()));
  }

  @Test
  void the_table_was_read() throws IOException {
    assertThat(published()).hasSize(10);
  }

  @ParameterizedTest
  @EnumSource
  void an_independent_library_knows_the_same_sizes(MassUnit unit) {
    double theirs = THEIR_UNITS.get(unit).getConverterTo(Units.GRAM).convert(1.0);
    assertThat(unit.grams().doubleValue())
        .isEqualTo(theirs, org.assertj.core.data.Offset.offset(1e-12 * theirs));
  }

  /** The library brings gram and kilogram; the others are made from its kilogram by their definitions, not from our table. */
  private static final Map<MassUnit, Unit<Mass>> THEIR_UNITS = Map.of(
      MassUnit.GRAM, Units.GRAM,
      MassUnit.KILOGRAM, Units.KILOGRAM,
      MassUnit.MILLIGRAM, javax.measure.MetricPrefix.MILLI(Units.GRAM),
      MassUnit.CARAT, javax.measure.MetricPrefix.MILLI(Units.GRAM).multiply(200),
      MassUnit.POUND, pound(),
      MassUnit.OUNCE, pound().divide(16),
      MassUnit.GRAIN, pound().divide(7000));

  private static Unit<Mass> pound() {
    return Units.KILOGRAM.multiply(45359237).divide(100000000);
  }

  private static MassUnit bySymbol(String symbol) {
    for (MassUnit unit : MassUnit.values()) if (unit.symbol().equals(symbol)) return unit;
    throw new IllegalArgumentException("no unit " + symbol);
  }
}
