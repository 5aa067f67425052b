package candlebench.station.link;

import candlebench.protocol.Refusal;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicLongArray;

/** Counts of a link since the program started. Written by the link's thread, read by any. */
public final class Counters {
  private final AtomicLong bytes = new AtomicLong();
  private final AtomicLong frames = new AtomicLong();
  private final AtomicLong refused = new AtomicLong();
  private final AtomicLong passedOver = new AtomicLong();
  private final AtomicLong openings = new AtomicLong();
  private final AtomicLongArray reasons = new AtomicLongArray(Refusal.Reason.values().length);

  void read(int count) {
    bytes.addAndGet(count);
  }

  void understood() {
    frames.incrementAndGet();
  }

  void refused(Refusal refusal) {
    refused.incrementAndGet();
    reasons.incrementAndGet(refusal.reason().ordinal());
  }

  void passed() {
    passedOver.incrementAndGet();
  }

  void opened() {
    openings.incrementAndGet();
  }

  /** All bytes read. */
  public long bytes() {
    return bytes.get();
  }

  /** Frames understood. */
  public long frames() {
    return frames.get();
  }

  /** Frames not understood. */
  public long refused() {
    return refused.get();
  }

  /** Frames that were not heard from their beginning, as after each opening: nobody can say what they meant. */
  public long passedOver() {
    return passedOver.get();
  }

  /** How often the line was opened. */
  public long openings() {
    return openings.get();
  }

  /** Frames not understood, by reason; reasons without any left out. */
  public Map<Refusal.Reason, Long> refusedByReason() {
    Map<Refusal.Reason, Long> counts = new EnumMap<>(Refusal.Reason.class);
    for (Refusal.Reason reason : Refusal.Reason.values()) {
      long count = reasons.get(reason.ordinal());
      if (count > 0) counts.put(reason, count);
    }
    return counts;
  }
}
