package candlebench.station;

import candlebench.protocol.LineSettings;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.simulator.PseudoTerminal;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.SerialLine;
import candlebench.station.view.StationView;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.locks.LockSupport;

/**
 * How long from the last byte on a device node to the view that shows it, and what that costs. Asserts nothing.
 *
 * <p>{@code mvn -q -pl station -am -Ptables test-compile exec:java
 * -Dexec.mainClass=candlebench.station.LatencyTable [-Dexec.args="SCALES FRAMES_A_SECOND SECONDS"]}.
 */
public final class LatencyTable {
  private static final int WARM_UP_SECONDS = 5;

  private LatencyTable() {}

  public static void main(String[] args) throws Exception {
    int scales = args.length > 0 ? Integer.parseInt(args[0]) : 1;
    int rate = args.length > 1 ? Integer.parseInt(args[1]) : 50;
    int seconds = args.length > 2 ? Integer.parseInt(args[2]) : 20;
    Path folder = Files.createTempDirectory("latency");
    List<PseudoTerminal> terminals = new ArrayList<>();
    List<ScaleSettings> settings = new ArrayList<>();
    for (int i = 0; i < scales; i++) {
      terminals.add(new PseudoTerminal(folder.resolve("scale" + i)));
      settings.add(ScaleSettings.of(
          new SerialLine(terminals.get(i).address(), LineSettings.of("9600-8N1")),
          ScaleFormats.of("and")));
    }
    StationConfig config =
        StationConfig.of(Purpose.RECORD, settings, HarbourLane.all(), ZoneOffset.UTC);
    try (SqliteJournal journal = SqliteJournal.open(Purpose.RECORD.under(folder), Purpose.RECORD);
        Station station = Station.start(config, journal)) {
      while (terminals.stream().anyMatch(terminal -> !terminal.isOpened()))
        LockSupport.parkNanos(1_000_000);
      station.say("start", new MakerCommand.StartBatch("harbour-lane-oil", 1, "", Map.of()));
      run(station, terminals, rate, WARM_UP_SECONDS);
      long cpu = cpuNanos();
      long allocated = allocatedBytes();
      long[] sorted = run(station, terminals, rate, seconds);
      double percent = (cpuNanos() - cpu) / 1e7 / seconds;
      System.out.printf(
          Locale.ROOT,
          "%d x %d Hz: %d of %d views seen, p50 %.3f ms, p99 %.3f ms, worst %.3f ms; %.1f %% of a core, writer included; %.0f bytes allocated a frame in the loop and readers%n",
          scales,
          rate,
          sorted.length,
          scales * rate * seconds,
          at(sorted, 0.5),
          at(sorted, 0.99),
          at(sorted, 1),
          percent,
          (allocatedBytes() - allocated) / (double) (scales * rate * seconds));
    }
    terminals.forEach(PseudoTerminal::close);
  }

  private static long[] run(
      Station station, List<PseudoTerminal> terminals, int rate, int seconds) {
    int frames = rate * seconds;
    int scales = terminals.size();
    AtomicLongArray sent = new AtomicLongArray(scales * frames);
    AtomicLongArray took = new AtomicLongArray(scales * frames);
    int[] last = new int[scales];
    Arrays.fill(last, -1);
    AtomicInteger seen = new AtomicInteger();
    Bench.Watch watch = station.watch(() -> {
      long now = System.nanoTime();
      StationView view = station.view();
      for (int scale = 0; scale < scales; scale++) {
        String shown = view.scales().get(scale).shown();
        if (shown.isEmpty()) continue;
        int number = Integer.parseInt(shown.replace(".", ""));
        if (number == last[scale] || number >= frames) continue;
        // What the warm-up showed last is still there when the counting begins.
        if (sent.get(scale * frames + number) == 0) continue;
        last[scale] = number;
        took.set(scale * frames + number, now - sent.get(scale * frames + number));
        seen.incrementAndGet();
      }
    });
    long next = System.nanoTime();
    for (int frame = 0; frame < frames; frame++) {
      next += 1_000_000_000L / rate;
      for (long left = next - System.nanoTime(); left > 0; left = next - System.nanoTime())
        LockSupport.parkNanos(left);
      for (int scale = 0; scale < scales; scale++) {
        byte[] bytes = String.format(Locale.ROOT, "ST,%+09.2f  g\r\n", frame / 100.0)
            .getBytes(StandardCharsets.US_ASCII);
        sent.set(scale * frames + frame, System.nanoTime());
        terminals.get(scale).offer(bytes);
      }
    }
    LockSupport.parkNanos(200_000_000);
    watch.close();
    long[] all = new long[scales * frames];
    for (int i = 0; i < all.length; i++) all[i] = took.get(i);
    return Arrays.stream(all).filter(nanos -> nanos > 0).sorted().toArray();
  }

  private static double at(long[] sorted, double share) {
    return sorted.length == 0
        ? Double.NaN
        : sorted[(int) Math.min(sorted.length - 1, share * sorted.length)] / 1e6;
  }

  private static long cpuNanos() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  private static long allocatedBytes() {
    com.sun.management.ThreadMXBean threads =
        (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long sum = 0;
    for (Thread thread : Thread.getAllStackTraces().keySet())
      if (thread.getName().equals("station") || thread.getName().startsWith("scale-"))
        sum += threads.getThreadAllocatedBytes(thread.getId());
    return sum;
  }
}
