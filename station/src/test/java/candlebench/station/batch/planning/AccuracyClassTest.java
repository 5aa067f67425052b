package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Accuracy classes against the tables of OIML R 76-1:2006. */
class AccuracyClassTest {
  private static final Mass PICOGRAM = new Mass(1);

  private static Mass g(String grams) {
    return Mass.ofGrams(grams);
  }

  private static Mass intervals(String count, Mass interval) {
    return new Mass(
        new BigDecimal(count).multiply(BigDecimal.valueOf(interval.picograms())).longValueExact());
  }

  @ParameterizedTest(name = "{0} above {1} e")
  @CsvFileSource(
      resources = "r76-mpe.tsv",
      delimiter = '\t',
      numLinesToSkip = 3,
      encoding = "UTF-8")
  void permissible_errors_are_those_of_table_6(
      AccuracyClass accuracy, String above, String upTo, String verification, String service) {
    Mass e = g("0.1");
    Mass lowest = intervals(above, e).plus(PICOGRAM);
    Mass highest = upTo == null ? intervals("1000000", e) : intervals(upTo, e);
    for (Mass load : new Mass[] {lowest, highest}) {
      assertThat(accuracy.errorInService(load, e)).isEqualTo(intervals(service, e));
      assertThat(accuracy.errorAtVerification(load, e)).isEqualTo(intervals(verification, e));
    }
    assertThat(accuracy.errorInService(Mass.ZERO, e)).isEqualTo(e);
  }

  @ParameterizedTest(name = "{0} from {1} g")
  @CsvFileSource(
      resources = "r76-classes.tsv",
      delimiter = '\t',
      numLinesToSkip = 3,
      encoding = "UTF-8")
  void intervals_and_least_loads_are_those_of_table_3(
      AccuracyClass accuracy, String from, String to, String fewest, String most, String least) {
    for (String size : to == null ? new String[] {from} : new String[] {from, to}) {
      Mass e = g(size);
      assertThat(accuracy.leastLoad(e, e)).contains(intervals(least, e));
      assertThat(accuracy.fault(intervals(fewest, e), e, e)).isEmpty();
      Mass tooFew = intervals(fewest, e).minus(PICOGRAM);
      assertThat(accuracy.fault(tooFew, e, e).orElseThrow()).contains("class " + accuracy, fewest);
      if (most == null) continue;
      assertThat(accuracy.fault(intervals(most, e), e, e)).isEmpty();
      Mass tooMany = intervals(most, e).plus(e);
      assertThat(accuracy.fault(tooMany, e, e).orElseThrow()).contains(most);
    }
  }

  @Test
  void an_interval_that_a_class_does_not_have_is_told() {
    assertThat(AccuracyClass.III.fault(g("500"), g("0.01"), g("0.01")).orElseThrow())
        .contains("no interval e = 0.01 g");
  }

  /** Worked by hand from the tables: class III, 3 kg × 1 g; class II, 600 g, e = 0.1 g, d = 0.01 g. */
  @Test
  void two_bench_scales_worked_by_hand() {
    Mass one = g("1");
    assertThat(AccuracyClass.III.fault(g("3000"), one, one)).isEmpty();
    assertThat(AccuracyClass.III.leastLoad(one, one)).contains(g("20"));
    assertThat(AccuracyClass.III.errorInService(g("500"), one)).isEqualTo(g("1"));
    assertThat(AccuracyClass.III.errorInService(g("2000"), one)).isEqualTo(g("2"));
    assertThat(AccuracyClass.III.errorInService(g("3000"), one)).isEqualTo(g("3"));
    Mass tenth = g("0.1");
    assertThat(AccuracyClass.II.fault(g("600"), tenth, g("0.01"))).isEmpty();
    assertThat(AccuracyClass.II.leastLoad(tenth, g("0.01"))).contains(g("0.5"));
    assertThat(AccuracyClass.II.leastLoad(tenth, tenth)).contains(g("5"));
    assertThat(AccuracyClass.II.errorInService(g("500"), tenth)).isEqualTo(tenth);
    assertThat(AccuracyClass.II.errorInService(g("600"), tenth)).isEqualTo(g("0.2"));
    assertThat(AccuracyClass.III.fault(g("3000"), one, tenth).orElseThrow())
        .contains("no division finer");
  }
}
