package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded.Acknowledged;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.formats.ScaleFormats;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One bit hit on the way, in every place of every frame that has a checksum. */
class ChecksumTest {
  private static final Set<String> ALL_BITS =
      Set.of("cas/sw", "yaohua/12", "yaohua/cmd", "yaohua/a12");

  /** Bit 7 is parity here and in no sum: a hit there is mended. */
  private static final Set<String> SEVEN_BITS = Set.of("toledo/chk", "toledo/short-chk");

  static Stream<CorpusRow> rows() {
    return Stream.concat(ALL_BITS.stream(), SEVEN_BITS.stream())
        .sorted()
        .flatMap(id -> CorpusRow.of(ScaleFormats.of(id)).stream())
        .filter(row -> row.bytes().length > 1 && !(row.decoded() instanceof Refused));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void any_single_bit_that_was_hit_is_noticed(CorpusRow row) {
    for (int bit = 0; bit < 8 * row.bytes().length; bit++) {
      boolean mended = bit % 8 == 7 && SEVEN_BITS.contains(row.format().id());
      Decoded said = row.format().decode(new Frame(0, hit(row.bytes(), bit), CorpusRow.STAMP));
      if (mended) assertThat(said).as("bit " + bit).isEqualTo(row.decoded());
      else assertThat(said).as("bit " + bit).isInstanceOf(Refused.class);
    }
  }

  @ParameterizedTest
  @MethodSource("rows")
  void a_stream_with_a_bit_hit_says_nothing_else_than_it_did(CorpusRow row) {
    for (int bit = 0; bit < 8 * row.bytes().length; bit++) {
      List<Decoded> weights = new ArrayList<>();
      Framer framer = row.format().newFramer();
      for (byte[] each : List.of(row.bytes(), hit(row.bytes(), bit), row.bytes()))
        framer.feed(each, each.length, CorpusRow.STAMP, frame -> {
          Decoded said = row.format().decode(frame);
          if (!(said instanceof Refused)) weights.add(said);
        });
      assertThat(weights).as("bit " + bit).allMatch(row.decoded()::equals).hasSizeBetween(1, 3);
    }
  }

  @Test
  void both_lists_are_tried_with_more_than_a_handful_of_frames() {
    assertThat(rows()).hasSizeGreaterThan(30).anyMatch(row -> isReply(row.decoded()));
  }

  private static boolean isReply(Decoded said) {
    return said instanceof Acknowledged || said instanceof InstrumentFault;
  }

  private static byte[] hit(byte[] bytes, int bit) {
    byte[] changed = bytes.clone();
    changed[bit / 8] ^= (byte) (1 << bit % 8);
    return changed;
  }
}
