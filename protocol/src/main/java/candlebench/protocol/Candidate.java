package candlebench.protocol;

import static candlebench.shared.MassUnit.GRAM;

import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.WireLayout.Shown;
import candlebench.shared.MassUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How well one format explains what was heard.
 *
 * <p>To understand a line is weak evidence, since some formats put up with much. That a layout of the format writes the line just so,
 * byte for byte, is strong.
 *
 * @param format the format tried
 * @param layout the layout that writes most of the lines, or empty
 * @param weights lines that state a weight, a tare, or that the weight is out of range
 * @param written how many of these the layout writes just so
 * @param understoodBytes bytes in lines that were understood
 * @param leftOverBytes bytes in lines that were refused, but for the pieces of lines at both ends
 * @param lastWeighed the last live weight, if any
 */
public record Candidate(
    ScaleFormat format,
    String layout,
    int weights,
    int written,
    int understoodBytes,
    int leftOverBytes,
    Optional<Weighed> lastWeighed) {
  private static final int FITTING_PERCENT = 90;
  private static final int MOST_DECIMALS = 5;
  private static final int HIGHEST_DEVICE = 99;

  /** Tries a format on bytes heard. */
  static Candidate of(ScaleFormat format, byte[] heard, int length) {
    List<Frame> frames = new ArrayList<>();
    Framer framer = format.newFramer();
    framer.feed(heard, length, Framer.NEVER, frames::add);
    int whole = frames.size();
    framer.rest().ifPresent(frames::add);

    int[] writtenBy = new int[format.layouts().size()];
    int weights = 0;
    int understood = 0;
    int leftOver = 0;
    int device = 0;
    boolean deviceSought = false;
    Optional<Weighed> last = Optional.empty();
    for (int at = 0; at < frames.size(); at++) {
      Frame frame = frames.get(at);
      Decoded said = format.decode(frame);
      boolean mayBeAPiece = at == 0 && frames.size() > 1 || at >= whole;
      if (said instanceof Refused) {
        if (!mayBeAPiece) leftOver += frame.length();
        continue;
      }
      understood += frame.length();
      if (!isWeight(said)) continue;
      boolean written = countWriters(format.layouts(), said, frame, device, writtenBy);
      if (!written && !deviceSought) {
        deviceSought = true;
        device = deviceOf(format.layouts(), said, frame);
        written = device > 0 && countWriters(format.layouts(), said, frame, device, writtenBy);
      }
      if (written || !mayBeAPiece) weights++;
      if (said instanceof Weighed weighed) last = Optional.of(weighed);
    }
    int best = most(writtenBy);
    String layout = writtenBy[best] == 0 ? "" : format.layouts().get(best).name();
    return new Candidate(format, layout, weights, writtenBy[best], understood, leftOver, last);
  }

  private static boolean countWriters(
      List<WireLayout> layouts, Decoded said, Frame frame, int device, int[] writtenBy) {
    boolean any = false;
    for (int at = 0; at < writtenBy.length; at++) {
      boolean writes = writes(layouts.get(at), said, frame, device);
      if (writes) writtenBy[at]++;
      any |= writes;
    }
    return any;
  }

  private static boolean isWeight(Decoded said) {
    return said instanceof Weighed || said instanceof TareStated || said instanceof OutOfRange;
  }

  /** Whether the layout says this just so, parity and terminator aside. What an overload looks like depends on what is shown. */
  private static boolean writes(WireLayout layout, Decoded said, Frame frame, int device) {
    int address = address(frame, device);
    if (!(said instanceof OutOfRange))
      return writes(layout, said, new Shown(GRAM, 0, address), frame);
    for (MassUnit unit : MassUnit.values())
      for (int decimals = 0; decimals <= MOST_DECIMALS; decimals++)
        if (writes(layout, said, new Shown(unit, decimals, address), frame)) return true;
    return false;
  }

  private static boolean writes(WireLayout layout, Decoded said, Shown shown, Frame frame) {
    return layout.encode(said, shown).filter(bytes -> sameText(bytes, frame)).isPresent();
  }

  /** The two digits behind {@code @}, which begin a line on a shared wire; else the number of the device that was found in a frame. */
  private static int address(Frame frame, int device) {
    boolean addressed = frame.length() > 3 && frame.at7(0) == '@';
    if (!addressed) return device;
    return Math.max(0, (frame.at7(1) - '0') * 10 + frame.at7(2) - '0');
  }

  /** The number of the device with which some layout writes the frame just so, or 0. A scale does not change its number. */
  private static int deviceOf(List<WireLayout> layouts, Decoded said, Frame frame) {
    for (int device = 1; device <= HIGHEST_DEVICE; device++)
      for (WireLayout layout : layouts) if (writes(layout, said, frame, device)) return device;
    return 0;
  }

  private static boolean sameText(byte[] bytes, Frame frame) {
    int length = withoutEnd(bytes);
    if (length != withoutEnd(frame.bytes())) return false;
    for (int at = 0; at < length; at++) if ((bytes[at] & 0x7F) != frame.at7(at)) return false;
    return true;
  }

  private static int withoutEnd(byte[] bytes) {
    int end = bytes.length;
    while (end > 0 && ((bytes[end - 1] & 0x7F) == '\r' || (bytes[end - 1] & 0x7F) == '\n')) end--;
    return end;
  }

  private static int most(int[] counts) {
    int best = 0;
    for (int at = 1; at < counts.length; at++) if (counts[at] > counts[best]) best = at;
    return best;
  }

  /** How unusual the layout is within its format: its place in the list of layouts, or behind all of them where there is none. */
  int rarity() {
    List<WireLayout> layouts = format.layouts();
    for (int at = 0; at < layouts.size(); at++)
      if (layouts.get(at).name().equals(layout)) return at;
    return layouts.size();
  }

  /** Whether nearly all lines are understood. */
  boolean understands() {
    return weights > 0
        && 100L * understoodBytes >= (long) FITTING_PERCENT * (understoodBytes + leftOverBytes);
  }

  /** Whether nearly all lines are understood, and nearly all weights are written just so. */
  public boolean fits() {
    return understands() && 100L * written >= (long) FITTING_PERCENT * weights;
  }
}
