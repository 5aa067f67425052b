package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.formats.ScaleFormats;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class QuestionTest {
  private static final List<Question> PLAN = Question.plan(ScaleFormats.all());

  @Test
  void no_question_tares_zeroes_or_begins_a_stream_whoever_hears_it() {
    for (String harmful : List.of("T\r\n", "Z\r\n", "TI\r\n", "SIR\r\n", "\u001bT", "K\u001bVX\r"))
      assertThat(Question.isHarmless(ascii(harmful), ScaleFormats.all()))
          .as(harmful)
          .isFalse();
    assertThat(PLAN)
        .allSatisfy(question -> assertThat(
                Question.isHarmless(withoutParity(question.bytes()), ScaleFormats.all()))
            .as(question.toString())
            .isTrue());
  }

  @Test
  void every_format_that_can_be_asked_is_asked_on_each_of_its_lines() {
    for (ScaleFormat format : ScaleFormats.all()) {
      Optional<byte[]> send = format.command(ScaleCommand.SEND);
      if (send.isEmpty()) continue;
      for (LineSettings own : format.lines()) {
        LineSettings line = Heard.eightBits(own);
        String asked = EscapedBytes.text(Question.of(send.get(), own, line).bytes());
        assertThat(PLAN)
            .as(format.id() + " at " + own)
            .anyMatch(question -> question.line().equals(line)
                && EscapedBytes.text(question.bytes()).endsWith(asked));
      }
    }
  }

  @Test
  void a_scale_of_seven_data_bits_hears_its_parity() {
    assertThat(asked("2400-7E1")).isEqualTo("\\xd1\\x8d\\n");
    assertThat(asked("2400-7O1")).isEqualTo("Q\\r\\x8a");
    assertThat(asked("2400-7N2")).isEqualTo("\\xd1\\x8d\\x8a");
    assertThat(asked("2400-8N1")).isEqualTo("Q\\r\\n");
  }

  @Test
  void what_was_heard_in_another_way_is_ended_before_the_next_question() {
    List<String> here = PLAN.stream()
        .filter(each -> each.line().equals(LineSettings.of("2400-8N1")))
        .map(each -> EscapedBytes.text(each.bytes()))
        .toList();
    assertThat(here)
        .containsSubsequence("\\r\\nSI\\r\\n", "\\x8d\\x8a\\xc9\\xd0\\x8d\\x8a", "\\xd1\\x8d\\n")
        .doesNotHaveDuplicates();
  }

  @Test
  void what_has_no_line_end_is_asked_last_and_by_itself() {
    for (LineSettings line : PLAN.stream().map(Question::line).distinct().toList()) {
      List<Question> open = PLAN.stream()
          .filter(each -> each.line().equals(line))
          .dropWhile(QuestionTest::hasAnEnd)
          .toList();
      assertThat(open)
          .noneMatch(QuestionTest::hasAnEnd)
          .allMatch(each -> (each.bytes()[0] & 0x7F) == '\r');
    }
    assertThat(PLAN).anyMatch(each -> !hasAnEnd(each));
  }

  private static boolean hasAnEnd(Question question) {
    int last = question.bytes()[question.bytes().length - 1] & 0x7F;
    return last == '\r' || last == '\n';
  }

  private static String asked(String own) {
    Question question =
        Question.of(ascii("Q\r\n"), LineSettings.of(own), LineSettings.of("2400-8N1"));
    return EscapedBytes.text(question.bytes());
  }

  private static byte[] withoutParity(byte[] bytes) {
    byte[] plain = bytes.clone();
    for (int at = 0; at < plain.length; at++) plain[at] &= 0x7F;
    return plain;
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
