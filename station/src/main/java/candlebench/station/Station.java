package candlebench.station;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.shared.Stamp;
import candlebench.station.Mailbox.Item;
import candlebench.station.guidance.GuidanceEffect;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.GuidanceStep;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Words;
import candlebench.station.journal.Checkpoint;
import candlebench.station.journal.CommandJson;
import candlebench.station.journal.CrashPoints;
import candlebench.station.journal.CrashPoints.Point;
import candlebench.station.journal.Journal;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.Purpose;
import candlebench.station.link.LinkListener;
import candlebench.station.link.LinkReport;
import candlebench.station.link.ScaleLink;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.Stamps;
import candlebench.station.link.SystemStamps;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.RecordView;
import candlebench.station.view.StationView.ScaleView;
import candlebench.station.view.Views;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The bench at work: one thread that owns all state, fed by one bounded queue.
 *
 * <p>The order is a promise. An input is given to guidance; what that wants written down is on disk before the state changes; then
 * come the effects, then the view, then the answer to a command. If the disk refuses, state and effects do not happen, the view says
 * why, and it is tried again. A reader of a wire waits where the queue is full; nothing is dropped but ticks, which come again.
 *
 * <p>An error of ours stops the loop: nothing more is recorded, the record is as it was, the view says so, and the log has the rest.
 */
public final class Station implements Bench, AutoCloseable {

  static final Answer DONE = new Answer(true, Words.of("done"));
  private static final Logger LOG = LoggerFactory.getLogger(Station.class);
  private static final Answer STOPPED = new Answer(false, Words.of("station.stopped"));
  private static final Answer USED = new Answer(false, Words.of("station.id-used"));
  private static final Answer LATE = new Answer(false, Words.of("station.late"));
  private static final long ANSWER_SECONDS = 10;
  private static final long CLOSING_MILLIS = 5_000;

  /** While more waits, a view is made at least so often; the newest is made when nothing waits. */
  private static final long VIEW_NANOS = 20_000_000L;

  /** A quiet bench: no batch, and nothing recorded for so long. */
  private static final long QUIET_NANOS = 60_000_000_000L;

  private final StationConfig config;
  private final Journal journal;
  private final Stamps stamps;
  private final CrashPoints crashPoints;
  private final Mailbox mailbox = new Mailbox();
  private final List<ScaleLink> links = new ArrayList<>();
  private final List<ScaleDial> dials = new ArrayList<>();
  private final InputTrace trace = new InputTrace();
  private final Showing showing;
  private final Thread loop = new Thread(this::run, "station");
  private final Guide guide;
  private final Recorder recorder;
  private final CommandMemory commands;
  private final Map<Integer, Intake> owed = new HashMap<>();
  private final Watch ticking;
  private boolean viewIsDue;
  private long viewedNanos;
  private long recordedNanos;
  private volatile boolean stopped;

  private Station(
      StationConfig config,
      Journal journal,
      Stamps stamps,
      Ticker ticker,
      CrashPoints crashPoints,
      Recollection known) {
    this.config = config;
    this.journal = journal;
    this.stamps = stamps;
    this.crashPoints = crashPoints;
    this.guide = new Guide(config, known.progress());
    this.commands = known.commands();
    this.recorder = new Recorder(journal, crashPoints, config.setup().zone(), known.last());
    LinkListener ear = new Ear();
    for (int i = 0; i < config.scales().size(); i++) {
      ScaleLink link = new ScaleLink(i, config.scales().get(i), ear, stamps);
      links.add(link);
      dials.add(new ScaleDial(
          config.setup().scales().get(i).name(), config.scales().get(i), link.counters()));
    }
    Stamp now = stamps.now();
    trace.begin(journal.length(), now);
    recordedNanos = now.nanos();
    showing = new Showing(config.unit(), made(now));
    loop.setDaemon(true);
    loop.start();
    links.forEach(ScaleLink::start);
    ticking = ticker.start(() -> mailbox.tick(new Intake.Ticked(stamps.now())));
  }

