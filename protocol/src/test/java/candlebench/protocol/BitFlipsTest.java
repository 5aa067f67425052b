package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.BitFlips.Outcome;
import candlebench.protocol.formats.ScaleFormats;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BitFlipsTest {
  private static final Set<String> UNDER_CHECKSUM =
      Set.of("cas/sw", "yaohua/12", "yaohua/cmd", "yaohua/a12", "toledo/chk", "toledo/short-chk");

  static Stream<ScaleFormat> withoutChecksum() {
    return ScaleFormats.all().stream().filter(format -> !UNDER_CHECKSUM.contains(format.id()));
  }

  @Test
  void under_a_checksum_no_bit_makes_another_weight() {
    for (String id : UNDER_CHECKSUM) {
      BitFlips flips = BitFlips.of(ScaleFormats.of(id));
      assertThat(flips.otherWeights()).as(flips.toString()).isZero();
      assertThat(flips.count(Outcome.OTHER_FLAG)).as(flips.toString()).isZero();
      assertThat(flips.count(Outcome.REFUSED)).as(flips.toString()).isPositive();
    }
  }

  /** Digits differ from one another by single bits, so some hits cannot be seen; what can be seen, by layout, is refused. */
  @ParameterizedTest
  @MethodSource("withoutChecksum")
  void without_one_more_bits_are_noticed_than_not_and_the_limit_is_known(ScaleFormat format) {
    BitFlips flips = BitFlips.of(format);
    assertThat(flips.frames()).isPositive();
    assertThat(flips.otherWeights()).as(flips.toString()).isPositive();
    assertThat(flips.otherWeights()).as(flips.toString()).isLessThan(flips.all() / 2);
  }
}
