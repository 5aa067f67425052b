package candlebench.station.link;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Weighed;
import candlebench.shared.Stability;
import java.util.Optional;

/**
 * Tells when someone pressed PRINT on the scale. There are two signs: on a line that is asked for each weight, one that nobody asked
 * for; and on one that sends by itself, the mark of a print where the format has one. A scale that sends all the time without a mark
 * prints what it sends anyway, and nothing tells.
 *
 * <p>Many scales print by themselves: once a load has come to rest, or every so many seconds. So a sign counts only where the load
 * had been at rest for a while, and no more once it came too soon twice: that scale prints by itself. One press may be several lines on the
 * wire and counts once. What is in doubt is no press: the large key on the page does the same.
 *
 * <p>Pure: time comes with every call. One thread at a time.
 */
final class PrintKey {

  /** A print by itself comes as soon as a load is at rest, by the scale's own rule; a hand comes later. */
  static final long AT_REST_NANOS = 1_500_000_000L;

  /** All lines of one print come within this. */
  static final long ONE_PRESS_NANOS = 1_000_000_000L;

  /** Signs that came too soon; one may be a maker who pressed while the pan still swung. */
  private static final int TOO_SOON_MOST = 1;

  /** Answers in a row that leave a question open: then that question was lost, and its answer will not come. */
  private static final int LOST_AFTER_ANSWERS = 20;

  private boolean asks;
  private int open;
  private int answersWhileOpen;
  private boolean marked;
  private Optional<String> shown = Optional.empty();
  private long restsSince;
  private int tooSoon;
  private boolean everPressed;
  private long pressedAt;

  /** The line was opened anew. */
  void opened() {
    asks = false;
    open = 0;
    answersWhileOpen = 0;
    marked = false;
    shown = Optional.empty();
    tooSoon = 0;
  }

  /** A question went out. */
  void asked() {
    asks = true;
    open++;
  }

  /**
   * Takes a frame in; whether it says that PRINT was pressed.
   *
   * @param mark whether the frame bears its format's mark of a print
   */
  boolean isPressed(Decoded decoded, boolean mark, long nanos) {
    boolean sign = isUnasked(decoded) || mark && !marked;
    marked = mark;
    boolean rested = decoded instanceof Weighed weighed
        && rests(weighed, nanos)
        && nanos - restsSince >= AT_REST_NANOS;
    if (!(decoded instanceof Weighed)) shown = Optional.empty();
    if (!sign || everPressed && nanos - pressedAt < ONE_PRESS_NANOS) return false;
    if (!rested) tooSoon++;
    if (!rested || tooSoon > TOO_SOON_MOST) return false;
    everPressed = true;
    pressedAt = nanos;
    return true;
  }

  /** Whether this is a weight for which no question is open. */
  private boolean isUnasked(Decoded decoded) {
    boolean answers = !(decoded instanceof Decoded.Acknowledged)
        && !(decoded instanceof Decoded.TareStated)
        && !(decoded instanceof Decoded.NotALoad);
    if (!asks || !answers) return false;
    if (open == 0) return decoded instanceof Weighed;
    open--;
    answersWhileOpen = open > 0 ? answersWhileOpen + 1 : 0;
    if (answersWhileOpen >= LOST_AFTER_ANSWERS) open = 0;
    return false;
  }

  /** Whether the load was at rest when the frame before came, and still is. */
  private boolean rests(Weighed weighed, long nanos) {
    String number = weighed.indication().number();
    boolean goesOn = shown.isPresent()
        && switch (weighed.stability()) {
          case STABLE -> true;
          case UNSTABLE -> false;
          case UNSTATED -> shown.get().equals(number);
        };
    shown = weighed.stability() == Stability.UNSTABLE ? Optional.empty() : Optional.of(number);
    if (!goesOn) restsSince = nanos;
    return goesOn;
  }
}
