package candlebench.protocol;

import candlebench.shared.Stamp;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Frames that are known by their end, looked for at every byte. What stands before a message is handed on as a frame of its own just
 * before it, so that rubbish costs at most the frame it hits.
 */
public final class EndedFramer implements Framer {
  private final Ending ending;
  private final FrameBuffer buffer = new FrameBuffer();

  public EndedFramer(Ending ending) {
    this.ending = ending;
  }

  @Override
  public void feed(byte[] bytes, int length, Stamp stamp, Consumer<Frame> frames) {
    for (int at = 0; at < length; at++) {
      buffer.add(bytes[at], stamp, frames);
      int message = ending.lengthOfMessage(buffer.bytes(), buffer.length());
      if (message == 0) continue;
      int before = buffer.length() - message;
      if (before > 0) buffer.handOn(before, frames);
      buffer.handOn(frames);
    }
  }

  @Override
  public Optional<Frame> rest() {
    return buffer.rest();
  }
}
