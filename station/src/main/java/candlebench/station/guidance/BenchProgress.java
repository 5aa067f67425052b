package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.guidance.pour.Habits;
import candlebench.station.guidance.pour.PourKind;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * All that lasts: a fold of events, the same whether they happen now or are read back from the journal.
 *
 * @param batch the batch at hand, or the last one
 * @param zeros what is to be added to a scale's numbers, by scale, where its zero was found shifted
 * @param habits what was learnt of pours
 * @param begun how many batches were ever begun
 */
public record BenchProgress(
    Optional<BatchProgress> batch,
    Map<Integer, Mass> zeros,
    Map<Pourer, Habits> habits,
    int begun) {

  public static final BenchProgress EMPTY =
      new BenchProgress(Optional.empty(), Map.of(), Map.of(), 0);

  /** Whose habits: on one scale, of one maker, with one kind of pour. */
  public record Pourer(int scale, String person, PourKind kind) {}

  public BenchProgress {
    zeros = Map.copyOf(zeros);
    habits = Map.copyOf(habits);
  }

  /** What is known once one more event has happened. */
  public BenchProgress after(GuidanceEvent event) {
    return event.foldInto(this);
  }

  public BenchProgress after(List<GuidanceEvent> events) {
    BenchProgress progress = this;
    for (GuidanceEvent event : events) progress = progress.after(event);
    return progress;
  }

  /** What is to be added to a scale's number to have what stands on its pan. */
  public Mass zero(int scale) {
    return zeros.getOrDefault(scale, Mass.ZERO);
  }

  Habits habits(Pourer pourer) {
    return habits.getOrDefault(pourer, Habits.unlearnt(pourer.kind()));
  }

  /** The batch, if one is running. */
  public Optional<BatchProgress> running() {
    return batch.filter(BatchProgress::runs);
  }

  BenchProgress begun(BatchProgress next) {
    return new BenchProgress(Optional.of(next), zeros, habits, begun + 1);
  }

  BenchProgress zero(int scale, Mass zero) {
    Map<Integer, Mass> more = new HashMap<>(zeros);
    more.put(scale, zero);
    return new BenchProgress(batch, more, habits, begun);
  }

  BenchProgress learnt(GuidanceEvent.HabitsLearnt learnt) {
    Map<Pourer, Habits> more = new HashMap<>(habits);
    more.put(new Pourer(learnt.scale(), learnt.person(), learnt.kind()), learnt.habits());
    return new BenchProgress(batch, zeros, more, begun);
  }

  BenchProgress batch(UnaryOperator<BatchProgress> change) {
    return new BenchProgress(batch.map(change), zeros, habits, begun);
  }
}
