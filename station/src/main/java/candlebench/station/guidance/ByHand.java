package candlebench.station.guidance;

import java.util.Optional;

/** A weight entered by hand: only where no scale answers, and marked so for ever. */
final class ByHand {

  private ByHand() {}

  /** Why it may not be entered now, if it may not. */
  static Optional<Words> refusal(MakerCommand.EnterByHand entry, int scale, Scene scene) {
    if (scene.load(scale).isPresent()) return Optional.of(Words.of("refused.scale-answers"));
    if (entry.net().isNegative() || entry.net().isZero())
      return Optional.of(Words.of("refused.no-weight"));
    return entry.reason().isBlank()
        ? Optional.of(Words.of("refused.reason-needed"))
        : Optional.empty();
  }
}
