package candlebench.protocol;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Which format an unknown scale speaks, by bytes heard from it: which it is, how sure, what speaks against it; or which remain and how to
 * tell them apart; or that it is none of them, or that the speed is wrong.
 *
 * <p>A scale is never given a name that its lines do not bear out: what fits no layout stays unknown. Listen with 8 data bits and no
 * parity; 7 data bits with parity are noticed from the bytes.
 *
 * @param finding what was found
 * @param fitting the formats that fit, none if the scale stays unknown
 * @param ranked every format tried, the best first
 * @param bitSeven what bit 7 is on this line
 * @param words what was found, how sure that is and what to do next, for a person
 */
public record Recognition(
    Finding finding,
    List<Candidate> fitting,
    List<Candidate> ranked,
    BitSeven bitSeven,
    String words) {

  /** The kinds of finding, the best first. */
  public enum Finding {
    /** One format fits. */
    RECOGNISED,
    /** Two or more fit alike. */
    SEVERAL_REMAIN,
    /** Readable lines, but of no format we have. */
    UNKNOWN_FORMAT,
    /** Bytes that look random: the speed is another. */
    WRONG_SPEED,
    /** Too little was heard to say anything. */
    TOO_LITTLE
  }

  /** More bytes than this say no more. */
  public static final int MOST_BYTES = 16 * 1024;

  private static final int STX = 0x02;
  private static final int ETX = 0x03;
  private static final int FEWEST_BYTES = 8;
  private static final int SURE_WEIGHTS = 10;
  private static final int LIKELY_WEIGHTS = 3;
  private static final int READABLE_PERCENT = 90;

  private static final Comparator<Candidate> BEST_FIRST = Comparator.comparing(Candidate::fits)
      .thenComparing(Candidate::understands)
      .thenComparingInt(Candidate::written)
      .thenComparingInt(Candidate::weights)
      .thenComparingInt(Candidate::understoodBytes)
      .reversed()
      .thenComparingInt(Candidate::rarity);

  /** Tries every format on the bytes heard, up to {@link #MOST_BYTES} of them. */
  public static Recognition of(byte[] heard, List<ScaleFormat> formats) {
    int length = Math.min(heard.length, MOST_BYTES);
    BitSeven bitSeven = BitSeven.of(heard, length);
    List<Candidate> ranked = formats.stream()
        .map(format -> Candidate.of(format, heard, length))
        .sorted(BEST_FIRST)
        .toList();
    List<Candidate> fitting = ranked.stream().filter(Candidate::fits).toList();
    if (fitting.isEmpty()) fitting = onlyOneThatUnderstands(ranked);
    if (fitting.size() == 1)
      return new Recognition(
          Finding.RECOGNISED, fitting, ranked, bitSeven, recognised(fitting.get(0), bitSeven));
    if (fitting.size() > 1)
      return new Recognition(Finding.SEVERAL_REMAIN, fitting, ranked, bitSeven, several(fitting));
    if (length < FEWEST_BYTES)
      return new Recognition(Finding.TOO_LITTLE, fitting, ranked, bitSeven, TOO_LITTLE_WORDS);
    if (!isReadable(heard, length, bitSeven))
      return new Recognition(Finding.WRONG_SPEED, fitting, ranked, bitSeven, WRONG_SPEED_WORDS);
    return new Recognition(Finding.UNKNOWN_FORMAT, fitting, ranked, bitSeven, unknown(ranked));
  }

  /** A format that alone understands all lines, though its manuals lay them out otherwise; asked of several lines. */
  private static List<Candidate> onlyOneThatUnderstands(List<Candidate> ranked) {
    List<Candidate> understanding = ranked.stream()
        .filter(Candidate::understands)
        .filter(each -> each.weights() >= LIKELY_WEIGHTS && each.leftOverBytes() == 0)
        .toList();
    return understanding.size() == 1 ? understanding : List.of();
  }

  private static final String TOO_LITTLE_WORDS =
      "Next to nothing was heard. Press the print key, or set the scale to send continuously, and look at the cable.";

  private static final String WRONG_SPEED_WORDS =
      "What was heard is no text: the line's speed is another one, or its data bits. Listen at another speed.";

  private static String recognised(Candidate found, BitSeven bitSeven) {
    StringBuilder words = new StringBuilder(found.format().title())
        .append(": ")
        .append(sureness(found))
        .append(", from ")
        .append(counted(found.weights(), "weight"));
    if (found.written() < found.weights())
      words
          .append(", ")
          .append(found.weights() - found.written())
          .append(" of them not laid out as its manuals say");
    if (found.leftOverBytes() > 0)
      words
          .append("; against it: ")
          .append(counted(found.leftOverBytes(), "byte"))
          .append(" not understood");
    if (bitSeven != BitSeven.CLEAR && bitSeven != BitSeven.MIXED)
      words.append("; the scale sends 7 data bits: set the line to ").append(bitSeven.line());
    return words.append('.').toString();
  }

  /** Whether one format fits and listening longer would say no more. */
  public boolean isSure() {
    return finding == Finding.RECOGNISED && isSure(fitting.get(0));
  }

  private static boolean isSure(Candidate found) {
    boolean clean = found.written() == found.weights() && found.leftOverBytes() == 0;
    return clean && found.weights() >= SURE_WEIGHTS;
  }

  private static String sureness(Candidate found) {
    if (isSure(found)) return "sure";
    if (found.written() >= LIKELY_WEIGHTS) return "likely";
    return "possible";
  }

  private static String several(List<Candidate> fitting) {
    String ids =
        fitting.stream().map(each -> each.format().id()).collect(Collectors.joining(" or "));
    return ids + ": the lines heard are the same in each. To tell "
        + fitting.get(0).format().id() + " from " + fitting.get(1).format().id() + ", "
        + TellingApart.words(fitting.get(0), fitting.get(1)) + ".";
  }

  private static String unknown(List<Candidate> ranked) {
    String start = "Readable lines, but none of the formats we have.";
    if (ranked.isEmpty() || ranked.get(0).understoodBytes() == 0) return start;
    Candidate nearest = ranked.get(0);
    return start + " Nearest is " + nearest.format().id() + ", which reads "
        + counted(nearest.understoodBytes(), "byte") + " and leaves "
        + counted(nearest.leftOverBytes(), "byte") + ", "
        + nearest.written() + " of " + counted(nearest.weights(), "weight")
        + " laid out as its manuals say.";
  }

  private static String counted(int count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  /** Text of 7-bit characters in lines, whatever bit 7 is, as long as it is the same thing throughout. No scale sends CR CR. */
  private static boolean isReadable(byte[] heard, int length, BitSeven bitSeven) {
    if (bitSeven == BitSeven.MIXED) return false;
    int readable = 0;
    int ends = 0;
    int before = 0;
    for (int at = 0; at < length; at++) {
      int c = bitSeven == BitSeven.CLEAR ? heard[at] & 0xFF : heard[at] & 0x7F;
      if ((c == '\r' && before != '\r') || c == '\n' || c == ETX) ends++;
      else if (c >= 0x20 && c < 0x7F || c == STX) readable++;
      before = c;
    }
    return ends > 0 && 100L * (readable + ends) >= (long) READABLE_PERCENT * length;
  }
}
