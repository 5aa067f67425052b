package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.batch.Fraction;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Loads as others have printed them, and what goes wrong when one meaning is taken for another. */
class PublishedLoadsTest {

  @ParameterizedTest(name = "{0}: {4} {3} at {2} % of {1}, {9}")
  @CsvFileSource(
      resources = "published-loads.tsv",
      delimiter = '\t',
      numLinesToSkip = 4,
      encoding = "UTF-8",
      quoteCharacter = '\0')
  void a_printed_load_comes_out_as_printed(
      String meaning,
      String basis,
      String percent,
      String unit,
      String total,
      String wax,
      String oil,
      String additivePercent,
      String additive,
      String source) {
    String hardener = additive.equals("-")
        ? ""
        : "{\"kind\": \"additive\", \"name\": \"Lane Hardener\", \"share\": \"" + additivePercent
            + " %\", \"of\": \"" + basis + "\", \"tolerance\": \"5 %\"}, ";
    List<PlannedPart> parts = PlanFile.plan(
            "\"252 g\"", "\"" + total + " " + unit + "\"",
            "\"vessels\": 3", "\"vessels\": 1",
            "{\"kind\": \"oil\"", hardener + "{\"kind\": \"oil\"",
            "\"8 %\", \"of\": \"wax\"", "\"" + percent + " %\", \"of\": \"" + basis + "\"")
        .parts();
    assertThat(in(unit, parts.get(0).exact(), wax)).isEqualTo(wax);
    assertThat(in(unit, parts.get(parts.size() - 1).exact(), oil)).isEqualTo(oil);
    if (!additive.equals("-"))
      assertThat(in(unit, parts.get(1).exact(), additive)).isEqualTo(additive);
  }

  /** A mass in a unit, rounded as the printed figure is. */
  private static String in(String unit, Mass mass, String printed) {
    for (MassUnit each : MassUnit.values())
      if (each.symbol().equals(unit))
        return new BigDecimal(mass.text(each, 6))
            .setScale(Math.max(0, new BigDecimal(printed).scale()), RoundingMode.HALF_EVEN)
            .toPlainString();
    throw new AssertionError(unit);
  }

  @Test
  void three_glasses_of_252_g_at_8_percent_are_700_and_56_of_wax_or_695_52_and_60_48_of_total() {
    WorkshopPlan ofWax = PlanFile.plan();
    assertThat(ofWax.total()).isEqualTo(Mass.ofGrams("756"));
    assertThat(masses(ofWax)).containsExactly(Mass.ofGrams("700"), Mass.ofGrams("56"));
    OtherMeaning other = ofWax.parts().get(1).otherMeaning().orElseThrow();
    assertThat(other.wax()).isEqualTo(Mass.ofGrams("695.52"));
    assertThat(other.part()).isEqualTo(Mass.ofGrams("60.48"));
    WorkshopPlan ofTotal = PlanFile.plan("\"8 %\", \"of\": \"wax\"", "\"8 %\", \"of\": \"total\"");
    assertThat(masses(ofTotal)).containsExactly(Mass.ofGrams("695.52"), Mass.ofGrams("60.48"));
    assertThat(ofTotal.parts().get(1).otherMeaning().orElseThrow().part())
        .isEqualTo(Mass.ofGrams("56"));
  }

  private static List<Mass> masses(WorkshopPlan plan) {
    return plan.parts().stream().map(PlannedPart::exact).toList();
  }

  /** Worked by hand from f/(1+f) and f/(1−f). */
  @ParameterizedTest
  @CsvSource({
    "6, 5.66, 6.38",
    "8, 7.41, 8.70",
    "10, 9.09, 11.11",
    "12, 10.71, 13.64",
    "15, 13.04, 17.65"
  })
  void the_other_meaning_of_a_load_stands_beside_it(String percent, String ofTotal, String ofWax) {
    String share = "\"" + percent + " %\"";
    PlannedPart statedOfWax = PlanFile.plan("\"8 %\"", share).parts().get(1);
    assertThat(statedOfWax.ofTotal().percentText(2)).isEqualTo(ofTotal);
    PlannedPart statedOfTotal = PlanFile.plan(
            "\"8 %\", \"of\": \"wax\"", share + ", \"of\": \"total\"")
        .parts()
        .get(1);
    assertThat(statedOfTotal.ofWax().percentText(2)).isEqualTo(ofWax);
  }

  @Test
  void with_several_oils_the_other_meaning_is_taken_of_all_oils_together() {
    WorkshopPlan plan = PlanFile.plan(
        "\"parts\": [",
        "\"oilLoad\": {\"share\": \"8 %\", \"of\": \"wax\"}, \"parts\": [",
        "\"8 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}",
        "\"75 %\", \"of\": \"oil\", \"tolerance\": \"1 %\"}, "
            + "{\"kind\": \"oil\", \"name\": \"Lane Amber\", \"share\": \"25 %\", \"of\": \"oil\", \"tolerance\": \"1 %\"}");
    assertThat(masses(plan))
        .containsExactly(Mass.ofGrams("700"), Mass.ofGrams("42"), Mass.ofGrams("14"));
    OtherMeaning other = plan.parts().get(1).otherMeaning().orElseThrow();
    assertThat(other.wax()).isEqualTo(Mass.ofGrams("695.52"));
    assertThat(other.part()).isEqualTo(Mass.ofGrams("45.36"));
  }

  /**
   * A tutorial of a supplier, NZ, takes 10 % of the volume as oil: 30 mL (some 30 g) in 224 g of wax for 300 mL, which is 13.4 % of the
   * wax. A capacity has a weight only through its density, and a load is of a weight.
   */
  @Test
  void a_vessel_of_300_mL_at_10_percent_never_yields_30_g_of_oil_in_224_g_of_wax() {
    for (String basis : List.of("wax", "total")) {
      List<PlannedPart> parts = PlanFile.plan(
              "{\"weight\": \"252 g\"}", "{\"capacity\": \"300 mL\", \"density\": \"0.83 g/mL\"}",
              "\"vessels\": 3", "\"vessels\": 1",
              "\"8 %\", \"of\": \"wax\"", "\"10 %\", \"of\": \"" + basis + "\"")
          .parts();
      Mass oil = parts.get(1).exact();
      assertThat(oil.plus(parts.get(0).exact())).isEqualTo(Mass.ofGrams("249"));
      assertThat(oil).isLessThan(Mass.ofGrams("25"));
      assertThat(Fraction.ratio(oil, parts.get(0).exact()).percentText(0)).isNotEqualTo("13");
    }
  }
}
