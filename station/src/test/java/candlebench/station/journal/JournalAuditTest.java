package candlebench.station.journal;

import static candlebench.station.journal.JournalContract.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.journal.JournalAudit.Finding;
import candlebench.station.journal.JournalAudit.Kind;
import candlebench.station.journal.JournalAudit.Report;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JournalAuditTest {
  private static final String WALL = JournalContract.WALL;
  private final List<JournalEntry> sound = written(10);

  @Test
  void the_hash_is_what_the_words_say_computed_here_by_hand() throws Exception {
    JournalEntry entry = new Chain(Purpose.RECORD)
        .next(0, Chain.START, "2026-11-25T09:30:00Z", new EntryText("go", "{}"));
    String bytes = "\0\0\0\6record" + "\0\0\0\0\0\0\0\1" + "\0\0\0\u00142026-11-25T09:30:00Z"
        + "\0\0\0\2go" + "\0\0\0\2{}" + "\0\0\0\u0040" + "0".repeat(64);
    byte[] hash =
        MessageDigest.getInstance("SHA-256").digest(bytes.getBytes(StandardCharsets.ISO_8859_1));
    assertThat(entry.hash()).isEqualTo(HexFormat.of().formatHex(hash));
  }

  @Test
  void no_two_entries_hash_alike_by_moving_bytes_from_field_to_field() {
    Chain chain = new Chain(Purpose.RECORD);
    JournalEntry one = new JournalEntry(1, "ab", "c", "{}", Chain.START, "");
    JournalEntry two = new JournalEntry(1, "a", "bc", "{}", Chain.START, "");
    JournalEntry three = new JournalEntry(1, "ab", "c{", "}", Chain.START, "");
    assertThat(List.of(chain.hashAt(1, one), chain.hashAt(1, two), chain.hashAt(1, three)))
        .doesNotHaveDuplicates();
  }

  @Test
  void an_untouched_journal_is_sound() {
    Report report = audit(sound);
    assertThat(report.sound()).isTrue();
    assertThat(report.findings()).isEmpty();
    assertThat(report.entries()).isEqualTo(10);
    assertThat(report.head()).isEqualTo(sound.get(9).hash());
    assertThat(audit(List.of()).sound()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 5, 10})
  void a_changed_entry_is_named(int sequence) {
    JournalEntry was = sound.get(sequence - 1);
    List<JournalEntry> all = new ArrayList<>(sound);
    List<JournalEntry> forgeries = List.of(
        new JournalEntry(
            was.sequence(), was.wall(), was.kind(), "{\"number\":99}", was.previous(), was.hash()),
        new JournalEntry(
            was.sequence(),
            "2026-11-26T09:30:00+01:00",
            was.kind(),
            was.body(),
            was.previous(),
            was.hash()),
        new JournalEntry(
            was.sequence(), was.wall(), "other", was.body(), was.previous(), was.hash()));
    for (JournalEntry forged : forgeries) {
      all.set(sequence - 1, forged);
      assertThat(audit(all).findings())
          .extracting(Finding::kind, Finding::first)
          .containsExactly(org.assertj.core.groups.Tuple.tuple(Kind.CHANGED, (long) sequence));
    }
  }

  @Test
  void an_entry_changed_with_its_hash_made_anew_no_longer_fits_the_next() {
    List<JournalEntry> all = new ArrayList<>(sound);
    all.set(4, new Chain(Purpose.RECORD).next(4, sound.get(3).hash(), WALL, text("step", 99)));
    assertThat(audit(all).findings()).singleElement().satisfies(finding -> {
      assertThat(finding.kind()).isEqualTo(Kind.NOT_THE_NEXT);
      assertThat(finding.first()).isEqualTo(5);
      assertThat(finding.last()).isEqualTo(6);
    });
  }

  @Test
  void missing_entries_are_named_from_to() {
    List<JournalEntry> all = new ArrayList<>(sound);
    all.subList(3, 6).clear();
    assertThat(audit(all).findings())
        .containsExactly(new Finding(Kind.MISSING, 4, 6, "entries 4 to 6 are missing"));
    List<JournalEntry> beheaded = sound.subList(1, 10);
    assertThat(audit(beheaded).findings())
        .containsExactly(new Finding(Kind.MISSING, 1, 1, "entry 1 is missing"));
  }

  @Test
  void entries_that_changed_places_are_named_as_moved() {
    List<JournalEntry> swapped = new ArrayList<>(sound);
    Collections.swap(swapped, 2, 6);
    assertThat(audit(swapped).findings())
        .extracting(Finding::kind)
        .contains(Kind.MISSING, Kind.MOVED);

    List<JournalEntry> renumbered = new ArrayList<>(sound);
    renumbered.set(2, numbered(sound.get(6), 3));
    renumbered.set(6, numbered(sound.get(2), 7));
    assertThat(audit(renumbered).findings())
        .extracting(Finding::kind, Finding::first)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(Kind.MOVED, 3L),
            org.assertj.core.groups.Tuple.tuple(Kind.MOVED, 7L));
    assertThat(audit(renumbered).findings().get(0).words())
        .isEqualTo("in place of entry 3 stands the one that was written as entry 7");
  }

  @Test
  void practice_passed_off_as_the_record_is_caught() {
    JournalAudit asPractice = JournalAudit.of(Purpose.PRACTICE);
    sound.forEach(asPractice);
    assertThat(asPractice.report().findings())
        .hasSize(10)
        .allMatch(finding -> finding.kind() == Kind.CHANGED);
  }

  @Test
  void a_head_noted_earlier_shows_a_cut_tail_and_a_record_written_anew() {
    String head = sound.get(7).hash();
    assertThat(against(sound, head).noted())
        .contains(new JournalAudit.Noted(
            true, 8, "the head is that of entry 8; 2 entries were added since"));
    assertThat(against(sound, head.substring(0, 16).toUpperCase(java.util.Locale.ROOT))
            .sound())
        .isTrue();
    assertThat(against(sound, Chain.START).sound()).isTrue();

    List<JournalEntry> cut = sound.subList(0, 7);
    assertThat(audit(cut).sound()).as("a cut tail looks sound by itself").isTrue();
    assertThat(against(cut, head).sound()).isFalse();

    List<JournalEntry> anew = new ArrayList<>(sound.subList(0, 5));
    Chain chain = new Chain(Purpose.RECORD);
    for (int i = 6; i <= 10; i++)
      anew.add(chain.next(i - 1, anew.get(i - 2).hash(), WALL, text("step", i == 6 ? 99 : i)));
    assertThat(audit(anew).sound())
        .as("a record written anew looks sound by itself")
        .isTrue();
    assertThat(against(anew, head).sound()).isFalse();
    assertThat(against(anew, head).noted().get().words()).contains("written anew");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "abc", "0123456789abcde", "0123456789abcdeg"})
  void a_head_that_is_none_is_refused_with_words(String head) {
    assertThatThrownBy(() -> JournalAudit.against(Purpose.RECORD, head))
        .hasMessageContaining("as printed on a sheet");
  }

  @Test
  void many_findings_are_counted_beyond_those_named() {
    JournalAudit audit = JournalAudit.of(Purpose.PRACTICE);
    written(250).forEach(audit);
    assertThat(audit.report().findings()).hasSize(JournalAudit.MOST_NAMED);
    assertThat(audit.report().unnamed()).isEqualTo(50);
  }

  static List<JournalEntry> written(int count) {
    Chain chain = new Chain(Purpose.RECORD);
    List<JournalEntry> entries = new ArrayList<>();
    String head = Chain.START;
    for (int i = 1; i <= count; i++) {
      JournalEntry entry = chain.next(i - 1, head, WALL, text("step", i));
      entries.add(entry);
      head = entry.hash();
    }
    return entries;
  }

  private static JournalEntry numbered(JournalEntry entry, long sequence) {
    return new JournalEntry(
        sequence, entry.wall(), entry.kind(), entry.body(), entry.previous(), entry.hash());
  }

  private static Report audit(List<JournalEntry> entries) {
    JournalAudit audit = JournalAudit.of(Purpose.RECORD);
    entries.forEach(audit);
    return audit.report();
  }

  private static Report against(List<JournalEntry> entries, String head) {
    JournalAudit audit = JournalAudit.against(Purpose.RECORD, head);
    entries.forEach(audit);
    return audit.report();
  }
}