  /**
   * Starts the bench where its journal left it. The journal stays the caller's, to be closed after the bench.
   *
   * @throws JournalFailed if the journal cannot be read from its beginning, or is for another purpose
   */
  public static Station start(StationConfig config, Journal journal) throws JournalFailed {
    return start(config, journal, new SystemStamps(), Ticker.SYSTEM, CrashPoints.NONE);
  }

  public static Station start(
      StationConfig config, Journal journal, Stamps stamps, Ticker ticker, CrashPoints crashPoints)
      throws JournalFailed {
    return start(config, journal, Checkpoint.START, stamps, ticker, crashPoints);
  }

  /** The same, but what a checkpoint of the journal holds is not read again. */
  public static Station start(
      StationConfig config,
      Journal journal,
      Checkpoint from,
      Stamps stamps,
      Ticker ticker,
      CrashPoints crashPoints)
      throws JournalFailed {
    if (journal.purpose() != config.purpose())
      throw new JournalFailed(
          JournalFailed.Trouble.OTHER_PURPOSE,
          "the journal is for "
              + journal.purpose().word() + " and the bench for "
              + config.purpose().word() + ": name another data folder");
    return new Station(
        config, journal, stamps, ticker, crashPoints, Recollection.of(journal, from));
  }

  @Override
  public List<ScaleSettings> scales() {
    return config.scales();
  }

  @Override
  public ShownUnit unit() {
    return config.unit();
  }

  @Override
  public StationView view() {
    return showing.newest();
  }

  @Override
  public StationView view(ShownUnit unit) {
    return showing.newest(unit);
  }

  @Override
  public Watch watch(Runnable newerView) {
    return showing.watch(newerView);
  }

