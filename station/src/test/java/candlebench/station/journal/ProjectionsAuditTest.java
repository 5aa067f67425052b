package candlebench.station.journal;

import static candlebench.station.record.BatchScript.lots;
import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.record.BatchScript;
import candlebench.station.record.Recorded;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The lists beside a record are no record: what is done to them is seen by an audit, and gone once they are deleted. */
class ProjectionsAuditTest {
  private static final List<Recorded> ENTRIES =
      BatchScript.candles("20261125-1", 2, lots("W-1", "Q-31", "G-9", "K-2")).entries();

  @TempDir
  Path folder;

  private Path file;

  @BeforeEach
  void write() throws Exception {
    file = Purpose.RECORD.under(folder);
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD);
        Projections lists = Projections.open(Projections.beside(file), journal)) {
      for (Recorded each : ENTRIES.subList(0, 12)) append(journal, each);
      lists.catchUp();
      for (Recorded each : ENTRIES.subList(12, ENTRIES.size())) append(journal, each);
    }
  }

  private static void append(SqliteJournal journal, Recorded each) throws JournalFailed {
    journal.append(each.wall(), List.of(EntryJson.text(each.event())));
  }

  @Test
  void lists_that_only_lag_behind_the_record_are_right_and_so_are_none() throws Exception {
    byte[] before = Files.readAllBytes(Projections.beside(file));
    assertThat(ProjectionsAudit.of(file)).isEmpty();
    assertThat(Files.readAllBytes(Projections.beside(file))).isEqualTo(before);
    Files.delete(Projections.beside(file));
    assertThat(ProjectionsAudit.of(file)).isEmpty();
    assertThat(Projections.beside(file)).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "lot_use      | INSERT INTO lot_use VALUES ('Q-99', 'Quay Cedar (invented)', 77, 5, '1')",
        "lot_received | INSERT INTO lot_received VALUES (3, '', 'Q-31', 'Quay Cedar (invented)', 9, '', '')",
        "scale_check  | INSERT INTO scale_check VALUES (3, 'bench scale')",
        "later        | INSERT INTO later VALUES (3, 1)",
        "batch        | INSERT INTO batch SELECT 77, 78, 'x', recipe, person, started, ended, ending, 1, 1, 0 FROM batch",
        "checkpoint   | UPDATE checkpoint SET knowing = replace(knowing, '\"begun\":0', '\"begun\":7')"
      })
  void what_was_done_to_the_lists_is_named_and_gone_once_they_are_built_anew(
      String table, String sql) throws Exception {
    Path beside = Projections.beside(file);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + beside);
        Statement statement = connection.createStatement()) {
      assertThat(statement.executeUpdate(sql)).isPositive();
    }
    assertThat(ProjectionsAudit.of(file).orElseThrow())
        .contains("(" + table + ")")
        .contains("they are no record")
        .contains("delete that file");
    Files.delete(beside);
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD);
        Projections lists = Projections.open(beside, journal)) {
      lists.catchUp();
    }
    assertThat(ProjectionsAudit.of(file)).isEmpty();
  }

  @Test
  void a_checkpoint_of_a_head_the_record_never_had_is_built_anew_by_itself() throws Exception {
    Path beside = Projections.beside(file);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + beside);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("UPDATE checkpoint SET entry = 5, hash = '" + "a".repeat(64) + "'");
      statement.executeUpdate("DELETE FROM lot_use");
    }
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD);
        Projections lists = Projections.open(beside, journal)) {
      assertThat(lists.lotsOf("20261125-1")).hasSize(4);
    }
    assertThat(ProjectionsAudit.of(file)).isEmpty();
  }
}
