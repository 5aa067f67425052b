package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class NetContentTest {

  private static Mass g(String grams) {
    return Mass.ofGrams(grams);
  }

  private static LabelClaim claim(String grams) {
    return LabelClaim.parse(grams + " g");
  }

  private static List<Mass> fills(String... grams) {
    return Stream.of(grams).map(Mass::ofGrams).toList();
  }

  private static List<Mass> many(int count, String grams) {
    return new ArrayList<>(Collections.nCopies(count, g(grams)));
  }

  @ParameterizedTest(name = "{0} g")
  @CsvFileSource(
      resources = "tolerable-errors.tsv",
      delimiter = '\t',
      numLinesToSkip = 2,
      encoding = "UTF-8")
  void the_tolerable_error_follows_the_directives_table(
      String label, String error, String t1, String t2) {
    assertThat(TolerableError.of(g(label))).contains(g(error));
    Mass justBelowT1 = g(t1).minus(new Mass(1));
    Mass justBelowT2 = g(t2).minus(new Mass(1));
    NetContent content =
        NetContent.of(claim(label), List.of(g(t1), justBelowT1, g(t2), justBelowT2));
    assertThat(content.belowT1()).isEqualTo(3);
    assertThat(content.belowT2()).isEqualTo(1);
  }

  @ParameterizedTest(name = "{0} g")
  @CsvSource({
    "5, 0.5", // 0.45 rounded up to the next tenth
    "50, 4.5",
    "50.01, 4.5",
    "100.01, 4.6",
    "200, 9",
    "300, 9",
    "300.01, 9.1",
    "500.01, 15",
    "1000.01, 15.1",
    "10000, 150"
  })
  void the_tables_bands_end_where_the_directive_ends_them(String label, String error) {
    assertThat(TolerableError.of(g(label))).contains(g(error));
  }

  @Test
  void a_label_beyond_the_table_has_no_limit_and_so_keeps_no_rule() {
    assertThat(TolerableError.of(g("4.99"))).isEmpty();
    assertThat(TolerableError.of(g("10000.1"))).isEmpty();
    assertThat(NetContent.of(claim("4"), fills("4", "4")).keepsTheRules()).isFalse();
  }

  @Test
  void a_mean_under_the_label_is_flagged_though_every_vessel_is_within_three_grams() {
    NetContent content = NetContent.of(claim("227"), fills("226.5", "227.5", "226.4", "226.8"));
    assertThat(content.spread().mean()).contains(g("226.8"));
    assertThat(content.meanShort()).contains(g("0.2"));
    assertThat(content.belowT1()).isZero();
    assertThat(content.keepsTheRules()).isFalse();
  }

  @Test
  void over_is_never_held_against_the_maker() {
    NetContent content = NetContent.of(claim("227"), fills("227", "240", "260"));
    assertThat(content.meanShort()).isEmpty();
    assertThat(content.keepsTheRules()).isTrue();
  }

  @Test
  void one_in_forty_may_lie_below_t1_and_none_below_t2() {
    List<Mass> forty = many(39, "228");
    forty.add(g("217.9"));
    assertThat(NetContent.of(claim("227"), forty).keepsTheRules()).isTrue();

    List<Mass> thirtyNine = many(38, "228");
    thirtyNine.add(g("217.9"));
    NetContent fewer = NetContent.of(claim("227"), thirtyNine);
    assertThat(fewer.meanShort()).isEmpty();
    assertThat(fewer.belowT1()).isEqualTo(1);
    assertThat(fewer.allowedBelowT1()).isZero();
    assertThat(fewer.keepsTheRules()).isFalse();

    List<Mass> farShort = many(79, "228");
    farShort.add(g("208.9"));
    NetContent content = NetContent.of(claim("227"), farShort);
    assertThat(content.belowT1()).isLessThanOrEqualTo(content.allowedBelowT1());
    assertThat(content.belowT2()).isEqualTo(1);
    assertThat(content.keepsTheRules()).isFalse();
  }

  @Test
  void an_empty_batch_keeps_no_rule() {
    NetContent content = NetContent.of(claim("227"), List.of());
    assertThat(content.keepsTheRules()).isFalse();
    assertThat(content.meanShort()).isEmpty();
  }

  /** NIST Handbook 133 Table 2-5: these three were seen in print. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({"8, 0.4375", "3, 0.25"})
  void the_allowable_variation_in_ounces(String label, String ounces) {
    assertThat(AllowableVariation.ofOunces(Mass.of(label, MassUnit.OUNCE)))
        .contains(Mass.of(ounces, MassUnit.OUNCE));
  }

  /** 113 g → 7 g was seen in print, rounded; the others are from memory. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({"35, 3.5", "36, 3.6", "113, 7.2", "227, 12.7", "340, 16.3", "1120, 35.3"})
  void the_allowable_variation_in_grams(String label, String grams) {
    assertThat(AllowableVariation.ofGrams(g(label))).contains(g(grams));
  }

  @Test
  void the_two_columns_of_the_allowable_variation_agree_within_their_rounding() {
    for (int grams = 36; grams <= 489; grams++) {
      Mass metric = AllowableVariation.ofGrams(g(grams + "")).orElseThrow();
      Mass ounces = AllowableVariation.ofOunces(g(grams + "")).orElseThrow();
      Mass apart = metric.minus(ounces).abs();
      // At a band's end the two columns may already be a band apart: a sixteenth of an ounce, 1.8
      // g.
      assertThat(apart).as(grams + " g").isLessThan(g("2"));
    }
    assertThat(AllowableVariation.ofGrams(g("1121"))).isEmpty();
    assertThat(AllowableVariation.ofOunces(Mass.of("40", MassUnit.OUNCE))).isEmpty();
  }

  @Test
  void a_package_under_the_label_by_more_than_seven_sixteenths_is_counted() {
    NetContent content = NetContent.of(
        LabelClaim.parse("8 oz"),
        List.of(Mass.of("7.5625", MassUnit.OUNCE), Mass.of("7.56", MassUnit.OUNCE)));
    assertThat(content.beyondMav()).isEqualTo(1);
    assertThat(NetContent.of(claim("227"), fills("214.3", "214.2")).beyondMav())
        .as("in grams it is 12.7 g")
        .isEqualTo(1);
  }

  @Test
  void a_scale_of_a_gram_is_too_coarse_for_fifty_grams_and_fine_for_two_hundred() {
    Division gram = new Division(g("1"));
    assertThat(NetContent.of(claim("50"), List.of()).canBeCheckedIn(gram)).isFalse();
    assertThat(NetContent.of(claim("200"), List.of()).canBeCheckedIn(gram)).isTrue();
    assertThat(NetContent.of(claim("50"), List.of()).canBeCheckedIn(new Division(g("0.1"))))
        .isTrue();
  }
}
