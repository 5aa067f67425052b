package candlebench.station.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.journal.JournalFailed.Trouble;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** What every journal has to keep, the one in memory and the one on disk alike. */
interface JournalContract {
  String WALL = "2026-11-25T09:30:00+01:00";

  Journal journal();

  /** The same journal closed and opened anew. */
  Journal reopened() throws JournalFailed;

  /** Makes every append fail for want of room. */
  void fill() throws Exception;

  void makeRoom() throws Exception;

  @Test
  default void an_empty_journal_has_a_head_of_zeros() {
    assertThat(journal().length()).isZero();
    assertThat(journal().head()).isEqualTo("0".repeat(64));
  }

  @Test
  default void entries_are_numbered_from_one_without_gaps_and_each_carries_the_hash_before()
      throws JournalFailed {
    List<JournalEntry> written = new ArrayList<>();
    written.addAll(journal().append(WALL, List.of(text("a", 1), text("b", 2))));
    written.addAll(journal().append(WALL, List.of(text("c", 3))));
    assertThat(written).extracting(JournalEntry::sequence).containsExactly(1L, 2L, 3L);
    assertThat(written).extracting(JournalEntry::kind).containsExactly("a", "b", "c");
    assertThat(written.get(0).previous()).isEqualTo("0".repeat(64));
    assertThat(written.get(1).previous()).isEqualTo(written.get(0).hash());
    assertThat(written.get(2).previous()).isEqualTo(written.get(1).hash());
    assertThat(journal().head()).isEqualTo(written.get(2).hash());
    assertThat(journal().length()).isEqualTo(3);
  }

  @Test
  default void what_was_appended_is_read_back_the_same_in_any_script() throws JournalFailed {
    EntryText text = new EntryText(
        "remark",
        "{\"words\":\"Früchtetee, 蜡烛, 🕯, \\\"quoted\\\", a\\nb, '; DROP TABLE entry; --\"}");
    List<JournalEntry> written = journal().append(WALL, List.of(text));
    assertThat(read(journal(), 1)).isEqualTo(written);
    assertThat(read(journal(), 1).get(0).body()).isEqualTo(text.body());
  }

  @Test
  default void reading_can_begin_at_any_entry() throws JournalFailed {
    for (int i = 1; i <= 6; i++) journal().append(WALL, List.of(text("step", i)));
    for (int from = 1; from <= 6; from++)
      assertThat(read(journal(), from))
          .hasSize(7 - from)
          .first()
          .extracting(JournalEntry::sequence)
          .isEqualTo((long) from);
    assertThat(read(journal(), 7)).isEmpty();
    assertThat(read(journal(), 99)).isEmpty();
  }

  @Test
  default void reading_can_end_at_any_entry() throws JournalFailed {
    for (int i = 1; i <= 6; i++) journal().append(WALL, List.of(text("step", i)));
    List<JournalEntry> some = new ArrayList<>();
    journal().read(3, 5, some::add);
    assertThat(some).extracting(JournalEntry::sequence).containsExactly(3L, 4L, 5L);
    journal().read(6, 5, some::add);
    journal().read(7, 9, some::add);
    assertThat(some).hasSize(3);
  }

  @Test
  default void appending_nothing_adds_nothing() throws JournalFailed {
    assertThat(journal().append(WALL, List.of())).isEmpty();
    assertThat(journal().length()).isZero();
  }

  @Test
  default void after_a_restart_the_chain_goes_on_where_it_ended() throws JournalFailed {
    List<JournalEntry> before = journal().append(WALL, List.of(text("a", 1), text("b", 2)));
    Journal again = reopened();
    assertThat(again.length()).isEqualTo(2);
    assertThat(again.head()).isEqualTo(before.get(1).hash());
    assertThat(again.append(WALL, List.of(text("c", 3))).get(0).previous())
        .isEqualTo(before.get(1).hash());
    assertThat(read(again, 1)).hasSize(3);
  }

  @Test
  default void a_full_disk_adds_nothing_says_so_and_can_be_tried_again() throws Exception {
    List<JournalEntry> before = journal().append(WALL, List.of(text("a", 1)));
    fill();
    List<EntryText> many = new ArrayList<>();
    for (int i = 0; i < 40; i++)
      many.add(new EntryText("pour", "{\"trace\":\"" + "7".repeat(2_000) + "\"}"));
    for (int attempt = 0; attempt < 2; attempt++)
      assertThatThrownBy(() -> journal().append(WALL, many))
          .isInstanceOfSatisfying(
              JournalFailed.class,
              failed ->
                  assertThat(failed.trouble()).as(failed.getMessage()).isEqualTo(Trouble.FULL));
    assertThat(journal().length()).isEqualTo(1);
    assertThat(journal().head()).isEqualTo(before.get(0).hash());
    assertThat(read(journal(), 1)).isEqualTo(before);
    makeRoom();
    assertThat(journal().append(WALL, many))
        .hasSize(40)
        .last()
        .extracting(JournalEntry::sequence)
        .isEqualTo(41L);
    assertThat(read(journal(), 1)).hasSize(41);
  }

  @Test
  default void another_thread_may_read_while_entries_are_added() throws Exception {
    journal().append(WALL, List.of(text("a", 1)));
    CompletableFuture<Integer> seen = CompletableFuture.supplyAsync(() -> {
      int most = 0;
      while (most < 200) most = Math.max(most, quietly(() -> read(journal(), 1)).size());
      return most;
    });
    for (int i = 2; i <= 200; i++) journal().append(WALL, List.of(text("step", i)));
    assertThat(seen.get(30, TimeUnit.SECONDS)).isEqualTo(200);
  }

  static EntryText text(String kind, int number) {
    return new EntryText(kind, "{\"number\":" + number + "}");
  }

  static List<JournalEntry> read(Journal journal, long from) throws JournalFailed {
    List<JournalEntry> entries = new ArrayList<>();
    journal.read(from, entries::add);
    return entries;
  }

  /** Runs what may fail where a test cannot throw; a failure is the test's. */
  static <T> T quietly(java.util.concurrent.Callable<T> work) {
    try {
      return work.call();
    } catch (Exception failed) {
      throw new AssertionError(failed);
    }
  }
}
