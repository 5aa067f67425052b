package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabelClaimTest {

  @Test
  void ounces_claim_ounces_and_grams_claim_grams() {
    LabelClaim ounces = LabelClaim.parse("8oz");
    assertThat(ounces.net()).isEqualTo(Mass.of("8", MassUnit.OUNCE));
    assertThat(ounces.printed()).isEqualTo(new NetWeightLabel("8 oz", "226 g"));
    LabelClaim grams = LabelClaim.parse(" 227 g");
    assertThat(grams.net()).isEqualTo(Mass.ofGrams("227"));
    assertThat(grams.printed()).isEqualTo(new NetWeightLabel("8 oz", "227 g"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"8", "8 fl oz", "-8 oz", "0 g", "8.125 oz", "a g", "", "1e3 g", "8 lb"})
  void a_capacity_a_bare_number_and_nonsense_are_refused(String stated) {
    assertThatIllegalArgumentException().isThrownBy(() -> LabelClaim.parse(stated));
  }
}
