package candlebench.station.guidance;

import candlebench.shared.Reading;
import candlebench.shared.Stamp;

/** All that guidance can learn of the world. Each input carries its time; guidance knows no other clock. */
public sealed interface GuidanceInput {

  Stamp stamp();

  /** A scale, numbered from zero in the order of the settings, showed a weight. */
  record ReadingArrived(int scale, Reading reading) implements GuidanceInput {
    @Override
    public Stamp stamp() {
      return reading.stamp();
    }
  }

  /** A scale shows no weight: there is no number, and none is made up. */
  record NoWeightShown(int scale, Why why, Stamp stamp) implements GuidanceInput {
    /** Why there is no number. */
    public enum Why {
      OVERLOAD,
      UNDERLOAD,
      FAULT,
      NO_UNIT,
      BLANK
    }
  }

  /** Someone pressed PRINT on a scale: go on, as the one large key means it. */
  record PrintKeyPressed(int scale, Stamp stamp) implements GuidanceInput {}

  /** A scale's line came or went. */
  record LineChanged(int scale, boolean answering, Stamp stamp) implements GuidanceInput {}

  /** Time passed: silence is an input too. */
  record ClockTicked(Stamp stamp) implements GuidanceInput {}

  /** The maker said something, by key, foot switch or page; the id makes a repeated tap count once. */
  record MakerSaid(String commandId, MakerCommand command, Stamp stamp) implements GuidanceInput {}
}
