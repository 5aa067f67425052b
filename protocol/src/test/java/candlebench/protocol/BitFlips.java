package candlebench.protocol;

import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.formats.ScaleFormats;
import java.util.Arrays;
import java.util.List;

/**
 * What becomes of a frame that says a weight when one of its bits is hit on the way: counted over every bit of every such frame of a
 * format's corpus.
 *
 * <p>Printed as a table by {@code mvn -q -B -ntp -pl protocol -am -Prun process-test-classes
 * -Drun.main=candlebench.protocol.BitFlips}.
 */
public record BitFlips(String format, int frames, int[] counts) {

  /** What may come of it, the harmless first. */
  enum Outcome {
    /** It is noticed. */
    REFUSED("refused"),
    /** It says the very same: the bit was parity, or blank. */
    SAME("same"),
    /** It says no weight: a status, an overload, a line of another kind. */
    NO_WEIGHT("no weight"),
    /** The same number and unit, but at rest or net where it was not. */
    OTHER_FLAG("flag"),
    OTHER_NUMBER("number"),
    OTHER_SIGN("sign"),
    OTHER_UNIT("unit");

    private final String words;

    Outcome(String words) {
      this.words = words;
    }

    /** Whether it is a weight that was never on the pan. */
    boolean isAnotherWeight() {
      return ordinal() >= OTHER_NUMBER.ordinal();
    }
  }

  public static BitFlips of(ScaleFormat format) {
    int[] counts = new int[Outcome.values().length];
    List<CorpusRow> rows = CorpusRow.of(format).stream()
        .filter(row -> row.decoded() instanceof Weighed)
        .toList();
    for (CorpusRow row : rows)
      for (int bit = 0; bit < 8 * row.bytes().length; bit++)
        counts[outcome(row, bit).ordinal()]++;
    return new BitFlips(format.id(), rows.size(), counts);
  }

  private static Outcome outcome(CorpusRow row, int bit) {
    byte[] hit = row.bytes().clone();
    hit[bit / 8] ^= (byte) (1 << bit % 8);
    Decoded said = row.format().decode(new Frame(0, hit, CorpusRow.STAMP));
    if (said.equals(row.decoded())) return Outcome.SAME;
    if (said instanceof Refused) return Outcome.REFUSED;
    if (!(said instanceof Weighed heard)) return Outcome.NO_WEIGHT;
    Weighed sent = (Weighed) row.decoded();
    if (!heard.indication().unit().equals(sent.indication().unit())) return Outcome.OTHER_UNIT;
    String before = sent.indication().number();
    String after = heard.indication().number();
    if (after.equals(before)) return Outcome.OTHER_FLAG;
    return after.startsWith("-") == before.startsWith("-")
        ? Outcome.OTHER_NUMBER
        : Outcome.OTHER_SIGN;
  }

  int count(Outcome outcome) {
    return counts[outcome.ordinal()];
  }

  int all() {
    return Arrays.stream(counts).sum();
  }

  int otherWeights() {
    return Arrays.stream(Outcome.values())
        .filter(Outcome::isAnotherWeight)
        .mapToInt(this::count)
        .sum();
  }

  @Override
  public String toString() {
    StringBuilder row =
        new StringBuilder(String.format("| %-14s | %6d | %6d |", format, frames, all()));
    for (Outcome outcome : Outcome.values()) row.append(String.format(" %9d |", count(outcome)));
    return row.append(String.format(" %13.1f %% |", 100.0 * otherWeights() / all()))
        .toString();
  }

  public static void main(String[] none) {
    StringBuilder head = new StringBuilder("| format         | frames |   bits |");
    for (Outcome outcome : Outcome.values()) head.append(String.format(" %9s |", outcome.words));
    System.out.println(head.append(" other weights   |"));
    ScaleFormats.all().stream().map(BitFlips::of).forEach(System.out::println);
  }
}
