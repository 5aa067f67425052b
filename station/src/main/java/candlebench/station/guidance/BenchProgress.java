package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.guidance.pour.Habits;
import candlebench.station.guidance.pour.PourKind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * All that lasts: a fold of events, the same whether they happen now or are read back from the journal.
 *
 * @param batch the batch in hand, or the last one
 * @param aside the other batches that run, each in its pot, in the order in which they were put aside
 * @param work what is made in several pots, if anything is or was
 * @param taught the empty weights of pots, as they were weighed once, by name
 * @param zeros what is to be added to a scale's numbers, by scale, where its zero was found shifted
 * @param habits what was learnt of pours
 * @param begun how many batches were ever begun
 */
public record BenchProgress(
    Optional<BatchProgress> batch,
    List<BatchProgress> aside,
    Optional<Work> work,
    Map<String, Mass> taught,
    Map<Integer, Mass> zeros,
    Map<Pourer, Habits> habits,
    int begun) {

  public static final BenchProgress EMPTY = betweenBatches(Map.of(), Map.of(), Map.of(), 0);

  /** Whose habits: on one scale, of one maker, with one kind of pour. */
  public record Pourer(int scale, String person, PourKind kind) {}

  public BenchProgress {
    aside = List.copyOf(aside);
    taught = Map.copyOf(taught);
    zeros = Map.copyOf(zeros);
    habits = Map.copyOf(habits);
  }

  /** What lasts from one batch to the next. */
  public static BenchProgress betweenBatches(
      Map<String, Mass> taught, Map<Integer, Mass> zeros, Map<Pourer, Habits> habits, int begun) {
    return new BenchProgress(
        Optional.empty(), List.of(), Optional.empty(), taught, zeros, habits, begun);
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

  /** The batch in hand, if it runs. */
  public Optional<BatchProgress> running() {
    return batch.filter(BatchProgress::runs);
  }

  /** The shares still to be begun of what is made in several pots. */
  public List<Integer> toCome() {
    return work.map(Work::toCome).orElse(List.of());
  }

  /** Whether nothing runs, and nothing is still to be begun. */
  public boolean isQuiet() {
    return running().isEmpty() && aside.isEmpty() && toCome().isEmpty();
  }

  BenchProgress begun(BatchProgress next) {
    return new BenchProgress(
        Optional.of(next), stillRunning(), work, taught, zeros, habits, begun + 1);
  }

  /** Another batch is in hand from now on; none of that name is aside where only one batch's own events are folded. */
  BenchProgress taken(String code) {
    Optional<BatchProgress> taken =
        aside.stream().filter(each -> each.started().code().equals(code)).findFirst();
    if (taken.isEmpty()) return this;
    List<BatchProgress> others = new ArrayList<>(stillRunning());
    others.remove(taken.get());
    return new BenchProgress(taken, others, work, taught, zeros, habits, begun);
  }

  private List<BatchProgress> stillRunning() {
    List<BatchProgress> others = new ArrayList<>(aside);
    running().ifPresent(others::add);
    return others;
  }

  BenchProgress zero(int scale, Mass zero) {
    Map<Integer, Mass> more = new HashMap<>(zeros);
    more.put(scale, zero);
    return new BenchProgress(batch, aside, work, taught, more, habits, begun);
  }

  BenchProgress taught(String pot, Mass empty) {
    Map<String, Mass> more = new HashMap<>(taught);
    more.put(pot, empty);
    return new BenchProgress(batch, aside, work, more, zeros, habits, begun);
  }

  BenchProgress learnt(GuidanceEvent.HabitsLearnt learnt) {
    Map<Pourer, Habits> more = new HashMap<>(habits);
    more.put(new Pourer(learnt.scale(), learnt.person(), learnt.kind()), learnt.habits());
    return new BenchProgress(batch, aside, work, taught, zeros, more, begun);
  }

  BenchProgress batch(UnaryOperator<BatchProgress> change) {
    return new BenchProgress(batch.map(change), aside, work, taught, zeros, habits, begun);
  }

  BenchProgress aside(UnaryOperator<BatchProgress> change) {
    return new BenchProgress(
        batch, aside.stream().map(change).toList(), work, taught, zeros, habits, begun);
  }

  BenchProgress divided(Work next) {
    return new BenchProgress(batch, aside, Optional.of(next), taught, zeros, habits, begun);
  }

  BenchProgress work(UnaryOperator<Work> change) {
    return new BenchProgress(batch, aside, work.map(change), taught, zeros, habits, begun);
  }
}
