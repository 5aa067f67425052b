package candlebench.web;

import candlebench.station.Bench;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Words;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Function;

/** A bench that shows what the test says, and keeps what the page asked for. */
final class ScriptedBench implements Bench {

  /** What a page said. */
  record Said(String id, MakerCommand command) {}

  static final String INPUTS = "1000 s k3f9 {\"command\":\"go-on\"}\n";

  private final List<Runnable> watchers = new CopyOnWriteArrayList<>();
  private final BlockingQueue<Said> said = new LinkedBlockingQueue<>();
  private final Map<ShownUnit, StationView> inUnits = new ConcurrentHashMap<>();
  private volatile StationView view;
  private volatile Function<MakerCommand, Answer> answers =
      command -> new Answer(true, Words.of("answer.done"));

  ScriptedBench(StationView view) {
    this.view = view;
  }

  Site site() {
    return site(Optional.empty());
  }

  Site site(Optional<Site.Hands> hands) {
    return new Site(
        this,
        System::nanoTime,
        List.of(HarbourLane.CANDLE, HarbourLane.OIL_ONLY),
        Optional.empty(),
        Optional.empty(),
        hands);
  }

  void show(StationView newer) {
    view = newer;
    watchers.forEach(Runnable::run);
  }

  /** Shows a view of its own to the pages that are read in a unit. */
  void showIn(ShownUnit unit, StationView other) {
    inUnits.put(unit, other);
  }

  void answerWith(Function<MakerCommand, Answer> answers) {
    this.answers = answers;
  }

  BlockingQueue<Said> said() {
    return said;
  }

  int watchers() {
    return watchers.size();
  }

  @Override
  public List<ScaleSettings> scales() {
    return List.of(
        ScaleUri.of("serial:/dev/ttyUSB0?format=and&name=Bench%20scale&max=3kg&ask=200ms"));
  }

  @Override
  public ShownUnit unit() {
    return ShownUnit.GRAM;
  }

  @Override
  public StationView view(ShownUnit unit) {
    return inUnits.getOrDefault(unit, view);
  }

  @Override
  public StationView view() {
    return view;
  }

  @Override
  public Watch watch(Runnable newerView) {
    watchers.add(newerView);
    return () -> watchers.remove(newerView);
  }

  @Override
  public void writeInputs(Appendable out) throws IOException {
    out.append(INPUTS);
  }

  @Override
  public Answer say(String commandId, MakerCommand command) {
    said.add(new Said(commandId, command));
    return answers.apply(command);
  }
}
