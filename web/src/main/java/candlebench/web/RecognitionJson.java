package candlebench.web;

import candlebench.protocol.Candidate;
import candlebench.protocol.Recognition;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;

/** What an unknown scale was recognised as, as one JSON object. */
final class RecognitionJson {
  private static final JsonFactory JSON = new JsonFactory();

  private RecognitionJson() {}

  static String text(Recognition recognition) {
    StringWriter text = new StringWriter();
    try (JsonGenerator out = JSON.createGenerator(text)) {
      out.writeStartObject();
      out.writeStringField("finding", word(recognition.finding()));
      out.writeArrayFieldStart("ids");
      for (Candidate fitting : recognition.fitting())
        out.writeString(fitting.format().id());
      out.writeEndArray();
      out.writeStringField("line", recognition.bitSeven().line());
      out.writeStringField("words", recognition.words());
      out.writeArrayFieldStart("ranked");
      for (Candidate each : recognition.ranked()) write(each, out);
      out.writeEndArray();
      out.writeEndObject();
    } catch (IOException impossible) {
      throw new UncheckedIOException("writing to memory failed", impossible);
    }
    return text.toString();
  }

  private static void write(Candidate candidate, JsonGenerator out) throws IOException {
    out.writeStartObject();
    out.writeStringField("id", candidate.format().id());
    out.writeStringField("layout", candidate.layout());
    out.writeBooleanField("fits", candidate.fits());
    out.writeNumberField("weights", candidate.weights());
    out.writeNumberField("writtenAlike", candidate.written());
    out.writeNumberField("bytesUnderstood", candidate.understoodBytes());
    out.writeNumberField("bytesLeftOver", candidate.leftOverBytes());
    out.writeEndObject();
  }

  /** {@code recognised}, {@code several-remain}, {@code unknown-format}, {@code wrong-speed}, {@code too-little}. */
  static String word(Recognition.Finding finding) {
    return finding.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
