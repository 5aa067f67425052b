package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.StatusOnly;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.WireLayout.Shown;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class FormatLayoutsTest {
  private static final long SEED = 20261125;
  private static final int ROUNDS = 4000;

  static Stream<Arguments> layouts() {
    return CorpusRow.formats()
        .flatMap(format -> format.layouts().stream()
            .map(layout -> Arguments.of(format.id(), layout.name(), format, layout)));
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("layouts")
  void what_is_written_is_read_again(
      String id, String name, ScaleFormat format, WireLayout layout) {
    Random random = new Random(SEED);
    List<Decoded> ofCorpus =
        CorpusRow.of(format).stream().map(CorpusRow::decoded).toList();
    int written = 0;
    for (int round = 0; round < ROUNDS; round++) {
      boolean known = random.nextInt(4) == 0;
      Decoded said = known ? ofCorpus.get(random.nextInt(ofCorpus.size())) : anything(random);
      Shown shown = new Shown(unit(random), random.nextInt(5), random.nextInt(100));
      Optional<byte[]> frame = layout.encode(said, shown);
      if (frame.isEmpty()) continue;
      written++;
      assertThat(format.decode(new Frame(0, frame.get(), CorpusRow.STAMP)))
          .as("seed %d round %d: %s", SEED, round, EscapedBytes.text(frame.get()))
          .isEqualTo(said);
    }
    assertThat(written).as("how many of %d messages %s can say", ROUNDS, name).isPositive();
  }

  private static Decoded anything(Random random) {
    Basis basis = Basis.values()[random.nextInt(3)];
    Stability stability = Stability.values()[random.nextInt(3)];
    return switch (random.nextInt(9)) {
      case 0 -> new OutOfRange(OutOfRange.Side.values()[random.nextInt(2)], basis);
      case 1 -> new TareStated(indication(random), stability);
      case 2 -> new StatusOnly(stability);
      case 3 -> new InstrumentFault(String.format("E%02d", random.nextInt(100)), basis);
      case 4 -> new Decoded.Acknowledged("\u0006");
      default -> new Weighed(indication(random), basis, stability);
    };
  }

  private static Indication indication(Random random) {
    int decimals = random.nextInt(5);
    long digits = random.nextInt((int) Math.pow(10, 1 + random.nextInt(7)));
    String number = BigDecimal.valueOf(digits, decimals).toPlainString();
    if (random.nextInt(3) == 0) number = "-" + number;
    return new Indication(
        number, random.nextInt(4) == 0 ? Optional.empty() : Optional.of(unit(random)));
  }

  private static MassUnit unit(Random random) {
    MassUnit unit = MassUnit.values()[random.nextInt(MassUnit.values().length)];
    return unit == MassUnit.GRAIN ? MassUnit.GRAM : unit;
  }
}
