package candlebench.station.guidance;

import candlebench.station.batch.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where a batch is in its steps. */
public record Course(List<Step> steps, int at) {

  public Course {
    steps = List.copyOf(steps);
  }

  public Optional<Step> step() {
    return at < steps.size() ? Optional.of(steps.get(at)) : Optional.empty();
  }

  Course next() {
    return new Course(steps, at + 1);
  }

  /** The same with more steps before the one at hand. */
  Course first(List<Step> more) {
    List<Step> all = new ArrayList<>(steps);
    all.addAll(at, more);
    return new Course(all, at);
  }

  /** The same with more steps right after the one at hand. */
  Course second(List<Step> more) {
    List<Step> all = new ArrayList<>(steps);
    all.addAll(at + 1, more);
    return new Course(all, at);
  }

  /** How many steps of a kind are not done. */
  int left(Class<? extends Step> kind) {
    return (int)
        steps.subList(at, steps.size()).stream().filter(kind::isInstance).count();
  }

  Course withoutLast(int count) {
    return new Course(steps.subList(0, steps.size() - count), at);
  }

  boolean isAt(Class<? extends Step> kind) {
    return step().filter(kind::isInstance).isPresent();
  }
}
