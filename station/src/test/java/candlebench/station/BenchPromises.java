package candlebench.station;

import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.shared.Stamp;
import candlebench.shared.Verdict;
import candlebench.simulator.Pan;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.BatchAbandoned;
import candlebench.station.guidance.GuidanceEvent.BatchScrapped;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.CupTared;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.OverGone;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.PotTaken;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.RemedyChosen;
import candlebench.station.guidance.GuidanceEvent.Undone;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.GuidanceInput;
import candlebench.station.guidance.GuidanceInput.LineChanged;
import candlebench.station.guidance.GuidanceInput.NoWeightShown;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import candlebench.station.guidance.GuidanceStep;
import candlebench.station.guidance.Place;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.EntryText;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.BenchView;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.Views;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.DoubleStream;

/**
 * What must hold in every run, checked after every step with what is truly on the pan at hand. Written apart from guidance, so that it
 * cannot share its mistakes.
 */
public final class BenchPromises {
  /** Thrown when a promise is broken. */
  public static final class Broken extends AssertionError {
    private static final long serialVersionUID = 1L;

    Broken(String message) {
      super(message);
    }
  }

  /** More inputs than come while a reading is found steady: 25 readings a second, and ten ticks. */
  private static final int LEANINGS = 60;

  private static final long STEADY_NANOS = 1_000_000_000L;
  private static final long LOOK_NANOS = 330_000_000L;
  private static final long NANOS_OLD = 1_000_000_000L;
  private static final long LATELY_NANOS = 3_000_000_000L;

  private final List<Side> sides;
  private final List<EntryText> journal = new ArrayList<>();
  private final Set<String> standing = new HashSet<>();
  private final Set<String> announced = new HashSet<>();
  private BenchProgress folded = BenchProgress.EMPTY;
  private final Map<String, Place> over = new HashMap<>();
  private Optional<WeightAccepted> lastTaken = Optional.empty();
  private Mass mostOff = Mass.ofGrams("0.35");
  private long oldest;
  private long lastLook;
  private String inHand = "";

  private record Truth(long nanos, Mass mass) {}

  /** What is truly on one pan, and what its scale said of it. */
  private static final class Side {
    private final Pan pan;
    private final Deque<Reading> recent = new ArrayDeque<>();
    private final Deque<Double> leaning = new ArrayDeque<>();
    private Mass spilt = Mass.ZERO;
    private final Deque<Truth> truths = new ArrayDeque<>();
    private Mass wiped = Mass.ZERO;
    private Mass wipedUnder = Mass.ZERO;
    private boolean anyNumber;

    Side(Pan pan) {
      this.pan = pan;
    }

    void hear(Reading reading) {
      anyNumber = true;
      if (!recent.isEmpty()
          && reading.stamp().nanos() < recent.getLast().stamp().nanos()) recent.clear();
      recent.addLast(reading);
      while (recent.size() > 200) recent.removeFirst();
    }

    void none() {
      recent.clear();
      anyNumber = false;
    }

    void look(long nanos, long oldest) {
      leaning.addLast(pan.leaned());
      while (leaning.size() > LEANINGS) leaning.removeFirst();
      Mass gone = spilt.isMoreThan(pan.spilt()) ? spilt.minus(pan.spilt()) : Mass.ZERO;
      wiped = wiped.plus(gone);
      wipedUnder = pan.receiver().isEmpty() ? Mass.ZERO : wipedUnder.plus(gone);
      spilt = pan.spilt();
      if (!truths.isEmpty() && nanos < truths.getLast().nanos()) truths.clear();
      truths.addLast(new Truth(nanos, pan.truth()));
      while (truths.size() > 2 && nanos - truths.getFirst().nanos() > oldest) truths.removeFirst();
    }

    /** By what was shown with nothing on it: what was wiped up beside the pot since then no scale can tell. */
    void zeroFound() {
      wiped = wipedUnder;
    }

    boolean isLive(Stamp now) {
      return anyNumber
          && !recent.isEmpty()
          && now.nanos() - recent.getLast().stamp().nanos() <= NANOS_OLD;
    }
  }

  BenchPromises(List<Pan> pans) {
    sides = pans.stream().map(Side::new).toList();
  }

  /** How old the newest number may be: a scale that sends each conversion three or four times tells what was, not what is. */
  void numbersMayBeOld(long nanos) {
    oldest = nanos;
  }

  /** How far a recorded weight may be off the true one: two divisions and the scale's own error, unless set otherwise. */
  public void mayBeOff(String grams) {
    mostOff = Mass.ofGrams(grams);
  }

  /** What a program would know that has nothing but the journal. */
  BenchProgress fromJournal() {
    BenchProgress progress = BenchProgress.EMPTY;
    for (EntryText text : journal) progress = progress.after(read(text));
    return progress;
  }

