package candlebench.station.journal;

import static candlebench.station.journal.JournalContract.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.journal.JournalFailed.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DamagedJournalTest {
  private static final String WALL = JournalContract.WALL;

  @TempDir
  Path folder;

  @Test
  void a_changed_entry_is_reported_with_its_number_and_nothing_is_erased() throws Exception {
    Path file = folder.resolve("record.db");
    write(file, 20);
    behindOurBack(file, "DROP TRIGGER entry_is_never_changed");
    behindOurBack(file, "UPDATE entry SET body = '{\"number\":99}' WHERE sequence = 7");
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      List<JournalEntry> before = new ArrayList<>();
      assertThatThrownBy(() -> journal.read(1, before::add))
          .isInstanceOfSatisfying(
              JournalFailed.class,
              failed -> assertThat(failed.trouble()).isEqualTo(Trouble.DAMAGED))
          .hasMessageContaining("entry 7 was changed")
          .hasMessageContaining("nothing was erased");
      assertThat(before).hasSize(6);
    }
    assertThat(scan(file)).hasSize(20);
  }

  @Test
  void an_erased_entry_is_reported_with_its_number() throws Exception {
    Path file = folder.resolve("record.db");
    write(file, 20);
    behindOurBack(file, "DROP TRIGGER entry_is_never_erased");
    behindOurBack(file, "DELETE FROM entry WHERE sequence = 7");
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      assertThatThrownBy(() -> journal.read(1, entry -> {}))
          .hasMessageContaining("entry 7 is missing");
      assertThatThrownBy(() -> journal.read(8, entry -> {}))
          .hasMessageContaining("entry 7 is missing");
      List<JournalEntry> later = new ArrayList<>();
      journal.read(9, later::add);
      assertThat(later).hasSize(12);
    }
  }

  @Test
  void a_changed_last_entry_is_seen_on_opening() throws Exception {
    Path file = folder.resolve("record.db");
    write(file, 20);
    behindOurBack(file, "DROP TRIGGER entry_is_never_changed");
    behindOurBack(file, "UPDATE entry SET kind = 'other' WHERE sequence = 20");
    assertThatThrownBy(() -> SqliteJournal.open(file, Purpose.RECORD))
        .hasMessageContaining("entry 20 was changed");
    assertThat(scan(file)).hasSize(20);
  }

  /** A power cut may leave any beginning of the log on disk: what is found then is what had been appended up to some append. */
  @Test
  void a_log_cut_anywhere_gives_whole_appends_from_the_beginning() throws Exception {
    Path file = folder.resolve("record.db");
    List<JournalEntry> all = new ArrayList<>();
    List<Integer> ends = new ArrayList<>(List.of(0));
    byte[] database;
    byte[] log;
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      for (int i = 1; i <= 12; i++) {
        List<EntryText> texts = new ArrayList<>();
        for (int j = 0; j < 1 + i % 3; j++) texts.add(text("step", i * 10 + j));
        all.addAll(journal.append(WALL, texts));
        ends.add(all.size());
      }
      database = Files.readAllBytes(file);
      log = Files.readAllBytes(folder.resolve("record.db-wal"));
    }
    int most = -1;
    for (int length = 0; length <= log.length; length += 509) {
      List<JournalEntry> found = entries(database, Arrays.copyOf(log, length), "cut-" + length);
      assertThat(ends).contains(found.size());
      assertThat(found).isEqualTo(all.subList(0, found.size()));
      assertThat(found.size()).isGreaterThanOrEqualTo(most);
      most = found.size();
    }
    assertThat(entries(database, log, "whole")).isEqualTo(all);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void a_flipped_bit_is_never_taken_for_what_was_written(long seed) throws Exception {
    Path file = folder.resolve("record.db");
    List<JournalEntry> written = write(file, 300);
    byte[] sound = Files.readAllBytes(file);
    Random random = new Random(seed);
    int noticed = 0;
    for (int i = 0; i < 40; i++) {
      byte[] damaged = sound.clone();
      damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
      Path copy = Files.write(folder.resolve("flip-" + i + ".db"), damaged);
      List<JournalEntry> found = new ArrayList<>();
      try (JournalFile reading = JournalFile.open(copy)) {
        JournalAudit audit =
            JournalAudit.against(Purpose.RECORD, written.get(299).hash());
        reading.scan(1, entry -> {
          audit.accept(entry);
          found.add(entry);
        });
        if (audit.report().sound()) assertThat(found).isEqualTo(written);
        else noticed++;
      } catch (JournalFailed failed) {
        noticed++;
      }
      assertThat(Files.readAllBytes(copy)).isEqualTo(damaged);
    }
    assertThat(noticed).isPositive();
  }

  private List<JournalEntry> entries(byte[] database, byte[] log, String name) throws Exception {
    Path there = Files.createDirectory(folder.resolve(name));
    Path copy = Files.write(there.resolve("record.db"), database);
    Files.write(there.resolve("record.db-wal"), log);
    List<JournalEntry> found = new ArrayList<>();
    try (SqliteJournal journal = SqliteJournal.open(copy, Purpose.RECORD)) {
      journal.read(1, found::add);
      assertThat(journal.length()).isEqualTo(found.size());
    }
    return found;
  }

  private static List<JournalEntry> write(Path file, int count) throws JournalFailed {
    List<JournalEntry> written = new ArrayList<>();
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      List<EntryText> texts = new ArrayList<>();
      for (int i = 1; i <= count; i++) texts.add(text("step", i));
      written.addAll(journal.append(WALL, texts));
    }
    return written;
  }

  private static List<JournalEntry> scan(Path file) throws JournalFailed {
    List<JournalEntry> found = new ArrayList<>();
    try (JournalFile reading = JournalFile.open(file)) {
      reading.scan(1, found::add);
    }
    return found;
  }

  private static void behindOurBack(Path file, String sql) throws SQLException, IOException {
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = other.createStatement()) {
      statement.executeUpdate(sql);
    }
  }
}
