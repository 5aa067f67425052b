package candlebench.station.guidance;

import candlebench.shared.Mass;
import java.util.Map;

/** What the maker can say to the bench. */
public sealed interface MakerCommand {

  /** Begin a batch by a recipe known to the bench, with the lots in use by material. */
  record StartBatch(String recipe, int vessels, String person, Map<String, String> lots)
      implements MakerCommand {}

  /** The one large key: go on, as the step means it. */
  record GoOn() implements MakerCommand {}

  /** Take the last acceptance back. */
  record Undo() implements MakerCommand {}

  /** Take one of the offered ways; the reason is empty where none is asked for. */
  record Choose(String choice, String reason) implements MakerCommand {}

  /** A weight read off by eye, where no scale answers; marked so for ever. */
  record EnterByHand(Mass net, String reason) implements MakerCommand {}

  /** A temperature measured by the maker, in tenths of a degree Celsius. */
  record NoteTemperature(int tenthsCelsius) implements MakerCommand {}

  /** Some of the mix was spilt; the amount is zero where nobody knows. */
  record NoteSpill(Mass amount) implements MakerCommand {}

  /** Give the batch up, with a reason. What was recorded stays. */
  record Abandon(String reason) implements MakerCommand {}

  /** A delivery came in; the amount is zero where it is not known. */
  record ReceiveLot(String material, String lot, Mass amount, String note, String person)
      implements MakerCommand {}

  /** From now on the running batch takes a material from another lot. */
  record ChangeLot(String material, String lot) implements MakerCommand {}

  /** The mass that lies on a scale, by the scale's name, is known: write down what it shows. */
  record CheckScale(String scale, Mass known, String person) implements MakerCommand {}

  /** The pot that stands empty on a scale, by the scale's name, is called so: know it from now on. */
  record TeachPot(String pot, String scale, String person) implements MakerCommand {}

  /** A remark on a batch, by its code. */
  record Note(String batch, String text, String person) implements MakerCommand {}

  /**
   * Correct an entry of a batch, with a reason; what was written stays. Whoever sends this has looked the entry up: the bench knows
   * its batch, not every entry ever written.
   */
  record Correct(
      String batch,
      long entry,
      GuidanceEvent.Correctable what,
      String material,
      String was,
      String now,
      String reason,
      String person)
      implements MakerCommand {}
}
