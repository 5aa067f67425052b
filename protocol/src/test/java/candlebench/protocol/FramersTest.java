package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Streams written as text, their frames parted by a bar. */
class FramersTest {

  @Test
  void lines_end_in_cr_lf_or_either_alone() {
    assertThat(cut(TerminatedFramer.ofSevenBits(), "a\\r\\nb\\nc\\rd\\re\\r\\nf\\r\\n"))
        .isEqualTo("a\\r\\n|b\\n|c\\r|d\\r|e\\r|f\\r\\n");
  }

  @Test
  void a_lone_cr_ends_a_line_at_once_when_it_did_before() {
    TerminatedFramer framer = TerminatedFramer.ofSevenBits();
    assertThat(fed(framer, "a\\r")).isEmpty();
    assertThat(fed(framer, "b\\r")).isEqualTo("a\\r|b\\r");
    assertThat(fed(framer, "c\\r")).isEqualTo("c\\r");
  }

  @Test
  void after_a_silence_a_lone_cr_is_known_to_be_the_end() {
    TerminatedFramer framer = TerminatedFramer.ofSevenBits();
    assertThat(fed(framer, "a\\r")).isEmpty();
    assertThat(framer.rest().map(Frame::toString)).contains("a\\r");
    assertThat(fed(framer, "b\\r")).isEqualTo("b\\r");
  }

  @Test
  void empty_lines_are_passed_over_and_counted_in_the_offset() {
    List<Frame> frames = new ArrayList<>();
    byte[] bytes = EscapedBytes.bytes("\\r\\n\\r\\na\\r\\n\\n\\rb\\r\\n");
    TerminatedFramer.ofSevenBits().feed(bytes, bytes.length, CorpusRow.STAMP, frames::add);
    assertThat(frames).extracting(Frame::offset).containsExactly(4L, 9L);
  }

  @Test
  void parity_in_bit_7_does_not_hide_a_line_end() {
    assertThat(cut(TerminatedFramer.ofSevenBits(), "a\\x8d\\nb\\r\\x8ac\\r\\n"))
        .isEqualTo("a\\x8d\\n|b\\r\\x8a|c\\r\\n");
    assertThat(cut(TerminatedFramer.ofEightBits(), "a\\x8d\\nb\\r\\n"))
        .isEqualTo("a\\x8d\\n|b\\r\\n");
  }

  @Test
  void a_byte_that_is_a_message_alone_needs_no_line_end() {
    assertThat(cut(
            TerminatedFramer.ofSevenBitsOrAlone(0x06),
            "\\x06a\\r\\n\\x06\\r\\n\\x06\\x06b\\x06\\r\\n"))
        .isEqualTo("\\x06|a\\r\\n|\\x06\\r\\n|\\x06|\\x06|b\\x06\\r\\n");
  }

  @Test
  void what_has_no_end_comes_in_pieces_longer_than_any_message() {
    List<Frame> frames = new ArrayList<>();
    byte[] bytes = EscapedBytes.bytes("9".repeat(1000) + ".5 g\\r\\na\\r\\n");
    TerminatedFramer.ofSevenBits().feed(bytes, bytes.length, CorpusRow.STAMP, frames::add);
    assertThat(frames.get(frames.size() - 1)).hasToString("a\\r\\n");
    assertThat(frames.subList(0, frames.size() - 1))
        .hasSizeGreaterThan(2)
        .allMatch(
            frame -> frame.length() > Framer.LONGEST_MESSAGE && frame.length() <= Framer.LIMIT);
  }

  @Test
  void a_first_and_a_last_byte_part_a_frame_from_what_stands_around_it() {
    assertThat(cut(between(0x7F), "xx\\x02a\\x03\\x02b\\x02c\\x03y\\x02d\\x03z"))
        .isEqualTo("xx|\\x02a\\x03|\\x02b|\\x02c\\x03|y|\\x02d\\x03|z");
    assertThat(cut(between(0x7F), "\\x82a\\x03\\x02b\\x83")).isEqualTo("\\x82a\\x03|\\x02b\\x83");
    assertThat(cut(between(0xFF), "\\x82a\\x83\\x02b\\x03")).isEqualTo("\\x82a\\x83|\\x02b\\x03");
  }

  @Test
  void a_last_byte_without_a_first_one_ends_what_there_is() {
    assertThat(cut(between(0x7F), "ab\\x03\\x02c\\x03")).isEqualTo("ab\\x03|\\x02c\\x03");
  }

  @Test
  void a_frame_of_known_shape_may_hold_its_own_marks() {
    assertThat(cut(shaped("\u0002??\r?"), "\\x02\\x02\\r\\r\\x02\\x02ab\\r*"))
        .isEqualTo("\\x02\\x02\\r\\r\\x02|\\x02ab\\r*");
  }

  @Test
  void a_frame_of_known_shape_is_found_again_after_bytes_were_lost_or_added() {
    assertThat(cut(shaped("\u0002???\r"), "b\\r\\x02a\\r\\x02abc\\rxyz\\x02\\x02abc\\r\\x02a"))
        .isEqualTo("b\\r\\x02a\\r|\\x02abc\\r|xyz\\x02|\\x02abc\\r|\\x02a");
  }

  @Test
  void of_two_endings_either_parts_frames() {
    Ending either = FrameShape.ofEightBits("=??").or(Ending.ofLines());
    assertThat(cut(new EndedFramer(either), "=12ab\\r\\n\\rc=34"))
        .isEqualTo("=12|ab\\r\\n|\\rc|=34");
  }

  @Test
  void a_shape_longer_than_any_message_is_refused() {
    assertThatThrownBy(() -> FrameShape.ofSevenBits("?".repeat(128)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1 to 127 bytes");
  }

  private static Framer between(int significantBits) {
    return new EndedFramer(Ending.between(0x02, 0x03, significantBits));
  }

  private static Framer shaped(String picture) {
    return new EndedFramer(FrameShape.ofSevenBits(picture));
  }

  private static String cut(Framer framer, String stream) {
    String fed = fed(framer, stream);
    return framer
        .rest()
        .map(frame -> fed.isEmpty() ? frame.toString() : fed + "|" + frame)
        .orElse(fed);
  }

  private static String fed(Framer framer, String stream) {
    List<String> frames = new ArrayList<>();
    for (byte each : EscapedBytes.bytes(stream))
      framer.feed(new byte[] {each}, 1, CorpusRow.STAMP, frame -> frames.add(frame.toString()));
    return String.join("|", frames);
  }
}
