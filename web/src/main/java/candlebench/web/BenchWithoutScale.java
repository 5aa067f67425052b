package candlebench.web;

import candlebench.station.Bench;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Words;
import candlebench.station.link.ScaleSettings;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.BenchView;
import candlebench.station.view.StationView.Cue;
import candlebench.station.view.StationView.RecordView;
import candlebench.station.view.StationView.Say;
import java.util.List;
import java.util.Optional;

/** What a page is shown before the first scale is named: the way to one. Nothing is weighed and nothing recorded. */
final class BenchWithoutScale implements Bench {
  static final String STEP = "NO_SCALE";

  private final StationView view = new StationView(
      1,
      System.nanoTime(),
      false,
      List.of(),
      new BenchView(
          STEP,
          Say.of("now.no-scale"),
          Optional.of(Say.of("detail.no-scale")),
          Cue.NONE,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of(),
          Optional.empty(),
          false,
          List.of()),
      new RecordView(0, "", Optional.empty(), Optional.empty()));

  private final ShownUnit unit;

  BenchWithoutScale(ShownUnit unit) {
    this.unit = unit;
  }

  @Override
  public List<ScaleSettings> scales() {
    return List.of();
  }

  @Override
  public ShownUnit unit() {
    return unit;
  }

  @Override
  public StationView view() {
    return view;
  }

  @Override
  public StationView view(ShownUnit any) {
    return view;
  }

  @Override
  public Watch watch(Runnable newerView) {
    return () -> {};
  }

  @Override
  public void writeInputs(Appendable out) {}

  @Override
  public Answer say(String commandId, MakerCommand command) {
    return new Answer(false, Words.of("refused.no-scale"));
  }
}
