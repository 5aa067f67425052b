package candlebench.web;

import candlebench.protocol.DecodedText;
import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;

/** What scales said, as one JSON object a line. */
final class DecodedJson implements AutoCloseable {
  private static final JsonFactory JSON =
      new JsonFactoryBuilder().rootValueSeparator((String) null).build();
  private final JsonGenerator out;

  DecodedJson(OutputStream to) throws IOException {
    out = JSON.createGenerator(to, JsonEncoding.UTF8);
  }

  void write(DecodedText said) {
    try {
      out.writeStartObject();
      out.writeStringField("status", said.status());
      if (said.isRefused()) {
        out.writeStringField("reason", said.reason());
        out.writeNumberField("offset", said.offset());
      } else {
        out.writeStringField("value", said.value());
        out.writeStringField("unit", said.unit());
        out.writeStringField("kind", said.kind());
      }
      out.writeEndObject();
      out.writeRaw('\n');
    } catch (IOException failed) {
      throw told(failed);
    }
  }

  void flush() {
    try {
      out.flush();
    } catch (IOException failed) {
      throw told(failed);
    }
  }

  @Override
  public void close() {
    try {
      out.close();
    } catch (IOException failed) {
      throw told(failed);
    }
  }

  private static UncheckedIOException told(IOException failed) {
    return isReaderGone(failed) ? new NobodyReads(failed) : new CannotWrite(failed);
  }

  /** A reader that has seen enough closes its end; that is no fault. */
  static boolean isReaderGone(IOException failed) {
    String message = String.valueOf(failed.getMessage());
    return message.contains("Broken pipe") || message.contains("pipe is being closed");
  }

  /** Whoever read has gone. */
  static final class NobodyReads extends UncheckedIOException {
    private static final long serialVersionUID = 1L;

    NobodyReads(IOException cause) {
      super(cause);
    }
  }

  /** What was decoded cannot be written. */
  static final class CannotWrite extends UncheckedIOException {
    private static final long serialVersionUID = 1L;

    CannotWrite(IOException cause) {
      super(cause.getMessage(), cause);
    }
  }
}
