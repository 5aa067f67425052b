package candlebench.station;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.shared.Stamp;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.link.LinkReport;

/** What reaches the bench from outside, in the order in which it is dealt with. */
sealed interface Intake {

  Stamp stamp();

  /** A scale's frame, with what it says. */
  record Heard(int scale, Frame frame, Decoded decoded) implements Intake {
    @Override
    public Stamp stamp() {
      return frame.stamp();
    }
  }

  /** Someone pressed PRINT on a scale. */
  record PrintKeyPressed(int scale, Stamp stamp) implements Intake {}

  /** A scale's line changed. */
  record LineChanged(int scale, LinkReport report, Stamp stamp) implements Intake {}

  /** Time passed. */
  record Ticked(Stamp stamp) implements Intake {}

  /** The maker said something. */
  record Said(String commandId, MakerCommand command, Stamp stamp) implements Intake {}
}