  void check(GuidanceInput input, GuidanceStep step, Stamp now) {
    hear(input);
    look(now.nanos());
    for (GuidanceEvent event : step.events()) {
      EntryText text = EntryJson.text(event);
      journal.add(text);
      folded = folded.after(read(text));
      check(event, now);
    }
    if (!step.events().isEmpty()) foldedIsLive(step.next().progress());
    boolean aSecondOn = Math.abs(now.nanos() - lastLook) >= LOOK_NANOS;
    if (!step.events().isEmpty() || aSecondOn) {
      lastLook = now.nanos();
      words(Views.of(step.next(), now), now);
    }
  }

  private void hear(GuidanceInput input) {
    if (input instanceof ReadingArrived arrived) sides.get(arrived.scale()).hear(arrived.reading());
    else if (input instanceof NoWeightShown none) sides.get(none.scale()).none();
    else if (input instanceof LineChanged line && !line.answering())
      sides.get(line.scale()).none();
  }

  private void look(long nanos) {
    sides.forEach(side -> side.look(nanos, oldest));
  }

  private void check(GuidanceEvent event, Stamp now) {
    if (event instanceof ZeroFound found) sides.get(found.scale()).zeroFound();
    if (event instanceof BatchStarted started) inHand(started.code());
    else if (event instanceof PotTaken taken) inHand(taken.batch());
    else if (event instanceof PotTared tared)
      tared(sides.get(tared.scale()), tared.how(), tared.indication(), tared.tare(), now);
    else if (event instanceof CupTared tared)
      tared(sides.get(tared.scale()), tared.how(), tared.indication(), tared.tare(), now);
    else if (event instanceof VesselTared tared)
      tared(sides.get(tared.scale()), tared.how(), tared.indication(), tared.tare(), now);
    else if (event instanceof WeightAccepted weight) accepted(weight, now);
    else if (event instanceof OverPoured poured) announced(poured.place());
    else if (event instanceof OverGone
        || event instanceof RemedyChosen
        || event instanceof BatchScrapped
        || event instanceof BatchAbandoned) over.remove(inHand);
    else if (event instanceof AcceptanceReopened reopened) standing.remove(of(reopened.place()));
    else if (event instanceof Undone undone && undone.what().equals("weight-accepted"))
      lastTaken.ifPresent(this::takenBack);
  }

  private void announced(Place place) {
    announced.add(of(place));
    over.put(inHand, place);
  }

  /** With a weight that was over, the question comes back too. */
  private void takenBack(WeightAccepted weight) {
    standing.remove(of(weight.place()));
    if (weight.verdict() == Verdict.OVER) over.put(inHand, weight.place());
  }

  /** A batch begins or goes on; an over-pour in another pot waits there. */
  private void inHand(String code) {
    inHand = code;
  }

  private String of(Place place) {
    return inHand + " " + place;
  }

  private void tared(Side side, How how, Indication taken, Mass tare, Stamp now) {
    noOverPourWaits("a tare");
    if (how == How.BY_HAND) return;
    wasSettled(side, "a tare", taken, now);
    near(side, "a tare", tare);
  }

  private void accepted(WeightAccepted weight, Stamp now) {
    if (!standing.add(of(weight.place()))) broken(weight.place() + " was recorded twice");
    lastTaken = Optional.of(weight);
    if (!over.getOrDefault(inHand, weight.place()).equals(weight.place()))
      broken("something was taken while an over-pour waited for a choice");
    if (weight.verdict() == Verdict.OVER && !announced.contains(of(weight.place())))
      broken("more than its tolerance was taken and not announced: " + weight);
    if (weight.how() == How.BY_HAND) return;
    Side side = sides.get(weight.scale());
    wasSettled(side, weight.place().toString(), weight.indication(), now);
    near(side, weight.place() + ", gross", weight.gross());
  }

  private void noOverPourWaits(String what) {
    if (over.containsKey(inHand))
      broken(what + " was taken while an over-pour waited for a choice");
  }

  /**
   * Promise 1: from a live line, with its unit stated, one of the numbers of a rest by the clock; a key may take what stood just before.
   */
  private void wasSettled(Side side, String what, Indication taken, Stamp now) {
    Deque<Reading> recent = side.recent;
    if (recent.isEmpty()) broken(what + " was taken without a number");
    if (now.nanos() - recent.getLast().stamp().nanos() > NANOS_OLD)
      broken(what + " was taken from an old number");
    List<Reading> readings = new ArrayList<>(recent);
    for (int end = readings.size() - 1; end >= 0; end--) {
      if (now.nanos() - readings.get(end).stamp().nanos() > LATELY_NANOS) break;
      if (isOfRest(taken, readings, end)) return;
    }
    broken(what + " was taken from numbers that moved, had a gap, or no unit: " + readings);
  }

