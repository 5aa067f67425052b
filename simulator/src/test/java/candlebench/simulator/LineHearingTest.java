package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.shared.Stamp;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineHearingTest {
  private static final byte[] FRAME = "ST,+00056.0  g\r\n".getBytes(StandardCharsets.US_ASCII);

  @ParameterizedTest
  @ValueSource(strings = {"9600-8N1", "9600-8E1", "1200-8O2", "19200-8M1", "300-8S1"})
  void a_line_set_alike_at_both_ends_carries_every_byte(String settings) {
    byte[] all = new byte[256];
    for (int b = 0; b < all.length; b++) all[b] = (byte) b;
    assertThat(heard(all, settings, settings)).isEqualTo(all);
  }

  @Test
  void seven_bits_with_even_parity_heard_as_eight_have_the_parity_as_their_top_bit() {
    byte[] heard = heard(FRAME, "2400-7E1", "2400-8N1");
    assertThat(heard).hasSameSizeAs(FRAME);
    for (int i = 0; i < FRAME.length; i++) {
      int top = Integer.bitCount(FRAME[i]) % 2 == 1 ? 0x80 : 0;
      assertThat(heard[i] & 0xFF).as("byte " + i).isEqualTo(FRAME[i] | top);
    }
  }

  /** What stands for each on the wire: S is 53h with four ones, so its top bit is 0 even, 1 odd; mark is always 1, space 0. */
  @ParameterizedTest
  @CsvSource({"7E1,53", "7O1,d3", "7M1,d3", "7S1,53"})
  void the_top_bit_follows_the_parity_of_the_sender(String sender, String heard) {
    byte[] one = heard(new byte[] {'S'}, "2400-" + sender, "2400-8N1");
    assertThat(one).containsExactly((byte) Integer.parseInt(heard, 16));
  }

  @Test
  void a_host_that_listens_with_parity_never_sees_the_characters_whose_parity_is_wrong() {
    byte[] evenOnes = "SU00365".getBytes(StandardCharsets.US_ASCII);
    byte[] oddOnes = "T124".getBytes(StandardCharsets.US_ASCII);
    assertThat(heard(evenOnes, "2400-8N1", "2400-7E1")).isEqualTo(evenOnes);
    assertThat(heard(oddOnes, "2400-8N1", "2400-7E1")).isEmpty();
    assertThat(heard(oddOnes, "2400-7E1", "2400-7O1")).isEmpty();
    assertThat(heard(oddOnes, "2400-8N1", "2400-7N1")).isEqualTo(oddOnes);
  }

  @ParameterizedTest
  @CsvSource({"9600,4800", "9600,2400", "9600,19200", "2400,9600", "1200,9600", "4800,9600"})
  void at_the_wrong_speed_no_weight_is_heard(int sender, int receiver) {
    List<Decoded> decoded = new ArrayList<>();
    Framer framer = Rig.FORMAT.newFramer();
    Stamp stamp = new Stamp(Instant.EPOCH, 0);
    for (int tenths = 0; tenths < 1000; tenths++) {
      byte[] frame = String.format(java.util.Locale.ROOT, "ST,+%08.1f  g\r\n", tenths / 10.0)
          .getBytes(StandardCharsets.US_ASCII);
      byte[] heard = heard(frame, sender + "-8N1", receiver + "-8N1");
      assertThat(heard).isNotEqualTo(frame);
      framer.feed(heard, heard.length, stamp, each -> decoded.add(Rig.FORMAT.decode(each)));
    }
    framer.rest().ifPresent(each -> decoded.add(Rig.FORMAT.decode(each)));
    assertThat(decoded).isNotEmpty().noneMatch(each -> each instanceof Decoded.Weighed);
  }

  @Test
  void a_speed_a_little_off_is_heard_and_one_further_off_is_not() {
    assertThat(heard(FRAME, "9600-8N1", "9800-8N1")).isEqualTo(FRAME);
    assertThat(heard(FRAME, "9600-8N1", "10400-8N1")).isNotEqualTo(FRAME);
  }

  private static byte[] heard(byte[] sent, String sender, String receiver) {
    return LineHearing.heard(sent, LineSettings.of(sender), LineSettings.of(receiver));
  }
}
