package candlebench.web;

import candlebench.shared.Mass;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.PourKind;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.station.Bench;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.view.StationView.BenchView;
import candlebench.station.view.StationView.Choice;
import candlebench.station.view.StationView.WeighingView;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.LongConsumer;

/** A virtual maker who does what the page says, batch after batch, so that the practice bench can be watched. */
final class PracticeMaker implements LongConsumer {
  private static final String POT = "pot";
  private static final Mass EMPTY_POT = Mass.ofGrams("412.6");
  private static final Mass EMPTY_VESSEL = Mass.ofGrams("198.3");
  private static final int VESSELS = 3;
  private static final long SEED = 20;
  private static final long REST_NANOS = 8_000_000_000L;

  private final Bench station;
  private final Pan pan;
  private final VirtualMaker maker = VirtualMaker.drawn(Slips.none(), SEED);
  private final ExecutorService finger = Executors.newSingleThreadExecutor(PracticeMaker::thread);
  private String asked = "";
  private long answersAt = Long.MAX_VALUE;
  private long answers;
  private int vessels;

  PracticeMaker(Bench station, Pan pan) {
    this.station = station;
    this.pan = pan;
  }

  @Override
  public void accept(long nanos) {
    BenchView bench = station.view().bench();
    answer(bench, nanos);
    handle(bench);
    maker.takes(bench.step().equals("FILL_VESSEL") ? PourKind.WAX_PITCHER : PourKind.OIL_BOTTLE);
    maker.advanceTo(nanos, perceived(bench), pan);
  }

  /** Takes into the hand what is to be put on, and puts aside what was taken off for good. */
  private void handle(BenchView bench) {
    boolean empty = pan.receiver().isEmpty();
    switch (bench.step()) {
      case "IDLE", "DONE" -> {
        pan.receiver().ifPresent(pan::liftOff);
        maker.putAside();
        vessels = 0;
      }
      case "PLACE_POT" -> {
        if (empty && maker.held().isEmpty()) maker.hand(POT, EMPTY_POT, false);
      }
      case "PLACE_VESSEL" -> {
        if (maker.held().filter(held -> held.mass().isMoreThan(EMPTY_VESSEL)).isPresent())
          maker.putAside();
        if (empty && maker.held().isEmpty()) maker.hand("vessel " + ++vessels, EMPTY_VESSEL, false);
      }
      default -> {}
    }
  }

  private Perceived perceived(BenchView bench) {
    if (bench.trouble().isPresent()) return Perceived.told(Told.WAIT);
    boolean stands = pan.receiver().isPresent();
    return switch (bench.step()) {
      case "PLACE_POT", "PLACE_VESSEL" ->
        Perceived.told(
            stands && maker.held().isEmpty() && isOther(bench)
                ? Told.LIFT
                : stands ? Told.WAIT : Told.PLACE);
      case "RETURN_POT", "AWAY" -> Perceived.told(stands ? Told.WAIT : Told.PLACE);
      case "MELT" ->
        Perceived.told(
            bench.timer().filter(timer -> timer.remainingMillis() > 0).isPresent()
                ? stands ? Told.LIFT : Told.WAIT
                : Told.PLACE);
      case "LIFT_VESSEL" -> Perceived.told(Told.LIFT);
      default ->
        bench
            .weighing()
            .map(weighing -> pouring(bench, weighing))
            .orElse(Perceived.told(Told.WAIT));
    };
  }

  /** Whether the pot stands where a vessel is asked for. */
  private boolean isOther(BenchView bench) {
    return bench.step().equals("PLACE_VESSEL") && pan.holds(POT);
  }

  private static Perceived pouring(BenchView bench, WeighingView weighing) {
    Perceived told = switch (bench.cue()) {
      case POUR -> foreseen(Told.POUR, bench);
      case SLOW -> foreseen(Told.SLOW, bench);
      case STOP -> Perceived.told(Told.STOP);
      case DROPS -> Perceived.drops(bench.dropsToGo().orElse(1));
      case PIECES -> Perceived.told(Told.PIECES);
      case HOLD_STILL -> Perceived.told(Told.HOLD_STILL);
      case OVER -> Perceived.told(Told.OVER);
      case NONE, WAITING -> Perceived.told(Told.WAIT);
    };
    OptionalDouble toGo = weighing.toGo().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Double.parseDouble(weighing.toGo()));
    return toGo.isPresent() ? told.withToGo(toGo.getAsDouble()) : told;
  }

  private static Perceived foreseen(Told told, BenchView bench) {
    return bench
        .stopInMillis()
        .map(millis -> Perceived.stopIn(told, Duration.ofMillis(millis)))
        .orElse(Perceived.told(told));
  }

  /** Presses what the page asks to be pressed, as long after it is first seen as this maker takes. */
  private void answer(BenchView bench, long nanos) {
    Optional<MakerCommand> answer = wanted(bench);
    String seen = answer.map(command -> bench.step() + command).orElse("");
    if (!seen.equals(asked)) {
      asked = seen;
      long rest = bench.step().equals("DONE") ? REST_NANOS : 0;
      answersAt = seen.isEmpty() ? Long.MAX_VALUE : maker.answersAt(nanos) + rest;
    }
    if (nanos < answersAt) return;
    answersAt = Long.MAX_VALUE;
    String id = "maker-" + System.nanoTime() + "-" + ++answers;
    finger.execute(() -> station.say(id, answer.orElseThrow()));
  }

  private static Optional<MakerCommand> wanted(BenchView bench) {
    Optional<Choice> way = bench.choices().stream().filter(Choice::possible).findFirst();
    if (way.isPresent())
      return Optional.of(
          new MakerCommand.Choose(way.get().id(), way.get().needsReason() ? "practice" : ""));
    return switch (bench.step()) {
      case "IDLE", "DONE" ->
        Optional.of(new MakerCommand.StartBatch(
            HarbourLane.QUICK.id(), VESSELS, "Practice maker", Map.of()));
      case "PREPARE" -> Optional.of(new MakerCommand.GoOn());
      case "MIX" ->
        bench.timer().filter(timer -> timer.remainingMillis() > 0).isPresent()
            ? Optional.empty()
            : Optional.of(new MakerCommand.GoOn());
      default -> Optional.empty();
    };
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "practice maker's finger");
    thread.setDaemon(true);
    return thread;
  }
}
