package candlebench.station.link.find;

import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.station.link.BytePort;
import candlebench.station.link.Line;
import candlebench.station.link.LinkReport;
import candlebench.station.link.LinkState;
import candlebench.station.link.SerialLine;
import candlebench.station.link.Stamps;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Searches for an unknown scale on one port, in a thread of its own, and tells how far it has come. */
public final class ScaleFinder implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ScaleFinder.class);
  private static final long CLOSING_MILLIS = 2_000;
  private static final int TRIES_MORE = 3;
  private static final long BETWEEN_TRIES_MILLIS = 200;

  private final Function<LineSettings, Line> lines;
  private final Sweep sweep;
  private final Stamps stamps;
  private final Consumer<Search> listener;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread searcher;
  private volatile Optional<BytePort> open = Optional.empty();
  private volatile Search search;

  /**
   * @param lines the line to the port, set as it is to be set
   * @param listener hears how far the search has come, in the search's own thread
   */
  public ScaleFinder(
      Function<LineSettings, Line> lines,
      List<ScaleFormat> formats,
      Stamps stamps,
      Consumer<Search> listener) {
    this.lines = lines;
    this.sweep = new Sweep(formats);
    this.stamps = stamps;
    this.listener = listener;
    this.search = now(Optional.empty());
    this.searcher = new Thread(this::run, "search");
    searcher.setDaemon(true);
  }

  /** Searches a serial device such as {@code /dev/ttyUSB0}. */
  public static ScaleFinder on(
      String device, List<ScaleFormat> formats, Stamps stamps, Consumer<Search> listener) {
    return new ScaleFinder(line -> new SerialLine(device, line), formats, stamps, listener);
  }

  public void start() {
    searcher.start();
  }

  /** How far it has come. Any thread. */
  public Search search() {
    return search;
  }

  /** Stops searching and frees the port. */
  @Override
  public void close() {
    closing.countDown();
    open.ifPresent(BytePort::close);
    try {
      searcher.join(CLOSING_MILLIS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      listener.accept(search);
      while (!isClosing() && !search.isOver()) visit();
    } catch (RuntimeException | Error ours) {
      LOG.error("The search for a scale has stopped by an error of the program.", ours);
      tell(now(Optional.of(LinkReport.of(LinkState.LOST))));
    }
  }

  /** Opens the line as it is to be set next, and listens and asks there. */
  private void visit() {
    tell(now(Optional.empty()));
    Line.Opening opening = opening();
    Optional<LinkReport> trouble = opening instanceof Line.Opened opened
        ? listen(opened.port())
        : Optional.of(((Line.NotOpened) opening).why());
    if (!isClosing()) tell(now(trouble));
  }

  /** Opens the line; a system may still be busy with giving up what was closed a moment ago. */
  private Line.Opening opening() {
    Line.Opening opening = lines.apply(sweep.line()).open();
    for (int again = 0; again < TRIES_MORE && opening instanceof Line.NotOpened; again++) {
      if (isClosedWithin(BETWEEN_TRIES_MILLIS)) return opening;
      opening = lines.apply(sweep.line()).open();
    }
    return opening;
  }

  /** Listens at one setting; why the line is gone, if it is. */
  private Optional<LinkReport> listen(BytePort port) {
    open = Optional.of(port);
    byte[] bytes = new byte[4096];
    try {
      sweep.opened(stamps.now().nanos());
      while (sweep.isOpen() && !isClosing()) {
        sweep.ask(stamps.now().nanos()).ifPresent(port::write);
        int count = port.read(bytes);
        if (count < 0) return Optional.of(port.whyGone());
        sweep.heard(bytes, count, stamps.now().nanos());
      }
      return Optional.empty();
    } finally {
      open = Optional.empty();
      port.close();
    }
  }

  private Search now(Optional<LinkReport> trouble) {
    return new Search(sweep.doing(), sweep.line(), sweep.found(), trouble);
  }

  private void tell(Search now) {
    if (now.equals(search)) return;
    search = now;
    listener.accept(now);
  }

  private boolean isClosedWithin(long millis) {
    try {
      return closing.await(millis, TimeUnit.MILLISECONDS);
    } catch (InterruptedException ended) {
      closing.countDown();
      return true;
    }
  }

  private boolean isClosing() {
    return closing.getCount() == 0;
  }
}
