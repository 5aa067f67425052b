package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.batch.Fraction;
import candlebench.station.batch.planning.SensitiserCheck.Standing;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class SensitiserCheckTest {

  private static WorkshopPlan plan(String load, String sensitisers) {
    return PlanFile.plan(
        "\"8 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}",
        load + ", \"tolerance\": \"1 %\", \"sensitisers\": [" + sensitisers + "]}");
  }

  private static String sensitiser(String category, String content, String more) {
    return "{\"name\": \"quayol\", \"category\": \"" + category + "\", \"content\": \"" + content
        + "\"" + more + "}";
  }

  @ParameterizedTest
  @CsvFileSource(
      resources = "clp-skin-sensitisers.tsv",
      delimiter = '\t',
      numLinesToSkip = 3,
      encoding = "UTF-8")
  void the_limits_are_those_of_the_regulation(String category, String classifies, String named) {
    SensitiserCategory known = Typed.category(category);
    assertThat(known.classifiesFrom()).isEqualTo(share(classifies));
    assertThat(known.namedFrom()).isEqualTo(share(named));
  }

  private static Fraction share(String decimal) {
    return Fraction.percent(new BigDecimal(decimal).movePointRight(2).toPlainString());
  }

  @Test
  void eleven_percent_of_a_1B_substance_in_10_percent_of_wax_is_exactly_1_percent_and_classifies() {
    WorkshopPlan plan = plan("\"10 %\", \"of\": \"wax\"", sensitiser("1B", "11 %", ""));
    SensitiserCheck check = plan.sensitisers().get(0);
    assertThat(check.share()).isEqualTo(Fraction.of(1, 100));
    assertThat(check.standing()).isEqualTo(Standing.CLASSIFIES);
    assertThat(plan.findings()).anyMatch(finding -> finding.rule() == Rule.SENSITISER_CLASSIFIES);
    assertThat(plan.isRefused()).isFalse();
  }

  /** Worked by hand; the first three from CLP Annex I, Tables 3.4.5 and 3.4.6. */
  @ParameterizedTest
  @CsvSource({
    "1A, 0.5 %, 7 %, total, '', 7/20000, NAMED",
    "1B, 12 %, 9 %, total, '', 27/2500, CLASSIFIES",
    "1B, 11 %, 9.99 %, wax, '', 10989/1099900, NAMED",
    "1A, 1 %, 10 %, total, '', 1/1000, CLASSIFIES",
    "1, 1 %, 10 %, total, '', 1/1000, NAMED",
    "1B, 0.99 %, 10 %, total, '', 99/100000, BELOW",
    "1A, 0.0999 %, 10 %, total, '', 999/10000000, BELOW",
    "1B, 2 %, 10 %, total, '0.2 %', 1/500, CLASSIFIES",
    "1B, 0.2 %, 10 %, total, '0.2 %', 1/5000, NAMED",
    "1B, 0.19 %, 10 %, total, '0.2 %', 19/100000, BELOW",
    "1B, 10 %, 10 %, total, '2 %', 1/100, NAMED",
    "1B, 1 %, 10 %, total, '2 %', 1/1000, NAMED"
  })
  void a_share_of_the_total_is_held_against_the_limit_exactly(
      String category,
      String content,
      String load,
      String basis,
      String specific,
      String expected,
      Standing standing) {
    String more = specific.isEmpty() ? "" : ", \"specificLimit\": \"" + specific + "\"";
    SensitiserCheck check = plan(
            "\"" + load + "\", \"of\": \"" + basis + "\"", sensitiser(category, content, more))
        .sensitisers()
        .get(0);
    assertThat(check.share()).isEqualTo(Typed.share(expected));
    assertThat(check.standing()).isEqualTo(standing);
  }

  @Test
  void one_substance_of_two_oils_adds_up_and_two_substances_do_not() {
    String second =
        "\"tolerance\": \"1 %\"}, {\"kind\": \"oil\", \"name\": \"Lane Amber\", \"share\": \"5 %\","
            + " \"of\": \"total\", \"tolerance\": \"1 %\", \"sensitisers\": ["
            + sensitiser("1B", "12 %", "") + ", "
            + sensitiser("1B", "9 %", "").replace("quayol", "cedrin") + "]}";
    WorkshopPlan plan = PlanFile.plan(
        "\"8 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}",
        "\"5 %\", \"of\": \"total\", \"sensitisers\": [" + sensitiser("1B", "8 %", "") + ", "
            + sensitiser("1B", "9 %", "").replace("quayol", "amberol") + "], " + second);
    assertThat(plan.sensitisers())
        .extracting(check -> check.sensitiser().name(), SensitiserCheck::share)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("quayol", Fraction.of(1, 100)),
            org.assertj.core.groups.Tuple.tuple("amberol", Fraction.of(45, 10_000)),
            org.assertj.core.groups.Tuple.tuple("cedrin", Fraction.of(45, 10_000)));
  }

  @Test
  void the_comparison_is_said_to_be_an_aid() {
    String text = PlanText.of(plan("\"10 %\", \"of\": \"wax\"", sensitiser("1B", "11 %", "")));
    assertThat(text).contains("1/100 = 1 % of total", "CLASSIFIES", SensitiserCheck.CAUTION);
  }
}
