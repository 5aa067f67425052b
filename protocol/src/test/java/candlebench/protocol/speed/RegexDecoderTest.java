package candlebench.protocol.speed;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is compared for speed gives the same results. */
class RegexDecoderTest {

  static Iterable<String> formats() {
    return RegexDecoder.formats();
  }

  @ParameterizedTest
  @MethodSource("formats")
  void both_decoders_read_the_same_from_the_same_bytes(String id) {
    byte[] stream = PourBytes.of(id);
    ScaleFormat format = ScaleFormats.of(id);
    List<Decoded> ours = new ArrayList<>();
    Framer framer = format.newFramer();
    framer.feed(stream, stream.length, Framer.NEVER, frame -> ours.add(format.decode(frame)));
    List<Decoded> theirs = new ArrayList<>();
    RegexDecoder.of(id).feed(stream, stream.length, theirs::add);
    assertThat(ours).hasSize(PourBytes.FRAMES).isEqualTo(theirs);
    boolean canSayOverload = !id.equals("ohaus");
    assertThat(ours.stream().anyMatch(OutOfRange.class::isInstance)).isEqualTo(canSayOverload);
  }
}
