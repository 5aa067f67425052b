package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A bit hit on the way makes another weight of a frame, which no checksum or layout shows. Such a weight is never taken, cries no over-pour
 * and takes nothing back: it moves faster than any pour, and it does not stay.
 */
class HitBitsTest {
  private static final int FRAMES_PER_HIT = 30;
  private static final int TRIES = 200;

  static Stream<String> formats() {
    return ScaleFormats.all().stream().map(ScaleFormat::id);
  }

  @ParameterizedTest
  @MethodSource("formats")
  void one_frame_in_thirty_that_lies_spoils_nothing(String format) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(10).format(format).seed(12));
    Lies lies = new Lies(ScaleFormats.of(format), 12);
    scenario.bench.wire(lies);
    scenario.pour("30", 4);
    scenario.bench.run(2);
    scenario.pour("26", 4);
    WeightAccepted taken = scenario.settle();
    assertThat(taken.net().roughGrams()).isCloseTo(56, within(0.35));
    scenario.bench.run(15);
    assertThat(scenario.takings()).isEqualTo(1);
    assertThat(scenario.bench.all(OverPoured.class)).isEmpty();
    assertThat(scenario.bench.all(AcceptanceReopened.class)).isEmpty();
    assertThat(lies.told + lies.noticed).as("told %d", lies.told).isGreaterThan(3);
  }

  /** Hits one bit of one frame in thirty, and of all bits one that makes another weight, if there is one. */
  private static final class Lies implements UnaryOperator<byte[]> {
    private final ScaleFormat format;
    private final SplittableRandom random;
    private int told;
    private int noticed;

    Lies(ScaleFormat format, long seed) {
      this.format = format;
      this.random = new SplittableRandom(seed);
    }

    @Override
    public byte[] apply(byte[] sent) {
      if (random.nextInt(FRAMES_PER_HIT) > 0) return sent;
      Optional<Weighed> truth = weight(sent);
      byte[] hit = sent;
      for (int tries = 0; tries < TRIES; tries++) {
        hit = hit(sent);
        Optional<Weighed> said = weight(hit);
        boolean lie = said.isPresent()
            && truth.isPresent()
            && !said.get().indication().equals(truth.get().indication());
        if (!lie) continue;
        told++;
        return hit;
      }
      noticed++;
      return hit;
    }

    private byte[] hit(byte[] sent) {
      byte[] hit = sent.clone();
      int bit = random.nextInt(8 * hit.length);
      hit[bit / 8] ^= (byte) (1 << bit % 8);
      return hit;
    }

    private Optional<Weighed> weight(byte[] bytes) {
      Decoded decoded = format.decode(new Frame(0, bytes, Framer.NEVER));
      return decoded instanceof Weighed weighed ? Optional.of(weighed) : Optional.empty();
    }
  }
}
