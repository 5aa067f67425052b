package candlebench.station;

import candlebench.station.Bench.Answer;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The answers given last, so that the same tap sent again is answered as the first time and done once. */
final class CommandMemory {

  /** The most answers kept: more taps than a maker makes in a day. */
  static final int MOST = 1024;

  private final Map<String, Answer> answers = new LinkedHashMap<>();
  private final Map<String, String> kinds = new LinkedHashMap<>();

  Optional<Answer> answer(String commandId) {
    return Optional.ofNullable(answers.get(commandId));
  }

  /** Whether the id was used for a command of another kind, which was then another tap. */
  boolean isOther(String commandId, String kind) {
    return !kinds.getOrDefault(commandId, kind).equals(kind);
  }

  /** Notes what an id stands for, before it is answered. */
  void name(String commandId, String kind) {
    kinds.put(commandId, kind);
    if (kinds.size() > MOST) kinds.remove(kinds.keySet().iterator().next());
  }

  void keep(String commandId, Answer answer) {
    answers.put(commandId, answer);
    if (answers.size() > MOST) answers.remove(answers.keySet().iterator().next());
  }
}
