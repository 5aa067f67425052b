package candlebench.station.journal;

import static candlebench.station.journal.JournalContract.WALL;
import static candlebench.station.journal.JournalContract.text;
import static candlebench.station.journal.Tampering.ENTRIES;
import static candlebench.station.journal.Tampering.forged;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import candlebench.station.journal.JournalAudit.Finding;
import candlebench.station.journal.JournalAudit.Noted;
import candlebench.station.journal.JournalAudit.Report;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every way we know to tamper with a record of twenty entries, and what an audit says of it: which entries, in which words, and whether
 * a head noted beforehand shows it. Where a row says {@link #NOTHING}, a chain without a key cannot show it by itself.
 */
class TamperedJournalTest {
  private static final List<String> NOTHING = List.of();

  /** The head that was noted is still that of the last entry. */
  private static final String LAST = "the head is that of the last entry, 20";

  private static final String GONE = "no entry carries the head";

  @TempDir
  static Path kept;

  private static Tampering sound;

  @TempDir
  Path folder;

  @BeforeAll
  static void write() throws Exception {
    sound = Tampering.of(kept.resolve("record.db"), Purpose.RECORD);
  }

  static Stream<Arguments> tamperings() {
    return Stream.of(
        way("nothing at all", hands -> {}, NOTHING, LAST),
        way("only the triggers dropped", Tampering::dropTriggers, NOTHING, LAST),
        way("the body changed", hands -> hands.set("body", "{}", 7), changed(7), LAST),
        way("the kind changed", hands -> hands.set("kind", "other", 7), changed(7), LAST),
        way("the time changed", hands -> hands.set("wall", "2026-11-24", 7), changed(7), LAST),
        way("the hash changed", hands -> hands.set("hash", "a".repeat(64), 7), changed(7), LAST),
        way(
            "the hash before changed",
            hands -> hands.set("previous", "a".repeat(64), 7),
            changed(7),
            LAST),
        way("the first changed", hands -> hands.set("body", "{}", 1), changed(1), LAST),
        way("the last changed", hands -> hands.set("body", "{}", 20), changed(20), LAST),
        way(
            "one written anew with a good hash",
            hands -> hands.put(7, forged(Purpose.RECORD, hands.entry(6), 99)),
            notTheNext(8),
            LAST),
        way(
            "the last written anew with a good hash",
            hands -> hands.put(20, forged(Purpose.RECORD, hands.entry(19), 99)),
            NOTHING,
            GONE),
        way("the first erased", hands -> hands.erase(1, 1), missing("entry 1 is missing"), LAST),
        way("one erased", hands -> hands.erase(7, 7), missing("entry 7 is missing"), LAST),
        way(
            "several erased",
            hands -> hands.erase(7, 9),
            missing("entries 7 to 9 are missing"),
            LAST),
        way("the last erased", hands -> hands.erase(20, 20), NOTHING, GONE),
        way("the tail cut", hands -> hands.erase(12, 20), NOTHING, GONE),
        way("all erased", hands -> hands.erase(1, 20), NOTHING, GONE),
        way(
            "two swapped",
            hands -> hands.fillWith(swapped(hands.written, 7, 15)),
            List.of(stands(7, 15), stands(15, 7)),
            LAST),
        way(
            "two neighbours swapped",
            hands -> hands.fillWith(swapped(hands.written, 7, 8)),
            List.of(stands(7, 8), stands(8, 7)),
            LAST),
        way(
            "one doubled in its place",
            hands -> hands.fillWith(with(hands.written, 8, hands.entry(7))),
            concat(changed(8), stand(9, 21)),
            "the head is that of the last entry, 21"),
        way(
            "one doubled at the end",
            hands -> hands.put(21, hands.entry(7)),
            changed(21),
            "the head is that of entry 20; 1 entry was added since"),
        way(
            "one slipped in with a good hash, the rest renumbered",
            hands ->
                hands.fillWith(with(hands.written, 8, forged(Purpose.RECORD, hands.entry(7), 99))),
            concat(changed(9), stand(10, 21)),
            "the head is that of the last entry, 21"),
        way(
            "one taken out, the rest renumbered",
            hands -> hands.fillWith(without(hands.written, 7)),
            concat(movedUp(7, 18), changed(19)),
            "the head is that of the last entry, 19"),
        way(
            "the last renumbered",
            hands -> {
              hands.dropTriggers();
              hands.sql("UPDATE entry SET sequence = 25 WHERE sequence = 20");
            },
            concat(missing("entries 20 to 24 are missing"), changed(25)),
            "the head is that of the last entry, 25"),
        way(
            "all renumbered",
            hands -> {
              hands.dropTriggers();
              hands.sql(
                  "UPDATE entry SET sequence = sequence + 1000",
                  "UPDATE entry SET sequence = sequence - 900");
            },
            concat(missing("entries 1 to 100 are missing"), changedAll(101, 120)),
            "the head is that of the last entry, 120"),
        way(
            "one added that was never said",
            hands -> hands.put(21, forged(Purpose.RECORD, hands.entry(20), 99)),
            NOTHING,
            "the head is that of entry 20; 1 entry was added since"),
        way(
            "one added after an earlier one",
            hands -> hands.put(
                21,
                new Chain(Purpose.RECORD).next(20, hands.entry(19).hash(), WALL, text("step", 99))),
            notTheNext(21),
            "the head is that of entry 20; 1 entry was added since"),
        way(
            "written anew from an entry on, with good hashes",
            hands -> hands.fillWith(hands.anewFrom(Purpose.RECORD, 7)),
            NOTHING,
            GONE),
        way(
            "the whole written anew, with good hashes",
            hands -> hands.fillWith(hands.anewFrom(Purpose.RECORD, 1)),
            NOTHING,
            GONE),
        way(
            "the end of another record put in place of its own",
            hands -> hands.fillWith(Stream.concat(
                    hands.written.stream().limit(10),
                    hands.anewFrom(Purpose.RECORD, 1).stream().skip(10))
                .toList()),
            notTheNext(11),
            GONE),
        way(
            "an entry of another record put in place of its own",
            hands -> hands.put(7, hands.anewFrom(Purpose.RECORD, 1).get(6)),
            List.of(
                "NOT_THE_NEXT entry 7 was not written after the entry 6 that stands before it: one of the two was put there later",
                notTheNext(8).get(0)),
            LAST),
        way(
            "entries of practice put at the end",
            hands -> hands.put(15, hands.anewFrom(Purpose.PRACTICE, 1).subList(14, ENTRIES)),
            changedAll(15, 20),
            GONE),
        way(
            "practice passed off as the record",
            hands -> {
              Tampering practice =
                  Tampering.of(hands.file.resolveSibling("practice.db"), Purpose.PRACTICE);
              practice.dropTriggers();
              practice.sql("UPDATE purpose SET word = 'record'");
              Files.delete(hands.file);
              Files.move(practice.file, hands.file);
            },
            changedAll(1, 20),
            GONE),
        way("the log deleted that held the last entries", Tampering::loseLog, NOTHING, GONE),
        way(
            "the file cut to a half",
            hands -> hands.cutFile(0.5),
            unreadable("is not as it was written; nothing was erased"),
            ""),
        way(
            "the file's beginning zeroed",
            hands -> hands.zero(0, 100),
            unreadable("is no record of this program"),
            ""),
        way("an empty file", hands -> hands.cutFile(0), unreadable("is no record"), ""),
        way(
            "the page of entries zeroed",
            hands -> hands.zero(hands.pageOfEntries(), 4096),
            unreadable("after entry 0: "),
            ""),
        way(
            "the schema's version raised",
            hands -> hands.sql("PRAGMA user_version = 99"),
            unreadable("was written by a newer program, and was left as it is"),
            ""),
        way(
            "the mark of the program taken off",
            hands -> hands.sql("PRAGMA application_id = 7"),
            unreadable("is no record of this program"),
            ""),
        way(
            "the purpose erased",
            hands -> {
              hands.dropTriggers();
              hands.sql("DELETE FROM purpose");
            },
            unreadable("is no record of this program"),
            ""));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tamperings")
  void an_audit_names_what_was_done(String name, Tampering.Way way, List<String> found, String head)
      throws Exception {
    Tampering hands = sound.copyTo(folder.resolve("record.db"));
    way.with(hands);
    String noted = hands.written.get(hands.written.size() - 1).hash();
    Said alone = audit(hands.file, JournalAudit.of(Purpose.RECORD));
    Said compared = audit(hands.file, JournalAudit.against(Purpose.RECORD, noted));
    if (found.size() == 1 && found.get(0).startsWith("UNREADABLE")) {
      assertThat(alone.unreadable()).contains(found.get(0).substring(11));
      assertThat(compared.unreadable()).contains(found.get(0).substring(11));
      return;
    }
    assertThat(alone.unreadable()).isEmpty();
    assertThat(alone.findings()).isEqualTo(found);
    assertThat(alone.report().sound()).isEqualTo(found.isEmpty());
    assertThat(compared.findings()).isEqualTo(found);
    assertThat(compared.report().noted().map(Noted::words).orElse("")).startsWith(head);
    assertThat(compared.report().sound()).isEqualTo(found.isEmpty() && !head.equals(GONE));
  }

  /** What an audit came to: its report, and why it could not go on, if it could not. */
  private record Said(Report report, String unreadable) {
    List<String> findings() {
      return report.findings().stream().map(Said::line).toList();
    }

    private static String line(Finding finding) {
      return finding.kind() + " " + finding.words();
    }
  }

  private static Said audit(Path file, JournalAudit audit) throws Exception {
    byte[] before = Files.readAllBytes(file);
    String unreadable = "";
    try (JournalFile reading = JournalFile.open(file)) {
      reading.scan(1, audit);
    } catch (JournalFailed refused) {
      unreadable = refused.getMessage();
    }
    assertThat(Files.readAllBytes(file)).as("an audit changes nothing").isEqualTo(before);
    return new Said(audit.report(), unreadable);
  }

  private static Arguments way(String name, Tampering.Way way, List<String> found, String head) {
    return arguments(name, way, found, head);
  }

  private static List<String> changed(int sequence) {
    return List.of("CHANGED entry " + sequence + " was changed after it was written");
  }

  private static List<String> changedAll(int first, int last) {
    return IntStream.rangeClosed(first, last)
        .mapToObj(sequence -> changed(sequence).get(0))
        .toList();
  }

  private static List<String> missing(String words) {
    return List.of("MISSING " + words);
  }

  private static List<String> notTheNext(int sequence) {
    return List.of("NOT_THE_NEXT entry " + sequence + " was not written after the entry "
        + (sequence - 1) + " that stands before it: one of the two was put there later");
  }

  private static String stands(int place, int writtenAs) {
    return "MOVED in place of entry " + place + " stands the one that was written as entry "
        + writtenAs;
  }

  /** Each stands one place later than it was written. */
  private static List<String> stand(int first, int last) {
    return IntStream.rangeClosed(first, last)
        .mapToObj(place -> stands(place, place - 1))
        .toList();
  }

  /** Each stands one place earlier than it was written. */
  private static List<String> movedUp(int first, int last) {
    return IntStream.rangeClosed(first, last)
        .mapToObj(place -> stands(place, place + 1))
        .toList();
  }

  private static List<String> unreadable(String words) {
    return List.of("UNREADABLE " + words);
  }

  private static List<String> concat(List<String> some, List<String> more) {
    return Stream.concat(some.stream(), more.stream()).toList();
  }

  private static List<JournalEntry> swapped(List<JournalEntry> written, int one, int other) {
    List<JournalEntry> entries = new ArrayList<>(written);
    Collections.swap(entries, one - 1, other - 1);
    return entries;
  }

  private static List<JournalEntry> with(
      List<JournalEntry> written, int sequence, JournalEntry more) {
    List<JournalEntry> entries = new ArrayList<>(written);
    entries.add(sequence - 1, more);
    return entries;
  }

  private static List<JournalEntry> without(List<JournalEntry> written, int sequence) {
    List<JournalEntry> entries = new ArrayList<>(written);
    entries.remove(sequence - 1);
    return entries;
  }
}
