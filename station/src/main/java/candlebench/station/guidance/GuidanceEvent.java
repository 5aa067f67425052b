package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.Stamp;
import candlebench.shared.Tolerance;
import candlebench.shared.Verdict;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.PotShare;
import candlebench.station.batch.ProcessWindows;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Remedy;
import candlebench.station.guidance.pour.Habits;
import candlebench.station.guidance.pour.PourKind;
import candlebench.station.guidance.pour.PourShown;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A fact to be written down. All that lasts is a fold of these, in order: each says what it changes, and nothing else changes it, so
 * that what was folded from the journal and what lives are the same.
 */
public sealed interface GuidanceEvent {

  Stamp at();

  /** What is known after this, given what was known before. */
  BenchProgress foldInto(BenchProgress before);

  /**
   * The maker said something that is written down with this: so that the same tap, sent again after a restart, counts once.
   *
   * @param command what kind of command, such as {@code go-on}
   */
  record CommandTaken(Stamp at, String commandId, String command) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }

  /** A batch begins, with its recipe as it is now. */
  record BatchStarted(
      Stamp at, String code, Recipe recipe, int vessels, String person, Map<String, String> lots)
      implements GuidanceEvent {

    public BatchStarted {
      lots = Map.copyOf(lots);
    }

    /** The same with a material taken from another lot. */
    BatchStarted takingFrom(String material, String lot) {
      Map<String, String> changed = new HashMap<>(lots);
      changed.put(material, lot);
      return new BatchStarted(at, code, recipe, vessels, person, changed);
    }

    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.begun(BatchProgress.begin(this));
    }
  }

  /** What is to be made is too much for one pot: several take turns, each with its share as a batch of its own. */
  record WorkDivided(
      Stamp at, String product, String person, Map<String, String> lots, List<PotShare> shares)
      implements GuidanceEvent {

    public WorkDivided {
      lots = Map.copyOf(lots);
      shares = List.copyOf(shares);
    }

    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.divided(Work.of(this));
    }
  }

  /** The batch that was just begun is one pot's share, numbered from zero. */
  record ShareBegun(Stamp at, String batch, int share, String pot) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.work(work -> work.begun(share, batch));
    }
  }

  /** How it is known which pot it is. */
  enum Told {
    BY_WEIGHT,
    BY_MAKER
  }

  /** From now on another pot is in hand; the one before is aside, with all that is known of it. */
  record PotTaken(Stamp at, String batch, Told told) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.taken(batch);
    }
  }

  /** No more shares are begun of what is made in several pots; those that run go on. */
  record WorkEnded(Stamp at, String reason) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.work(Work::end);
    }
  }

  /**
   * What the scale shows while nothing is on it, where that is not zero: its own tare or zero key was used.
   *
   * @param zero what is to be added to its numbers from now on
   */
  record ZeroFound(Stamp at, int scale, Indication indication, Mass zero) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.zero(scale, zero);
    }
  }

  /**
   * The empty pot stood settled: its own weight, kept here and never in the scale.
   *
   * @param pot its name, empty where it is none of the known pots
   */
  record PotTared(
      Stamp at,
      int scale,
      String scaleName,
      String pot,
      Indication indication,
      Basis basis,
      Mass tare,
      How how)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "pot-tared").tared(this));
    }
  }

  /** How a weight came to be taken. */
  enum How {
    SETTLED,
    BY_HAND,
    PRINT_KEY
  }

  /**
   * A weight was taken.
   *
   * @param lot the lot of the material, empty where none was named
   * @param target the exact target; {@code shownTarget} the same rounded to the scale's division
   * @param indication the number as the scale showed it, gross by its own reckoning
   * @param tare all that stood on the pan before, container included
   * @param gross all that stands on it now; {@code net} is the difference
   */
  record WeightAccepted(
      Stamp at,
      Place place,
      String name,
      String lot,
      Mass target,
      Mass shownTarget,
      Tolerance tolerance,
      Indication indication,
      Basis basis,
      Mass tare,
      Mass gross,
      Mass net,
      Verdict verdict,
      How how,
      String reason,
      int scale,
      String scaleName,
      String person,
      List<Trace.Point> trace)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "weight-accepted").accepted(this));
    }
  }

  /** The empty cup that a part is weighed in stood settled on a scale fine enough: its own weight. Parts are numbered from zero. */
  record CupTared(
      Stamp at,
      int part,
      int scale,
      String scaleName,
      Indication indication,
      Basis basis,
      Mass tare,
      How how)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "cup-tared").cup(this));
    }
  }

  /**
   * The cup was tipped into the pot.
   *
   * @param gross what it weighed afterwards; {@code stayed} how much of the part clung to it, by that
   * @param weighed whether it was weighed back, or no scale answered
   */
  record CupTipped(Stamp at, int part, int scale, Mass gross, Mass stayed, boolean weighed)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "cup-tipped").tipped(part, stayed));
    }
  }

  /** The vessels are set out, wicked and counted; said by a key, or by putting the pot on the scale. */
  record Prepared(Stamp at, boolean byKey) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "prepared").prepared());
    }
  }

  /** The pot stood on the scale again: what it and its contents weigh now. The contents take up the difference. */
  record PotReweighed(Stamp at, int scale, Indication indication, Mass was, Mass gross)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "pot-reweighed").reweighed(gross));
    }
  }

  /** The pot was not weighed again, for no scale answered. */
  record ReweighSkipped(Stamp at) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(BatchProgress::reweighSkipped);
    }
  }

  /** An empty vessel stood settled: its own weight. Vessels are numbered from zero. */
  record VesselTared(
      Stamp at,
      int vessel,
      int scale,
      String scaleName,
      Indication indication,
      Basis basis,
      Mass tare,
      How how)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "vessel-tared").vessel(this));
    }
  }

  /** The bottle a part comes out of stood settled on the scale: what it weighs before. Parts are numbered from zero. */
  record BottleWeighed(
      Stamp at,
      int part,
      int scale,
      String scaleName,
      Indication indication,
      Basis basis,
      Mass gross,
      How how)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.undoable(at, "bottle-weighed").bottle(this));
    }

    /** Another bottle, of which so much is wanted as was not poured out of this one. */
    BottleWeighed followedBy(Mass left, Mass other) {
      return new BottleWeighed(
          at, part, scale, scaleName, indication, basis, gross.plus(other.minus(left)), how);
    }
  }

  /** A filled vessel left the scale. */
  record VesselLifted(Stamp at, int vessel) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(BatchProgress::vesselLifted);
    }
  }

  /**
   * There is less mix than the vessels left would take.
   *
   * @param vessel the next one, from zero
   * @param left the mix that is left; {@code vessels} how many are to be filled, {@code even} what each could get
   */
  record MixCompared(Stamp at, int vessel, Mass left, int vessels, Mass even, MixStanding standing)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.said(standing));
    }
  }

  /** Some of the mix was spilt, about so much; zero where nobody knows. What is lost in this batch says nothing of other ones. */
  record MixSpilt(Stamp at, Mass amount) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.spilt(amount));
    }
  }

  /** The last so many vessels are not filled, so that the others can be. */
  record VesselsLeftOut(Stamp at, int vessels, Mass left) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.leftOut(vessels));
    }
  }

  /** What is waited for. */
  enum Wait {
    MELT,
    MIX
  }

  /** A wait began, to last so long. */
  record WaitStarted(Stamp at, Wait what, Duration time) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.waiting(this));
    }
  }

  /** A wait ended: its time was up, or the maker went on. */
  record WaitEnded(Stamp at, Wait what, boolean byKey) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> (byKey ? batch.undoable(at, "wait-ended") : batch).waited());
    }
  }

  /** More is there than its tolerance allows. Nothing goes on until a way is chosen or it is gone. */
  record OverPoured(
      Stamp at,
      Place place,
      String name,
      Mass target,
      Tolerance tolerance,
      Mass net,
      boolean settled)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.over(this));
    }
  }

  /** What was over is no longer: taken back, or something had only rested on the scale. */
  record OverGone(Stamp at, Place place, Mass net, String choice) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(BatchProgress::overGone);
    }
  }

  /**
   * A way on after an over-pour was chosen.
   *
   * @param more what is to be added, by part number; {@code takeOut} what is to be taken out
   * @param total what the batch will weigh then; {@code reached} the share of what was over
   */
  record RemedyChosen(
      Stamp at,
      Place place,
      Remedy.Kind remedy,
      String reason,
      Mass over,
      Map<Integer, Mass> more,
      Mass takeOut,
      Mass total,
      Fraction reached)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.remedied(this));
    }
  }

  /** A remedy was carried out; where the part that was over lies now against what is really in the pot. */
  record CureChecked(Stamp at, String name, Mass wanted, Mass there, Verdict verdict)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }

  /** What the bench cannot know and asks. */
  enum Question {
    /** Another load than before stands on the scale. */
    PAN_DIFFERS,
    /** The scale's own tare or zero was used with something on it. */
    ZERO_SHIFTED
  }

  /** The bench asked. */
  record Asked(Stamp at, Question question, int scale, Mass expected, Mass found)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.askedAt(expected));
    }
  }

  /**
   * The maker answered: what stands there is right.
   *
   * @param gross what stands there
   * @param less whether that is less than stood there before the part at hand, so that some of the contents is gone
   */
  record Answered(Stamp at, Question question, String choice, Mass gross, boolean less)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(
          batch -> (less ? batch.rebased(gross) : batch.otherBottle(gross)).left(gross));
    }
  }

  /** A temperature measured by the maker, in tenths of a degree Celsius. */
  record TemperatureNoted(Stamp at, int tenthsCelsius) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }

  /** That temperature lies outside the window for what is done now. It is written down, and nothing is forbidden. */
  record TemperatureOutside(
      Stamp at, int tenthsCelsius, ProcessWindows.Process process, int fromTenths, int toTenths)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }

  /** What stood at rest on the pan within a part that is not done yet, so that it can be found again after a restart. */
  record PanNoted(Stamp at, int scale, Mass gross) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.left(gross));
    }
  }

  /** A pour showed something of how its maker pours; {@code habits} is what is known of it now. */
  record HabitsLearnt(
      Stamp at, int scale, String person, PourKind kind, PourShown shown, Habits habits)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.learnt(this);
    }
  }

  /** The maker took the last step back. */
  record Undone(Stamp at, String what) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(BatchProgress::takenBack);
    }
  }

  /** A weight just taken moved by itself; it is weighed again. */
  record AcceptanceReopened(Stamp at, Place place, Mass was, Mass now) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(BatchProgress::reopened);
    }
  }

  /** The last step is done. */
  record BatchDone(Stamp at) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.ended(BatchProgress.End.DONE));
    }
  }

  /** The batch was scrapped after an over-pour. */
  record BatchScrapped(Stamp at, String reason) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.ended(BatchProgress.End.SCRAPPED));
    }
  }

  /** The batch was given up. What was recorded stays. */
  record BatchAbandoned(Stamp at, String reason) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.batch(batch -> batch.ended(BatchProgress.End.ABANDONED));
    }
  }

  /**
   * A delivery of a material came in.
   *
   * @param amount how much, or zero where nobody said
   * @param note the supplier or whatever else is worth keeping; may be empty
   */
  record LotReceived(Stamp at, String material, String lot, Mass amount, String note, String person)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }

  /**
   * From here on a material is taken from another lot, in every pot.
   *
   * @param from the lot in use so far, empty where none was named
   * @param poured how much of that material, then being weighed, was already in from the lot before; zero or less where it was not
   *     being weighed
   */
  record LotChanged(Stamp at, String material, String from, String to, Mass poured, String person)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before
          .batch(batch -> batch.takingFrom(material, to))
          .aside(batch -> batch.takingFrom(material, to))
          .work(work -> work.takingFrom(material, to));
    }
  }

  /**
   * A scale was tried with a mass that is known, alone on it, between two batches.
   *
   * @param known what the mass weighs; {@code shown} what the scale made of it, by its indication and nothing else
   */
  record ScaleChecked(
      Stamp at,
      int scale,
      String scaleName,
      Mass known,
      Indication indication,
      Mass shown,
      String person)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }

  /** A pot was weighed empty, alone on a scale and between two batches: from now on it is known by this weight. */
  record PotTaught(
      Stamp at,
      int scale,
      String scaleName,
      String pot,
      Indication indication,
      Mass empty,
      String person)
      implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before.taught(pot, empty);
    }
  }

  /** A remark on a batch, running or done. */
  record Noted(Stamp at, String batch, String text, String person) implements GuidanceEvent {
    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }

  /** What of an entry can be corrected. */
  enum Correctable {
    LOT,
    WEIGHT,
    NOTE
  }

  /**
   * An entry was found wrong. It stays as it was written; this stands beside it for ever.
   *
   * @param batch the code of the batch it belongs to
   * @param entry the number of the entry in the journal
   * @param material whose lot is corrected, where the entry is a batch's start and names several; empty elsewhere
   * @param was what it said, {@code now} what it should have said; a weight is net grams as decimal text
   */
  record Corrected(
      Stamp at,
      String batch,
      long entry,
      Correctable what,
      String material,
      String was,
      String now,
      String reason,
      String person)
      implements GuidanceEvent {

    public Corrected {
      if (what == Correctable.WEIGHT && Mass.ofGrams(now).isNegative())
        throw new IllegalArgumentException("a weight is corrected to zero or more, not " + now);
    }

    @Override
    public BenchProgress foldInto(BenchProgress before) {
      return before;
    }
  }
}
