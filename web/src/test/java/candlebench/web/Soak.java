package candlebench.web;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;

/**
 * The packaged program for a long time, with 8 scales at 20 readings a second and pages that come and go: memory, threads and handles
 * over time. {@code bash .ci/benchmarks soak 30}, for 30 minutes.
 */
public final class Soak {
  private static final int SCALES = 8;
  private static final int RATE = 20;
  private static final int MOST_PAGES = 6;
  private static final int MOST_NUMBER = 100_000;

  private Soak() {}

  public static void main(String[] args) throws Exception {
    int minutes = Integer.parseInt(args[0]);
    Path folder = Files.createTempDirectory("soak");
    SplittableRandom random = new SplittableRandom(8);
    Deque<WatchedStream> pages = new ArrayDeque<>();
    AtomicLong views = new AtomicLong();
    long opened = 0;
    long sent = 0;
    System.out.println(Machine.words());
    System.out.println("minute   MB   threads  handles  core %  readings  pages so far  views");
    try (MeasuredProgram program = new MeasuredProgram(folder, SCALES)) {
      program.awaitScales();
      double busy = program.processorSeconds();
      long next = System.nanoTime();
      for (int step = 1; step <= minutes * 60 * RATE; step++) {
        next += 1_000_000_000L / RATE;
        for (long left = next - System.nanoTime(); left > 0; left = next - System.nanoTime())
          LockSupport.parkNanos(left);
        for (int scale = 0; scale < SCALES; scale++, sent++)
          program.say(scale, (step + 7 * scale) % MOST_NUMBER);
        if (step % RATE == 0 && random.nextInt(2) == 0) {
          if (pages.size() >= MOST_PAGES || !pages.isEmpty() && random.nextInt(3) == 0)
            pages.removeFirst().close();
          else {
            RawHttp.get(program.port(), "/");
            pages.addLast(new WatchedStream(program.port(), view -> views.incrementAndGet()));
            opened++;
          }
        }
        if (step % (60 * RATE) != 0) continue;
        double now = program.processorSeconds();
        System.out.printf(
            Locale.ROOT,
            "%6d %6.1f %8d %8d %7.1f %9d %13d %6d%n",
            step / (60 * RATE),
            program.residentMegabytes(),
            program.threads(),
            program.handles(),
            100 * (now - busy) / 60,
            sent,
            opened,
            views.get());
        busy = now;
      }
      while (!pages.isEmpty()) pages.removeFirst().close();
    }
  }
}