  @Override
  public Answer say(String commandId, MakerCommand command) {
    if (stopped) return STOPPED;
    try {
      return mailbox
          .ask(new Intake.Said(commandId, command, stamps.now()))
          .get(ANSWER_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
      return LATE;
    } catch (TimeoutException late) {
      return stopped ? STOPPED : LATE;
    } catch (ExecutionException impossible) {
      throw new AssertionError("an answer is given, never thrown", impossible);
    }
  }

  @Override
  public void writeInputs(Appendable out) throws IOException {
    trace.dump(out);
  }

  InputTrace trace() {
    return trace;
  }

  StationConfig config() {
    return config;
  }

  Journal journal() {
    return journal;
  }

  /** The links, in the order of the scales, for what they counted. */
  public List<ScaleLink> links() {
    return List.copyOf(links);
  }

  /** Stops: no more is heard from scales, what was heard is dealt with, then the loop ends. */
  @Override
  public void close() {
    ticking.close();
    links.forEach(ScaleLink::close);
    try {
      mailbox.end();
      loop.join(CLOSING_MILLIS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    for (Item next = mailbox.next(); next != Mailbox.END; next = mailbox.next()) {
      if (stopped) {
        next.answer().complete(STOPPED);
        continue;
      }
      try {
        deal(next);
      } catch (RuntimeException | Error ours) {
        stop(ours);
        next.answer().complete(STOPPED);
      }
    }
    stopped = true;
    mailbox.answerAll(STOPPED);
  }

  private void deal(Item next) {
    Intake intake = next.intake();
    if (intake instanceof Intake.Said said) {
      next.answer().complete(answer(said));
      return;
    }
    hear(intake);
    if (intake instanceof Intake.Ticked) payOwed();
    boolean done = isDone(intake);
    if (intake instanceof Intake.LineChanged line) {
      if (done) owed.remove(line.scale());
      else owed.put(line.scale(), line);
    }
    show(intake);
    trace.keep(intake, done);
    if (intake instanceof Intake.Ticked && trace.isLong()) beginPiece(intake.stamp());
  }

  private Answer answer(Intake.Said said) {
    String kind = CommandJson.kind(said.command());
    if (commands.isOther(said.commandId(), kind)) return USED;
    Optional<Answer> before = commands.answer(said.commandId());
    if (before.isPresent()) return before.get();
    commands.name(said.commandId(), kind);
    boolean done = isDone(said);
    show(said);
    trace.keep(said, done);
    // What could not be recorded was not done, and may be said again under the same id.
    if (!done) return new Answer(false, recorder.trouble().orElseThrow());
    return commands.answer(said.commandId()).orElseThrow();
  }

  /** Gives an intake to guidance and does what it says; false if that could not be written down, and then nothing was done. */
  private boolean isDone(Intake intake) {
    Optional<GuidanceStep> step = guide.step(intake);
    if (step.isEmpty()) return true;
    if (!step.get().events().isEmpty()) {
      viewIsDue = true;
      boolean insists = intake instanceof Intake.Said;
      if (!recorder.isRecorded(step.get().events(), intake.stamp(), insists)) return false;
      recordedNanos = intake.stamp().nanos();
    }
    guide.take(step.get());
    crashPoints.at(Point.AFTER_STATE);
    step.get().effects().forEach(this::doEffect);
    crashPoints.at(Point.AFTER_EFFECTS);
    return true;
  }

  private void hear(Intake intake) {
    if (intake instanceof Intake.Heard heard)
      dials
          .get(heard.scale())
          .heard(
              heard.frame(),
              heard.decoded(),
              guide.inputs().readings(heard.scale()).unitUnlessNamed(),
              stamps.now().nanos());
    if (intake instanceof Intake.LineChanged line) dials.get(line.scale()).changed(line.report());
  }

  private void doEffect(GuidanceEffect effect) {
    if (effect instanceof GuidanceEffect.CommandDone done) commands.keep(done.commandId(), DONE);
    else if (effect instanceof GuidanceEffect.CommandRefused refused)
      commands.keep(refused.commandId(), new Answer(false, refused.words()));
    else throw new AssertionError(effect);
  }

  /** A change of line that could not be recorded is not repeated by the world, so it is kept and dealt with again. */
  private void payOwed() {
    for (Intake debt : List.copyOf(owed.values())) {
      if (!isDone(debt)) return;
      owed.values().remove(debt);
      trace.keep(debt, true);
    }
  }

  /** A long trace begins anew where nothing is lost by it; then what only lives is forgotten, so that a replay begins the same. */
  private void beginPiece(Stamp now) {
    boolean quiet =
        now.nanos() - recordedNanos > QUIET_NANOS && guide.state().progress().isQuiet();
    if (!quiet) return;
    guide.forget();
    trace.begin(journal.length(), now);
  }

  private void show(Intake intake) {
    viewIsDue |= !(intake instanceof Intake.Ticked);
    Stamp now = stamps.now();
    boolean moreWaits = !mailbox.isEmpty() && now.nanos() - viewedNanos < VIEW_NANOS;
    if (moreWaits) return;
    if (viewIsDue) showing.show(made(now));
    else showing.showIfOther(made(now));
    viewIsDue = false;
    viewedNanos = now.nanos();
    crashPoints.at(Point.AFTER_VIEW);
  }

  /** This moment, to be shown in any unit: what it is made of does not change any more. */
  private Function<ShownUnit, StationView> made(Stamp now) {
    GuidanceState state = guide.state();
    List<ScaleView> scales = dials.stream().map(dial -> dial.view(now.nanos())).toList();
    Function<ShownUnit, RecordView> record = recorder.standing();
    boolean practice = journal.purpose() == Purpose.PRACTICE;
    return unit -> new StationView(
        0, now.nanos(), practice, scales, Views.of(state, now, unit), record.apply(unit));
  }

  private void stop(Throwable ours) {
    stopped = true;
    LOG.error(
        "The bench has stopped by an error of the program. Nothing more is recorded; all that was recorded is safe.",
        ours);
    showing.stopped(stamps.now().nanos());
  }

  /** Hears the links, in their threads. */
  private final class Ear implements LinkListener {
    @Override
    public void heard(int scale, Frame frame, Decoded decoded) {
      mailbox.bring(new Intake.Heard(scale, frame, decoded));
    }

    @Override
    public void printKeyPressed(int scale, Stamp stamp) {
      mailbox.bring(new Intake.PrintKeyPressed(scale, stamp));
    }

    @Override
    public void changed(int scale, LinkReport report, Stamp stamp) {
      mailbox.bring(new Intake.LineChanged(scale, report, stamp));
    }
  }
}
