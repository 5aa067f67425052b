package candlebench.simulator;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a maker sees and hears at one moment. Whoever runs a maker fills it in, from a page's text, from a view, from sound, or from the
 * bare number on the scale; the maker acts on nothing else.
 *
 * @param told what the maker is told to do
 * @param stopIn how long until the moment to turn the wrist back, where it can be foreseen
 * @param drops how many drops are still wanted, where told to go by drops
 * @param toGo the grams still missing as far as the maker can see: on the page, or the target less the number on the scale; below
 *     zero when over
 */
public record Perceived(Told told, Optional<Duration> stopIn, int drops, OptionalDouble toGo) {

  /** What a maker can be told. */
  public enum Told {
    /** Nothing: go on as before. */
    NOTHING,
    PLACE,
    LIFT,
    POUR,
    SLOW,
    STOP,
    DROPS,
    PIECES,
    HOLD_STILL,
    OVER,
    WAIT;

    /** Whether a stream that runs is to be ended. */
    boolean endsPour() {
      return switch (this) {
        case NOTHING, POUR, SLOW -> false;
        case PLACE, LIFT, STOP, DROPS, PIECES, HOLD_STILL, OVER, WAIT -> true;
      };
    }
  }

  public static Perceived told(Told told) {
    return new Perceived(told, Optional.empty(), 0, OptionalDouble.empty());
  }

  /** A pour whose end is foreseen. */
  public static Perceived stopIn(Told told, Duration stopIn) {
    return new Perceived(told, Optional.of(stopIn), 0, OptionalDouble.empty());
  }

  public static Perceived drops(int count) {
    return new Perceived(Told.DROPS, Optional.empty(), count, OptionalDouble.empty());
  }

  /** A bare number, and no one to say what it means. */
  public static Perceived number(double gramsToGo) {
    return told(Told.NOTHING).withToGo(gramsToGo);
  }

  public Perceived withToGo(double grams) {
    return new Perceived(told, stopIn, drops, OptionalDouble.of(grams));
  }
}
