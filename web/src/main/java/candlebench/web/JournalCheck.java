package candlebench.web;

import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.ProjectionsAudit;
import candlebench.station.journal.Purpose;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A quick look at a record: whether it opens, whether its newest part is as written, its lists, and the clock against it. */
final class JournalCheck {

  /** So many of the newest entries are looked at; audit goes through all. */
  private static final long NEWEST = 20_000;

  /** Lists of a longer record take too long to be folded anew just for a look. */
  private static final long FOLDED_QUICKLY = 100_000;

  /** Clocks are set right by as much every day. */
  private static final Duration SLACK = Duration.ofMinutes(1);

  private JournalCheck() {}

  static List<Finding> of(Path data, Purpose purpose, Instant now) {
    Path file = purpose.under(data);
    String what = "The " + purpose.word();
    if (!Files.isRegularFile(file))
      return List.of(Finding.fine(what, "is not begun yet"), clock(now, Optional.empty()));
    List<Finding> findings = new ArrayList<>();
    try (JournalFile journal = JournalFile.open(file)) {
      JournalEntry last = journal.last();
      long from = Math.max(1, last.sequence() - NEWEST + 1);
      journal.read(from, Long.MAX_VALUE, entry -> {});
      findings.add(Finding.fine(
          what,
          last.sequence() + " entries, the newest " + (last.sequence() - from + 1)
              + " of them as written; candlebench audit goes through all"));
      findings.add(lists(file, last.sequence()));
      findings.add(clock(now, last.sequence() == 0 ? Optional.empty() : Optional.of(last)));
    } catch (JournalFailed damaged) {
      findings.add(Finding.trouble(
          what,
          damaged.getMessage(),
          "run candlebench audit; candlebench restore puts a copy back into an empty data folder"));
    }
    return findings;
  }

  private static Finding lists(Path file, long entries) {
    String what = "Its lists";
    if (entries > FOLDED_QUICKLY)
      return Finding.fine(what, "not compared, for the record is long; candlebench audit does");
    String next =
        "end the bench and delete the file ending in -projections beside the record: it is built anew";
    try {
      return ProjectionsAudit.of(file)
          .map(words -> Finding.trouble(what, words, next))
          .orElse(Finding.fine(what, "say what the record says"));
    } catch (JournalFailed unreadable) {
      return Finding.trouble(what, unreadable.getMessage(), next);
    }
  }

  private static Finding clock(Instant now, Optional<JournalEntry> last) {
    String what = "The clock";
    if (last.isEmpty())
      return Finding.fine(what, "says " + now + "; there is nothing to hold it against");
    String wall = last.get().wall();
    try {
      if (!OffsetDateTime.parse(wall).toInstant().isAfter(now.plus(SLACK)))
        return Finding.fine(what, "says " + now + ", after the last entry");
    } catch (DateTimeException unreadable) {
      return Finding.trouble(
          what,
          "cannot be held against the last entry, of '" + wall + "'",
          "run candlebench audit");
    }
    return Finding.trouble(
        what,
        "says " + now + ", and the last entry was written at " + wall,
        "set the computer's clock, and have it set by the network where it can be");
  }
}
