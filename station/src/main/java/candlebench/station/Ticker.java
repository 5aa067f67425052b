package candlebench.station;

import candlebench.station.Bench.Watch;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** Lets the bench know that time passes. */
@FunctionalInterface
public interface Ticker {

  /** How often: a countdown is to run smoothly, and silence is to be noticed in time. */
  long EVERY_MILLIS = 100;

  /** By the computer's clock, in a thread of its own. */
  Ticker SYSTEM = tick -> {
    ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(work -> {
      Thread thread = new Thread(work, "ticker");
      thread.setDaemon(true);
      return thread;
    });
    timer.scheduleAtFixedRate(tick, EVERY_MILLIS, EVERY_MILLIS, TimeUnit.MILLISECONDS);
    return timer::shutdownNow;
  };

  /** Calls back about every {@link #EVERY_MILLIS} until closed. */
  Watch start(Runnable tick);
}
