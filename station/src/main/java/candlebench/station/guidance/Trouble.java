package candlebench.station.guidance;

import candlebench.station.guidance.GuidanceInput.NoWeightShown;
import java.util.Optional;

/** What stands in the number's place while a scale gives none to be trusted. */
final class Trouble {

  private Trouble() {}

  static Optional<Words> of(Pan pan, long nanos) {
    if (!pan.answering()) return Optional.of(Words.of("trouble.no-line"));
    if (pan.none().isPresent()) return Optional.of(Words.of(keyOf(pan.none().get())));
    if (pan.last().isEmpty()) return Optional.of(Words.of("trouble.nothing-heard"));
    if (pan.fresh(nanos).isEmpty()) return Optional.of(Words.of("trouble.old"));
    return Optional.empty();
  }

  private static String keyOf(NoWeightShown.Why why) {
    return switch (why) {
      case OVERLOAD -> "trouble.overload";
      case UNDERLOAD -> "trouble.underload";
      case FAULT -> "trouble.fault";
      case NO_UNIT -> "trouble.no-unit";
      case BLANK -> "trouble.blank";
    };
  }
}
