package candlebench.station.journal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Goes through all entries of a journal and names each that is not as it was written. Pure: hand it the entries in the order in
 * which they stand, then ask for the report.
 *
 * <p>The chain has no key, so a cut tail or a record written anew from some entry on looks sound by itself. A head noted elsewhere, on
 * a sheet or an export, shows it: give it as {@code against}.
 */
public final class JournalAudit implements Consumer<JournalEntry> {

  /** The most findings named one by one; more are only counted. */
  public static final int MOST_NAMED = 200;

  /** The fewest digits of a head that are compared: 64 bits, too many to be hit by chance or by patience. */
  private static final int FEWEST_HEAD_DIGITS = 16;

  /** What was done to an entry. */
  public enum Kind {
    CHANGED,
    MISSING,
    MOVED,
    NOT_THE_NEXT
  }

  /** One thing that is not as it was written, from the first to the last entry it concerns, in words. */
  public record Finding(Kind kind, long first, long last, String words) {}

  /**
   * What became of the head noted elsewhere.
   *
   * @param found whether an entry still carries it
   * @param sequence that entry's number, or zero for a journal that was empty then
   */
  public record Noted(boolean found, long sequence, String words) {}

  /**
   * What an audit found.
   *
   * @param entries how many entries there were
   * @param head the hash of the last one, to be compared with a head noted elsewhere
   * @param findings the first {@link #MOST_NAMED}
   * @param unnamed how many more there were
   */
  public record Report(
      long entries, String head, List<Finding> findings, long unnamed, Optional<Noted> noted) {

    public boolean sound() {
      return findings.isEmpty() && noted.map(Noted::found).orElse(true);
    }
  }

  private final Chain chain;
  private final Optional<String> against;
  private final List<Finding> findings = new ArrayList<>();
  private final List<JournalEntry> changed = new ArrayList<>();
  private long unnamed;
  private long entries;
  private long last;
  private String lastHash = Chain.START;
  private boolean lastWasAsWritten = true;
  private Optional<Long> noted = Optional.empty();

  private JournalAudit(Purpose purpose, Optional<String> against) {
    this.chain = new Chain(purpose);
    this.against = against;
    if (against.isPresent() && Chain.START.startsWith(against.get())) noted = Optional.of(0L);
  }

  public static JournalAudit of(Purpose purpose) {
    return new JournalAudit(purpose, Optional.empty());
  }

  /**
   * An audit that also looks for a head noted earlier, whole or its first sixteen digits or more.
   *
   * @throws IllegalArgumentException that says how a head is written
   */
  public static JournalAudit against(Purpose purpose, String head) {
    String digits = head.strip().toLowerCase(Locale.ROOT);
    if (digits.length() < FEWEST_HEAD_DIGITS
        || digits.length() > 64
        || !digits.chars().allMatch(c -> Character.digit(c, 16) >= 0))
      throw new IllegalArgumentException("a head is " + FEWEST_HEAD_DIGITS
          + " to 64 digits 0-9 a-f, as printed on a sheet or an export, not '" + head + "'");
    return new JournalAudit(purpose, Optional.of(digits));
  }

  @Override
  public void accept(JournalEntry entry) {
    entries++;
    boolean next = entry.sequence() == last + 1;
    boolean asWritten = chain.hashAt(entry.sequence(), entry).equals(entry.hash());
    if (!next) gap(entry);
    if (!asWritten) changed(entry);
    else if (next && lastWasAsWritten && !entry.previous().equals(lastHash))
      find(Kind.NOT_THE_NEXT, last, entry.sequence(), follows(entry));
    lastWasAsWritten = asWritten;
    last = entry.sequence();
    lastHash = entry.hash();
    if (against.isPresent() && noted.isEmpty() && lastHash.startsWith(against.get()))
      noted = Optional.of(last);
  }

  public Report report() {
    List<Finding> all = new ArrayList<>(findings);
    for (JournalEntry entry : changed) all.add(changedOrMoved(entry));
    all.sort(Comparator.comparingLong(Finding::first));
    return new Report(entries, lastHash, List.copyOf(all), unnamed, against.map(this::words));
  }

  private void gap(JournalEntry entry) {
    if (entry.sequence() <= last) {
      find(
          Kind.MOVED,
          entry.sequence(),
          last,
          "entry " + entry.sequence() + " stands after entry " + last);
      return;
    }
    long first = last + 1;
    long end = entry.sequence() - 1;
    find(
        Kind.MISSING,
        first,
        end,
        first == end
            ? "entry " + first + " is missing"
            : "entries " + first + " to " + end + " are missing");
  }

  private void changed(JournalEntry entry) {
    if (changed.size() < MOST_NAMED) changed.add(entry);
    else unnamed++;
  }

  private String follows(JournalEntry entry) {
    if (last == 0)
      return "entry " + entry.sequence()
          + " says that another entry stood before it: the beginning is missing";
    return "entry " + entry.sequence() + " was not written after the entry " + last
        + " that stands before it: one of the two was put there later";
  }

  /** An entry whose hash does not fit its place may fit another one's, and was then moved, not changed. */
  private Finding changedOrMoved(JournalEntry entry) {
    for (JournalEntry other : changed) {
      if (other != entry && chain.hashAt(other.sequence(), entry).equals(entry.hash()))
        return new Finding(
            Kind.MOVED,
            entry.sequence(),
            entry.sequence(),
            "in place of entry " + entry.sequence() + " stands the one that was written as entry "
                + other.sequence());
    }
    return new Finding(
        Kind.CHANGED,
        entry.sequence(),
        entry.sequence(),
        "entry " + entry.sequence() + " was changed after it was written");
  }

  private Noted words(String head) {
    if (noted.isEmpty())
      return new Noted(
          false,
          0,
          "no entry carries the head " + head
              + ": entries were cut off the end, or the record was written anew, since it was noted");
    long at = noted.get();
    return new Noted(
        true,
        at,
        at == last
            ? "the head is that of the last entry, " + at
            : "the head is that of entry " + at + "; " + (last - at)
                + (last - at == 1 ? " entry was added since" : " entries were added since"));
  }

  private void find(Kind kind, long first, long lastOfIt, String words) {
    if (findings.size() < MOST_NAMED) findings.add(new Finding(kind, first, lastOfIt, words));
    else unnamed++;
  }
}
