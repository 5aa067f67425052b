package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded.NotALoad;
import candlebench.protocol.Decoded.Refused;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FormatCorpusTest {

  static Stream<CorpusRow> rows() {
    return CorpusRow.formats().flatMap(format -> CorpusRow.of(format).stream());
  }

  static Stream<CorpusRow> writtenRows() {
    return rows().filter(CorpusRow::isWritten);
  }

  @ParameterizedTest
  @MethodSource("rows")
  void a_frame_says_what_its_source_says(CorpusRow row) {
    Decoded decoded = row.decoded();
    DecodedText text = DecodedText.of(row.frame(), decoded);
    String status = text.status();
    String value = text.value();
    String kind = text.kind();
    if (decoded instanceof NotALoad other) status += " " + other.matter();
    if (decoded instanceof Refused refused) {
      value = refused.refusal().reason() + " at " + refused.refusal().offset();
      kind = "";
    }
    assertThat(String.join("|", status, value, text.unit(), kind))
        .as(row.toString())
        .isEqualTo(String.join("|", row.status(), row.value(), row.unit(), row.kind()));
  }

  @ParameterizedTest
  @MethodSource("writtenRows")
  void what_a_frame_says_is_written_byte_for_byte(CorpusRow row) {
    assertThat(row.encoded().map(EscapedBytes::text)).contains(EscapedBytes.text(row.bytes()));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void a_frame_that_is_not_written_says_why(CorpusRow row) {
    boolean refused = row.status().equals("refused");
    assertThat(row.isWritten() || refused || row.written().length() > 10)
        .as("column written of " + row)
        .isTrue();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void every_row_names_its_origin(CorpusRow row) {
    assertThat(row.origin()).matches("[MC]( .+)?|captured .+");
  }
}
