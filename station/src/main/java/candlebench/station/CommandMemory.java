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

  Optional<Answer> answer(String commandId) {
    return Optional.ofNullable(answers.get(commandId));
  }

  void keep(String commandId, Answer answer) {
    answers.put(commandId, answer);
    if (answers.size() > MOST) answers.remove(answers.keySet().iterator().next());
  }
}
