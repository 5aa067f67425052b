package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.Recipe;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The recipe of a plan file, as the bench starts it. */
class PlannedProductTest {
  private final PlannedProduct product = new PlannedProduct(PlanFile.order());

  /** 756 g at 8 % of the wax: 756/1.08 = 700 and 56, as worked by hand. */
  @Test
  void it_makes_what_its_plan_says() {
    Recipe recipe = product.forVessels(3);
    assertThat(new BatchPlan(recipe, 3).targets())
        .isEqualTo(List.of(Mass.ofGrams("700"), Mass.ofGrams("56")));
    assertThat(recipe.id()).isEqualTo(product.id()).isEqualTo("harbour-lane");
    assertThat(recipe.name()).isEqualTo("Harbour Lane candle (invented), version 1");
  }

  @Test
  void a_tolerance_that_is_a_share_grows_with_the_vessels() {
    assertThat(product.forVessels(3).parts().get(1).tolerance())
        .isEqualTo(Tolerance.ofGrams("0.56", "0.56"));
    assertThat(product.forVessels(12).parts().get(1).tolerance())
        .isEqualTo(Tolerance.ofGrams("2.24", "2.24"));
  }

  @Test
  void more_than_its_pot_and_scale_carry_is_refused_with_the_sum() {
    assertThat(product.refusal(12)).isEmpty();
    assertThat(product.refusal(20).orElseThrow())
        .contains("Pot A for 20 vessels", "450 g", "5040 g", "490 g too much");
  }
}
