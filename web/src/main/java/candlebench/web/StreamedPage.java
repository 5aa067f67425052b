package candlebench.web;

import candlebench.station.view.ShownUnit;
import jakarta.servlet.AsyncContext;
import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;

/** One page at the end of a line: a slot for the newest event, and whether the line takes more. Writing never blocks. */
final class StreamedPage implements WriteListener {

  /** Tells the page how soon to ask again after the line was cut. */
  private static final byte[] PREFACE = "retry: 500\n\n".getBytes(StandardCharsets.US_ASCII);

  private final ServletOutputStream out;
  private final CompletableFuture<Void> ended;
  private final ShownUnit unit;
  private byte[] newest = new byte[0];
  private boolean started;

  /**
   * @param unit in which the page is to be shown its numbers
   * @param ended completed when the page is gone, by either side
   */
  StreamedPage(AsyncContext request, ShownUnit unit, CompletableFuture<Void> ended)
      throws IOException {
    this.unit = unit;
    this.ended = ended;
    out = request.getResponse().getOutputStream();
    request.setTimeout(0);
    out.setWriteListener(this);
  }

  ShownUnit unit() {
    return unit;
  }

  /** Puts an event into the slot, in place of one that was not sent yet, and sends it if the line takes it. */
  synchronized void offer(byte[] event) {
    newest = event;
    if (started) send();
  }

  @Override
  public synchronized void onWritePossible() throws IOException {
    if (!started) {
      started = true;
      out.write(PREFACE);
    }
    send();
  }

  @Override
  public void onError(Throwable lineCut) {
    end();
  }

  void end() {
    ended.complete(null);
  }

  /** Where the line is not ready the web server calls {@link #onWritePossible} once it is. */
  private void send() {
    try {
      while (!ended.isDone() && out.isReady() && newest.length > 0) {
        byte[] event = newest;
        newest = new byte[0];
        out.write(event);
        if (out.isReady()) out.flush();
      }
    } catch (IOException lineCut) {
      end();
    }
  }
}
