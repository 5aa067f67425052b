package candlebench.simulator;

import candlebench.protocol.LineSettings;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongConsumer;
import java.util.function.Supplier;

/**
 * Virtual scales that run in real time behind outlets a program can open, with the hands and surroundings that act on their pans. The
 * only place of the simulator with a real clock, and the only one with a thread.
 *
 * <p>Its moments are nanoseconds since it was started. Whatever else acts on scales, pans and outlets from another thread does so
 * through {@link #act}, {@link #unplug} or {@link #replug}.
 */
public final class RunningBench implements AutoCloseable {
  private static final long TICK_NANOS = 4_000_000;
  private static final long JOIN_MILLIS = 5_000;

  /** A scale and the outlet it speaks through; between them, the program's line settings are compared with the scale's. */
  public record Station(VirtualScale scale, Outlet outlet) {}

  private final List<Station> stations;
  private final LongConsumer hands;
  private final ReentrantLock lock = new ReentrantLock(true);
  private final Thread runner;
  private final long start;
  private final long offset;
  private volatile boolean running = true;
  private Optional<RuntimeException> failure = Optional.empty();

  /**
   * Starts to run.
   *
   * @param hands what acts on the pans after each step, told the moment; a maker, surroundings, or nothing
   */
  public static RunningBench start(List<Station> stations, LongConsumer hands) {
    RunningBench bench = new RunningBench(stations, hands);
    bench.runner.start();
    return bench;
  }

  private RunningBench(List<Station> stations, LongConsumer hands) {
    this.stations = List.copyOf(stations);
    this.hands = hands;
    this.start = System.nanoTime();
    this.offset =
        stations.stream().mapToLong(station -> station.scale().nanos()).max().orElse(0);
    this.runner = new Thread(this::run, "virtual-bench");
    this.runner.setDaemon(true);
  }

  /** Does something to scales and pans between two steps. */
  public void act(Runnable action) {
    ask(() -> {
      action.run();
      return true;
    });
  }

  /** Looks at something between two steps. */
  public <T> T ask(Supplier<T> question) {
    lock.lock();
    try {
      return question.get();
    } finally {
      lock.unlock();
    }
  }

  /** Takes the plug of one scale out, counted from zero. */
  public void unplug(int station) {
    act(stations.get(station).outlet()::unplug);
  }

  /** Puts the plug of one scale back in. */
  public void replug(int station) {
    act(stations.get(station).outlet()::replug);
  }

  /** Stops running and unplugs every scale; throws what stopped the run, if something did. */
  @Override
  public void close() {
    running = false;
    LockSupport.unpark(runner);
    try {
      runner.join(JOIN_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    act(() -> stations.forEach(station -> station.outlet().close()));
    failure.ifPresent(e -> {
      throw new IllegalStateException("the virtual bench stopped by itself", e);
    });
  }

  private void run() {
    try {
      while (running) {
        act(this::step);
        LockSupport.parkNanos(TICK_NANOS);
      }
    } catch (RuntimeException e) {
      failure = Optional.of(e);
    }
  }

  private void step() {
    long now = offset + System.nanoTime() - start;
    for (Station station : stations) step(station, now);
    hands.accept(now);
  }

  private static void step(Station station, long now) {
    VirtualScale scale = station.scale();
    Outlet outlet = station.outlet();
    LineSettings own = scale.traits().line();
    byte[] taken = outlet.taken();
    if (taken.length > 0)
      scale.receive(outlet.heardAs().map(host -> garbled(taken, host, own)).orElse(taken));
    scale.advanceTo(
        now,
        (nanos, bytes) ->
            outlet.offer(outlet.heardAs().map(host -> garbled(bytes, own, host)).orElse(bytes)));
  }

  private static byte[] garbled(byte[] bytes, LineSettings sender, LineSettings receiver) {
    return sender.equals(receiver) ? bytes : LineHearing.heard(bytes, sender, receiver);
  }
}
