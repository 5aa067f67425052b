package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.PotShare;
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
  void more_than_its_pot_and_scale_carry_is_made_in_turns_and_what_no_turn_can_make_is_refused() {
    assertThat(product.refusal(12)).isEmpty();
    assertThat(product.shares(12)).isEmpty();
    assertThat(product.refusal(20)).isEmpty();
    assertThat(product.shares(20)).extracting(PotShare::vessels).containsExactly(10, 10);
    assertThat(product.shares(20).get(0).pot()).isEqualTo("Pot A");
    assertThat(new BatchPlan(product.shares(20).get(0).recipe(), 10).total())
        .isEqualTo(Mass.ofGrams("2520"));
  }
}
