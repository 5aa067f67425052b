package candlebench.station.link;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.shared.Stamp;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The line to one scale: opens it, reads frames off it, asks where it has to, and opens it again when it is gone.
 *
 * <p>One thread of its own does all of it, so that a wire that hangs holds up nothing else. Between attempts it pauses, longer each
 * time up to a second; while open it waits for bytes in the driver. So it never spins, whatever the wire does. An error of ours ends
 * the attempt like a wire that is gone, so that a scale is never shown as live by a thread that has died.
 */
public final class ScaleLink implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ScaleLink.class);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(100);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(1);
  private static final long CLOSING_MILLIS = 2_000;

  private final int scale;
  private final ScaleFormat format;
  private final Line line;
  private final LinkListener listener;
  private final Stamps stamps;
  private final Framer framer;
  private final Asking asking;
  private final PrintKey printKey = new PrintKey();
  private final Optional<byte[]> ask;
  private final Consumer<Frame> frames = this::frame;
  private final Counters counters = new Counters();
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread reader;
  private LinkReport said = LinkReport.of(LinkState.CONNECTING);
  private LineWatch watch = new LineWatch(0);
  private final FrameStart start = new FrameStart();
  private volatile Optional<BytePort> open = Optional.empty();

  public ScaleLink(int scale, ScaleSettings settings, LinkListener listener, Stamps stamps) {
    this.scale = scale;
    this.format = settings.format();
    this.line = settings.line();
    this.listener = listener;
    this.stamps = stamps;
    this.framer = format.newFramer();
    this.asking = new Asking(settings.ask());
    this.ask = format.command(ScaleCommand.SEND);
    this.reader = new Thread(this::run, "scale-" + scale);
    reader.setDaemon(true);
  }

  public void start() {
    reader.start();
  }

  public Counters counters() {
    return counters;
  }

  @Override
  public void close() {
    closing.countDown();
    open.ifPresent(BytePort::close);
    try {
      reader.join(CLOSING_MILLIS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    Duration pause = FIRST_PAUSE;
    while (!isClosing()) {
      boolean heard = false;
      try {
        heard = attempt();
      } catch (RuntimeException | Error ours) {
        LOG.error(
            "Reading scale {} failed by an error of the program. It is opened anew.", scale, ours);
        say(LinkReport.of(LinkState.LOST), stamps.now());
      }
      if (heard) pause = FIRST_PAUSE;
      if (!isClosing()) await(pause);
      pause = longer(pause);
    }
  }

  /** Opens the line and reads it until it is gone; whether a frame was understood meanwhile. */
  private boolean attempt() {
    Line.Opening opening = line.open();
    if (opening instanceof Line.Opened opened) return listen(opened.port());
    if (!(opening instanceof Line.NotOpened refused)) throw new AssertionError(opening);
    say(refused.why(), stamps.now());
    return false;
  }

  /** Reads until the wire is gone or the link is closed; whether a frame was understood meanwhile. */
  private boolean listen(BytePort port) {
    open = Optional.of(port);
    long before = counters.frames();
    try {
      begin(stamps.now());
      byte[] bytes = new byte[4096];
      while (!isClosing()) {
        int count = port.read(bytes);
        Stamp now = stamps.now();
        if (count < 0) {
          finishFrame(now);
          if (!isClosing()) say(port.whyGone(), now);
          break;
        }
        if (count > 0) arrived(bytes, count, now);
        else if (start.endsBySilence(now.nanos())) finishFrame(now);
        judge(now);
        speak(port, now);
      }
    } finally {
      open = Optional.empty();
      port.close();
    }
    return counters.frames() > before;
  }

  private void begin(Stamp now) {
    counters.opened();
    watch = new LineWatch(now.nanos());
    start.opened(now.nanos());
    asking.opened();
    printKey.opened();
  }

  private void arrived(byte[] bytes, int count, Stamp now) {
    counters.read(count);
    watch.bytes(now.nanos());
    start.bytes(now.nanos());
    framer.feed(bytes, count, now, frames);
  }

  /** Hands on what there is of a frame that silence or the end of the line has ended. */
  private void finishFrame(Stamp now) {
    framer.rest().ifPresent(left -> {
      Frame frame = new Frame(left.offset(), left.bytes(), now);
      frame(frame);
      if (format.decode(frame) instanceof Decoded.Refused) start.cutShort();
    });
  }

  private void frame(Frame frame) {
    asking.frame();
    if (start.endedWhole()) heard(frame);
    else counters.passed();
  }

  private void heard(Frame frame) {
    Decoded decoded = format.decode(frame);
    if (decoded instanceof Decoded.Refused refused) {
      counters.refused(refused.refusal());
      watch.refused(frame.stamp().nanos());
    } else if (!watch.understood(frame.stamp().nanos())) {
      counters.passed();
      return;
    } else {
      counters.understood();
      say(LinkReport.of(LinkState.LIVE), frame.stamp());
    }
    listener.heard(scale, frame, decoded);
    boolean pressed =
        printKey.isPressed(decoded, format.marksPrint(frame), frame.stamp().nanos());
    if (pressed) listener.printKeyPressed(scale, frame.stamp());
  }

  private void judge(Stamp now) {
    LinkState state = watch.at(now.nanos());
    // A line that was lost is called so until something is heard on it again, or it has had its
    // time to speak.
    if (state == LinkState.CONNECTING) return;
    say(LinkReport.of(state), now);
    if (state == LinkState.SILENT) asking.silent();
  }

  private void speak(BytePort port, Stamp now) {
    if (ask.isEmpty() || !asking.due(now.nanos())) return;
    port.write(ask.get());
    printKey.asked();
  }

  private void say(LinkReport report, Stamp now) {
    if (report.equals(said)) return;
    said = report;
    listener.changed(scale, report, now);
  }

  private boolean isClosing() {
    return closing.getCount() == 0;
  }

  private void await(Duration pause) {
    try {
      closing.await(pause.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException ended) {
      closing.countDown();
    }
  }

  static Duration longer(Duration pause) {
    Duration twice = pause.multipliedBy(2);
    return twice.compareTo(LONGEST_PAUSE) > 0 ? LONGEST_PAUSE : twice;
  }
}
