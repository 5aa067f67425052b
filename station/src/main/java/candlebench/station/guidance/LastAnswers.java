package candlebench.station.guidance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was answered to the last commands, so that a repeated tap counts once and is answered as the first. */
record LastAnswers(List<GuidanceEffect> last) {
  static final LastAnswers NONE = new LastAnswers(List.of());

  private static final int MOST = 64;

  Optional<GuidanceEffect> to(String commandId) {
    return last.stream().filter(effect -> effect.commandId().equals(commandId)).findFirst();
  }

  LastAnswers and(List<GuidanceEffect> effects) {
    if (effects.isEmpty()) return this;
    List<GuidanceEffect> all = new ArrayList<>(last);
    all.addAll(effects);
    return new LastAnswers(List.copyOf(all.subList(Math.max(0, all.size() - MOST), all.size())));
  }
}
