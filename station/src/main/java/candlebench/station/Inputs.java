package candlebench.station;

import candlebench.station.guidance.GuidanceInput;
import candlebench.station.link.LinkState;
import candlebench.station.link.ScaleSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** From what reaches the bench to what guidance learns of it: the same intakes in the same order give the same inputs. */
final class Inputs {
  private final List<Readings> readings = new ArrayList<>();

  Inputs(List<ScaleSettings> scales) {
    for (ScaleSettings scale : scales) readings.add(new Readings(readings.size(), scale));
  }

  /** What guidance is to learn; empty where there is nothing to learn. */
  Optional<GuidanceInput> of(Intake intake) {
    if (intake instanceof Intake.Heard heard)
      return readings.get(heard.scale()).of(heard.frame(), heard.decoded());
    if (intake instanceof Intake.PrintKeyPressed print)
      return Optional.of(new GuidanceInput.PrintKeyPressed(print.scale(), print.stamp()));
    if (intake instanceof Intake.LineChanged line)
      return Optional.of(new GuidanceInput.LineChanged(
          line.scale(), line.report().state() == LinkState.LIVE, line.stamp()));
    if (intake instanceof Intake.Ticked ticked)
      return Optional.of(new GuidanceInput.ClockTicked(ticked.stamp()));
    if (intake instanceof Intake.Said said)
      return Optional.of(
          new GuidanceInput.MakerSaid(said.commandId(), said.command(), said.stamp()));
    throw new AssertionError(intake);
  }

  Readings readings(int scale) {
    return readings.get(scale);
  }
}