  /** Whether it was shown, with its unit, among the numbers within a division that end here, and they last long enough. */
  private static boolean isOfRest(Indication taken, List<Reading> readings, int end) {
    Reading last = readings.get(end);
    MassUnit unit = last.indication().unit().orElse(MassUnit.GRAM);
    Division step = Division.ofDecimals(last.indication().decimals(), unit);
    Mass low = last.mass();
    Mass high = last.mass();
    boolean shown = false;
    long lasted = 0;
    for (int i = end; i >= 0; i--) {
      Reading reading = readings.get(i);
      long later = readings.get(Math.min(i + 1, end)).stamp().nanos();
      if (later - reading.stamp().nanos() > NANOS_OLD) break;
      if (reading.mass().isLessThan(low)) low = reading.mass();
      if (reading.mass().isMoreThan(high)) high = reading.mass();
      if (step.stepsIn(high.minus(low)) > 1) break;
      shown |= reading.indication().equals(taken) && !reading.unitAssumed();
      lasted = last.stamp().nanos() - reading.stamp().nanos();
    }
    return shown && lasted >= STEADY_NANOS;
  }

  /**
   * Promise 3: what is recorded is what truly stands there, whatever was done to the scale's zero. What was spilt or laid beside the
   * pot may count or not, as the zero was found before or after; a few drops that are wiped up under a running stream no scale can tell
   * from less of the stream.
   */
  private void near(Side side, String what, Mass recorded) {
    if (side.truths.stream().noneMatch(truth -> isNear(side, recorded, truth.mass())))
      broken(what + " was recorded as " + recorded + ", and " + side.pan.truth() + " is there");
  }

  /** What was lifted since the reading was sent was there when it was read. */
  private boolean isNear(Side side, Mass recorded, Mass truth) {
    Mass most = truth.plus(leaned(side, DoubleStream::max)).plus(mostOff);
    Mass least = truth
        .plus(leaned(side, DoubleStream::min))
        .minus(side.pan.spilt())
        .minus(side.wiped)
        .minus(side.pan.of("spoon"))
        .minus(mostOff);
    return !recorded.isMoreThan(most) && !recorded.isLessThan(least);
  }

  /** The most or the least that hands and the like pressed while the reading was found steady. */
  private static Mass leaned(Side side, Function<DoubleStream, OptionalDouble> which) {
    double grams = which
        .apply(side.leaning.stream().mapToDouble(Double::doubleValue))
        .orElse(side.pan.leaned());
    return new Mass(Math.round(grams * 1e12));
  }

  /** Promise 6, and 5: the recorded parts sum to what is in the pot. */
  private void foldedIsLive(BenchProgress live) {
    if (!folded.equals(live))
      broken("the journal folds to another state:\n" + folded + "\nlives:\n" + live);
    live.batch().ifPresent(BenchPromises::sums);
    live.aside().forEach(BenchPromises::sums);
  }

  private static void sums(BatchProgress batch) {
    boolean byHand = batch.charge().weights().stream().anyMatch(w -> w.how() == How.BY_HAND);
    if (byHand || batch.charge().pot().isEmpty()) return;
    Mass inPot = batch.charge().gross().minus(batch.charge().tare());
    if (!inPot.equals(batch.charge().contents()))
      broken("the parts sum to " + batch.charge().contents() + ", the pot holds " + inPot);
  }

  /** Promise 7: every number is live or marked; and every word has its sentence. */
  private void words(BenchView view, Stamp now) {
    boolean live = sides.stream().anyMatch(side -> side.isLive(now));
    view.weighing().ifPresent(weighing -> {
      boolean claims = weighing.trust() == StationView.Trust.LIVE
          || weighing.trust() == StationView.Trust.MOVING;
      if (claims && !live) broken("a number is shown as live that is not");
      if (!live && !weighing.net().isEmpty()) broken("an old number is shown: " + weighing);
    });
    read(view.now());
    view.detail().ifPresent(BenchPromises::read);
    view.trouble().ifPresent(BenchPromises::read);
    view.countIn().ifPresent(count -> read(count.what()));
    view.undo().ifPresent(undo -> read(undo.what()));
    view.timer().ifPresent(timer -> read(timer.what()));
    view.confirm().ifPresent(key -> read(key.label()));
    view.choices().forEach(choice -> {
      read(choice.label());
      choice.cost().ifPresent(BenchPromises::read);
      choice.whyNot().ifPresent(BenchPromises::read);
    });
  }

  private static void read(Say say) {
    PageWords.ENGLISH.read(say);
  }

  private static GuidanceEvent read(EntryText text) {
    try {
      return EntryJson.event(new JournalEntry(1, "", text.kind(), text.body(), "", ""));
    } catch (JournalFailed e) {
      throw new Broken(e.getMessage());
    }
  }

  private static void broken(String message) {
    throw new Broken(message);
  }
}
