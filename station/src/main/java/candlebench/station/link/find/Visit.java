package candlebench.station.link.find;

import candlebench.protocol.Heard;
import candlebench.protocol.LineSettings;
import candlebench.protocol.Recognition;
import candlebench.protocol.ScaleFormat;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;

/** What was heard on the line since it was opened at these settings. */
final class Visit {

  /** A plug that is pushed in may give a byte. */
  private static final int NOISE_BYTES = 1;

  private static final int MOST_BYTES = 4_096;

  private final List<ScaleFormat> formats;
  private final LineSettings line;
  private final long opened;
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private Optional<Recognition> recognition = Optional.empty();
  private long firstByte;
  private long lastByte;

  Visit(List<ScaleFormat> formats, LineSettings line, long nanos) {
    this.formats = formats;
    this.line = line;
    this.opened = nanos;
  }

  void heard(byte[] more, int length, long nanos) {
    if (bytes.size() == 0) firstByte = nanos;
    lastByte = nanos;
    bytes.write(more, 0, Math.min(length, MOST_BYTES - bytes.size()));
    recognition = Optional.empty();
  }

  boolean isSilent() {
    return bytes.size() <= NOISE_BYTES;
  }

  int length() {
    return bytes.size();
  }

  long nanosOpen(long nanos) {
    return nanos - opened;
  }

  long nanosSinceFirstByte(long nanos) {
    return nanos - firstByte;
  }

  long nanosSinceLastByte(long nanos) {
    return nanos - lastByte;
  }

  Recognition recognition() {
    if (recognition.isEmpty())
      recognition = Optional.of(Recognition.of(bytes.toByteArray(), formats));
    return recognition.get();
  }

  Heard heard() {
    return new Heard(line, recognition());
  }
}
