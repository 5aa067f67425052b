package candlebench.station.journal;

import static candlebench.station.journal.JournalContract.quietly;
import static candlebench.station.journal.JournalContract.read;
import static candlebench.station.journal.JournalContract.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.journal.CrashPoints.Point;
import candlebench.station.journal.JournalFailed.Trouble;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SqliteJournalTest implements JournalContract {
  @TempDir
  Path folder;

  private Path file;
  private SqliteJournal journal;

  @BeforeEach
  void open() throws JournalFailed {
    file = Purpose.RECORD.under(folder);
    journal = SqliteJournal.open(file, Purpose.RECORD);
  }

  @AfterEach
  void close() {
    journal.close();
  }

  @Override
  public Journal journal() {
    return journal;
  }

  @Override
  public Journal reopened() throws JournalFailed {
    journal.close();
    journal = SqliteJournal.open(file, Purpose.RECORD);
    return journal;
  }

  @Override
  public void fill() throws SQLException {
    journal.allowPages(1);
  }

  @Override
  public void makeRoom() throws SQLException {
    journal.allowPages(1_000_000);
  }

  @Test
  void a_full_disk_is_told_with_what_is_safe_and_what_to_do() throws Exception {
    fill();
    EntryText big = new EntryText("pour", "{\"trace\":\"" + "7".repeat(100_000) + "\"}");
    assertThatThrownBy(() -> journal.append(WALL, List.of(big)))
        .hasMessageContaining("disk is full")
        .hasMessageContaining("recorded before is safe")
        .hasMessageContaining("make room");
  }

  @Test
  void the_file_itself_refuses_a_change_and_an_erasure_and_an_entry_out_of_turn() throws Exception {
    journal.append(WALL, List.of(text("a", 1), text("b", 2)));
    try (Connection other = raw()) {
      assertRefused(other, "UPDATE entry SET body = '{}' WHERE sequence = 1", "never changed");
      assertRefused(other, "DELETE FROM entry WHERE sequence = 2", "never erased");
      assertRefused(other, "UPDATE purpose SET word = 'practice'", "keeps its purpose");
      assertRefused(other, "DELETE FROM purpose", "keeps its purpose");
      String zeros = "0".repeat(64);
      String row = "','k','{}','" + zeros + "','" + zeros + "')";
      assertRefused(other, "INSERT INTO entry VALUES (9,'" + WALL + row, "after the last one only");
      assertRefused(other, "INSERT INTO entry VALUES (3,'" + WALL + row, "after the last one only");
      assertRefused(
          other,
          "INSERT OR REPLACE INTO entry VALUES (2,'" + WALL + row,
          "after the last one only");
    }
    assertThat(read(journal, 1)).hasSize(2);
  }

  @Test
  void practice_is_never_opened_as_the_record_nor_the_record_as_practice() throws Exception {
    journal.close();
    assertFails(() -> SqliteJournal.open(file, Purpose.PRACTICE), Trouble.OTHER_PURPOSE);
    Path practice = Purpose.PRACTICE.under(folder);
    SqliteJournal.open(practice, Purpose.PRACTICE).close();
    assertFails(() -> SqliteJournal.open(practice, Purpose.RECORD), Trouble.OTHER_PURPOSE);
    assertThat(practice).isNotEqualTo(file);
  }

  @Test
  void a_second_bench_on_the_same_record_is_refused_and_the_first_goes_on() throws Exception {
    for (int attempt = 0; attempt < 2; attempt++)
      assertFails(() -> SqliteJournal.open(file, Purpose.RECORD), Trouble.HELD);
    journal.append(WALL, List.of(text("a", 1)));
    assertThat(reopened().length()).isEqualTo(1);
  }

  @Test
  void an_entry_slipped_in_behind_our_back_stops_us_and_stays() throws Exception {
    journal.append(WALL, List.of(text("a", 1)));
    JournalEntry foreign = new Chain(Purpose.RECORD).next(1, journal.head(), WALL, text("b", 2));
    try (Connection other = raw();
        Statement statement = other.createStatement()) {
      statement.executeUpdate("INSERT INTO entry VALUES (2,'" + WALL + "','b','" + foreign.body()
          + "','" + foreign.previous() + "','" + foreign.hash() + "')");
    }
    for (int attempt = 0; attempt < 2; attempt++)
      assertFails(() -> journal.append(WALL, List.of(text("c", 3))), Trouble.DAMAGED);
    assertThat(read(journal, 1)).hasSize(2);
  }

  @Test
  void a_file_that_is_no_record_is_left_as_it_is() throws Exception {
    Path words =
        Files.writeString(folder.resolve("words.db"), "Shopping: wicks, wax, labels. ".repeat(200));
    byte[] before = Files.readAllBytes(words);
    assertFails(() -> SqliteJournal.open(words, Purpose.RECORD), Trouble.NOT_A_RECORD);
    assertFails(() -> JournalFile.open(words), Trouble.NOT_A_RECORD);
    assertThat(Files.readAllBytes(words)).isEqualTo(before);

    Path foreign = folder.resolve("foreign.db");
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + foreign);
        Statement statement = other.createStatement()) {
      statement.executeUpdate("CREATE TABLE stock (item TEXT)");
    }
    before = Files.readAllBytes(foreign);
    assertFails(() -> SqliteJournal.open(foreign, Purpose.RECORD), Trouble.NOT_A_RECORD);
    assertThat(Files.readAllBytes(foreign)).isEqualTo(before);
  }

  @Test
  void a_record_of_a_newer_program_is_left_as_it_is() throws Exception {
    journal.close();
    try (Connection other = raw();
        Statement statement = other.createStatement()) {
      statement.executeUpdate("PRAGMA user_version = " + (JournalDatabase.MIGRATIONS.size() + 1));
    }
    assertFails(() -> SqliteJournal.open(file, Purpose.RECORD), Trouble.NEWER);
    assertFails(() -> JournalFile.open(file), Trouble.NEWER);
  }

  @Test
  void a_record_that_is_not_there_is_not_made_by_reading() {
    Path nowhere = folder.resolve("nowhere/record.db");
    assertFails(() -> JournalFile.open(nowhere), Trouble.NOT_A_RECORD);
    assertThat(nowhere.getParent()).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"with space", "50% & more?", "a#b;c'd", "wachs-größe-蜡", "mode=ro?x=1"})
  void any_name_of_a_folder_will_do(String name) throws Exception {
    Path odd = Purpose.RECORD.under(folder.resolve(name));
    try (SqliteJournal there = SqliteJournal.open(odd, Purpose.RECORD)) {
      there.append(WALL, List.of(text("a", 1)));
      there.copyTo(odd.resolveSibling("copy of it?.db"));
    }
    assertThat(odd).isRegularFile();
    try (JournalFile copy = JournalFile.open(odd.resolveSibling("copy of it?.db"))) {
      List<JournalEntry> entries = new ArrayList<>();
      copy.scan(1, entries::add);
      assertThat(entries).hasSize(1);
    }
  }

  @Test
  void a_copy_taken_while_the_bench_runs_is_a_whole_record_of_its_own() throws Exception {
    for (int i = 1; i <= 50; i++) journal.append(WALL, List.of(text("step", i)));
    Path copy = folder.resolve("copy.db");
    journal.copyTo(copy);
    List<JournalEntry> then = read(journal, 1);
    journal.append(WALL, List.of(text("later", 51)));
    assertFails(
        () -> {
          journal.copyTo(copy);
          return copy;
        },
        Trouble.DENIED);
    try (SqliteJournal second = SqliteJournal.open(copy, Purpose.RECORD)) {
      assertThat(read(second, 1)).isEqualTo(then);
      assertThat(second.append(WALL, List.of(text("other", 51)))).hasSize(1);
    }
    assertThat(folder.resolve("copy.db.part")).doesNotExist();
  }

  @Test
  void what_the_page_may_call_recorded_is_committed_first() throws Exception {
    List<String> order = new ArrayList<>();
    Path other = folder.resolve("order.db");
    try (SqliteJournal watched = SqliteJournal.open(
        other, Purpose.RECORD, point -> order.add(point + " " + onDisk(other)))) {
      watched.append(WALL, List.of(text("a", 1), text("b", 2)));
    }
    assertThat(order).containsExactly(Point.BEFORE_COMMIT + " 0", Point.AFTER_COMMIT + " 2");
  }

  @Test
  void what_a_disk_kept_without_confirming_it_is_found_after_a_restart_and_not_written_twice()
      throws Exception {
    journal.close();
    journal = SqliteJournal.open(file, Purpose.RECORD, point -> {
      if (point == Point.AFTER_COMMIT) SqliteJournalTest.<RuntimeException>lateError();
    });
    for (int attempt = 0; attempt < 3; attempt++)
      assertFails(() -> journal.append(WALL, List.of(text("a", 1))), Trouble.DISK);
    assertThatThrownBy(() -> journal.append(WALL, List.of(text("a", 1))))
        .hasMessageContaining("start it again");
    assertThat(journal.length()).isZero();
    assertThat(read(reopened(), 1))
        .extracting(JournalEntry::body)
        .containsExactly("{\"number\":1}");
  }

  @Test
  void every_version_of_the_schema_is_listed_once_and_in_order() throws Exception {
    Path schemas =
        Path.of(JournalDatabase.class.getResource("001-entries.sql").toURI()).getParent();
    try (var files = Files.list(schemas)) {
      assertThat(files
              .map(each -> each.getFileName().toString())
              .filter(each -> each.matches("\\d{3}-.*\\.sql"))
              .sorted())
          .containsExactlyElementsOf(JournalDatabase.MIGRATIONS);
    }
  }

  /** Throws what a disk throws that synced and then failed to say so. */
  @SuppressWarnings("unchecked")
  private static <E extends Throwable> void lateError() throws E {
    throw (E) new SQLException("the disk failed after the sync");
  }

  private static int onDisk(Path file) {
    return quietly(() -> {
      List<JournalEntry> entries = new ArrayList<>();
      try (JournalFile reading = JournalFile.open(file)) {
        reading.scan(1, entries::add);
      }
      return entries.size();
    });
  }

  private Connection raw() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  private static void assertRefused(Connection connection, String sql, String words) {
    assertThatThrownBy(() -> {
          try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
          }
        })
        .isInstanceOf(SQLException.class)
        .hasMessageContaining(words);
  }

  private static void assertFails(java.util.concurrent.Callable<?> work, Trouble trouble) {
    assertThatThrownBy(work::call)
        .isInstanceOfSatisfying(
            JournalFailed.class, failed -> assertThat(failed.trouble()).isEqualTo(trouble));
  }
}
