package candlebench.web;

import java.io.IOException;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** From the last byte on a device node to the view that a page has received, through the packaged program. */
final class WireToPage {
  private static final Pattern SHOWN = Pattern.compile("\"shown\":\"([0-9.]*)\"");
  private static final Pattern READ = Pattern.compile("\"framesRead\":(\\d+)");
  private static final int WARM_UP_SECONDS = 10;

  /**
   * What was measured.
   *
   * @param sent how many readings; {@code understood} how many the program counted
   * @param sorted nanoseconds of those that a page was shown, in order
   * @param percent of a core that the program took
   */
  record Result(long sent, long understood, long[] sorted, double percent, double megabytes) {

    double millis(double share) {
      return sorted.length == 0
          ? Double.NaN
          : sorted[(int) Math.min(sorted.length - 1, share * sorted.length)] / 1e6;
    }
  }

  private final MeasuredProgram program;
  private final int scales;
  private final int rate;
  private final AtomicLongArray sentAt;
  private final AtomicLongArray took;
  private final int most;

  private WireToPage(MeasuredProgram program, int scales, int rate, int seconds) {
    this.program = program;
    this.scales = scales;
    this.rate = rate;
    most = rate * (seconds + WARM_UP_SECONDS);
    sentAt = new AtomicLongArray(scales * most);
    took = new AtomicLongArray(scales * most);
  }

  static Result of(MeasuredProgram program, int scales, int rate, int seconds) throws Exception {
    return new WireToPage(program, scales, rate, seconds).run(seconds);
  }

  private Result run(int seconds) throws Exception {
    program.awaitScales();
    long before = understood();
    int first = rate * WARM_UP_SECONDS;
    double busy;
    try (WatchedStream page = new WatchedStream(program.port(), this::seen)) {
      send(0, first);
      busy = program.processorSeconds();
      send(first, most);
      busy = program.processorSeconds() - busy;
      LockSupport.parkNanos(300_000_000);
      if (!page.isOpen()) throw new IOException("the page's stream was cut off");
    }
    long[] sorted = new long[scales * (most - first)];
    for (int scale = 0; scale < scales; scale++)
      for (int i = first; i < most; i++)
        sorted[scale * (most - first) + i - first] = took.get(scale * most + i);
    sorted = Arrays.stream(sorted).filter(nanos -> nanos > 0).sorted().toArray();
    return new Result(
        (long) scales * most,
        understood() - before,
        sorted,
        100 * busy / seconds,
        program.residentMegabytes());
  }

  private void send(int from, int to) {
    long next = System.nanoTime();
    for (int number = from; number < to; number++) {
      next += 1_000_000_000L / rate;
      for (long left = next - System.nanoTime(); left > 0; left = next - System.nanoTime())
        LockSupport.parkNanos(left);
      for (int scale = 0; scale < scales; scale++) {
        sentAt.set(scale * most + number, System.nanoTime());
        program.say(scale, number);
      }
    }
  }

  private void seen(String view) {
    long now = System.nanoTime();
    Matcher shown = SHOWN.matcher(view);
    for (int scale = 0; scale < scales && shown.find(); scale++) {
      if (shown.group(1).isEmpty()) continue;
      int number = Integer.parseInt(shown.group(1).replace(".", ""));
      int at = scale * most + number;
      if (number < most && sentAt.get(at) > 0) took.compareAndSet(at, 0, now - sentAt.get(at));
    }
  }

  private long understood() throws IOException {
    Matcher read = READ.matcher(RawHttp.get(program.port(), "/api/view").body());
    long sum = 0;
    while (read.find()) sum += Long.parseLong(read.group(1));
    return sum;
  }
}
