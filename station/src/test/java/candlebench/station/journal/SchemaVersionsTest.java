package candlebench.station.journal;

import static candlebench.station.journal.JournalContract.WALL;
import static candlebench.station.journal.JournalContract.read;
import static candlebench.station.journal.JournalContract.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Mass;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.journal.JournalAudit.Report;
import candlebench.station.journal.JournalFailed.Trouble;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A record written under the first schema, and what today's and a later program make of it. */
class SchemaVersionsTest {

  /** Noted when the record was written. */
  private static final String HEAD =
      "71770b66b3157d54dd39bb2e8ed7f3d942347357ca72dfb2e1b9575c5ed75e2f";

  private static final int ENTRIES = 28;

  /** What a program knows that came after today's. */
  private static final List<String> LATER = later("next/002-benches.sql");

  @TempDir
  Path folder;

  private Path file;

  @BeforeEach
  void lay_out_the_first_record() throws Exception {
    file = folder.resolve("record.db");
    try (InputStream in = getClass().getResourceAsStream("record-of-schema-1.sql");
        Connection connection = raw();
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    }
  }

  @Test
  void an_audit_of_the_first_record_finds_it_sound_and_leaves_it_as_it_is() throws Exception {
    byte[] before = Files.readAllBytes(file);
    Report report = audit();
    assertThat(report.findings()).isEmpty();
    assertThat(report.sound()).isTrue();
    assertThat(report.entries()).isEqualTo(ENTRIES);
    assertThat(report.head()).isEqualTo(HEAD);
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void every_entry_of_the_first_record_is_understood_and_would_be_written_again_with_nothing_lost()
      throws Exception {
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      for (JournalEntry entry : read(journal, 1)) {
        EntryText again = EntryJson.text(EntryJson.event(entry));
        assertThat(again.kind()).isEqualTo(entry.kind());
        assertThat(EntryJson.JSON.readTree(again.body()))
            .isEqualTo(EntryJson.JSON.readTree(entry.body()));
      }
    }
  }

  @Test
  void a_bench_goes_on_from_the_first_record_with_its_batch_lots_and_correction() throws Exception {
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD);
        Projections lists = Projections.open(Projections.beside(file), journal)) {
      BenchProgress bench = BenchProgress.EMPTY;
      for (JournalEntry entry : read(journal, 1)) bench = bench.after(EntryJson.event(entry));
      assertThat(bench.begun()).isEqualTo(1);
      assertThat(bench.running()).isEmpty();
      assertThat(lists.batchesOf("Q-32", "")).singleElement().satisfies(hit -> {
        assertThat(hit.batch().code()).isEqualTo("20261125-1");
        assertThat(hit.use().amount()).isEqualTo(Mass.ofGrams("18.2"));
        assertThat(hit.use().vessels()).containsExactly(1, 2);
      });
      assertThat(lists.record("20261125-1").orElseThrow().fills())
          .containsExactly(Mass.ofGrams("252"), Mass.ofGrams("252.4"));

      GuidanceEvent note = EntryJson.event(read(journal, ENTRIES - 1).get(0));
      journal.append(WALL, List.of(EntryJson.text(note)));
      assertThat(lists.record("20261125-1").orElseThrow().remarks()).hasSize(2);
    }
    assertThat(audit().sound()).isTrue();
    assertThat(audit().entries()).isEqualTo(ENTRIES + 1);
  }

  @Test
  void a_record_brought_up_to_date_has_the_schema_of_a_new_one() throws Exception {
    SqliteJournal.open(file, Purpose.RECORD).close();
    Path fresh = folder.resolve("fresh.db");
    SqliteJournal.open(fresh, Purpose.RECORD).close();
    assertThat(schema(file)).isEqualTo(schema(fresh));
    assertThat(version(file)).isEqualTo(JournalDatabase.MIGRATIONS.size());
  }

  @Test
  void a_later_program_takes_its_step_once_and_every_entry_stays_as_it_was() throws Exception {
    for (int opening = 0; opening < 2; opening++)
      JournalDatabase.forWriting(file, Purpose.RECORD, LATER).close();
    assertThat(version(file)).isEqualTo(LATER.size());
    assertThat(schema(file)).anyMatch(sql -> sql.contains("TABLE bench"));
    JournalAudit audit = JournalAudit.against(Purpose.RECORD, HEAD);
    try (Connection connection = raw();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(
            "SELECT sequence, wall, kind, body, previous, hash FROM entry ORDER BY sequence")) {
      while (row.next()) audit.accept(JournalFile.entry(row));
    }
    assertThat(audit.report().sound()).isTrue();
    assertThat(audit.report().entries()).isEqualTo(ENTRIES);
  }

  @Test
  void a_step_that_fails_half_way_leaves_the_record_as_it_was() throws Exception {
    List<String> before = schema(file);
    List<String> broken = later("next/003-broken.sql");
    assertThatThrownBy(() -> JournalDatabase.forWriting(file, Purpose.RECORD, broken))
        .isInstanceOf(JournalFailed.class);
    assertThat(schema(file)).isEqualTo(before);
    assertThat(version(file)).isEqualTo(1);
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      journal.append(WALL, List.of(text("a", 1)));
    }
    assertThat(audit().entries()).isEqualTo(ENTRIES + 1);
  }

  @Test
  void todays_program_leaves_a_later_programs_record_alone_and_says_so() throws Exception {
    JournalDatabase.forWriting(file, Purpose.RECORD, LATER).close();
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> SqliteJournal.open(file, Purpose.RECORD))
        .isInstanceOfSatisfying(
            JournalFailed.class, failed -> assertThat(failed.trouble()).isEqualTo(Trouble.NEWER))
        .hasMessageContaining(
            "was written by a newer program, and was left as it is: open it with that one");
    assertThatThrownBy(this::audit).hasMessageContaining("was written by a newer program");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  private static List<String> later(String step) {
    List<String> steps = new ArrayList<>(JournalDatabase.MIGRATIONS);
    steps.add(step);
    return List.copyOf(steps);
  }

  private Report audit() throws JournalFailed {
    JournalAudit audit = JournalAudit.against(Purpose.RECORD, HEAD);
    try (JournalFile reading = JournalFile.open(file)) {
      reading.scan(1, audit);
    }
    return audit.report();
  }

  private Connection raw() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  private static int version(Path file) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      return (int) JournalDatabase.number(connection, "PRAGMA user_version");
    }
  }

  private static List<String> schema(Path file) throws SQLException {
    List<String> all = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("SELECT sql FROM sqlite_schema WHERE sql <> '' ORDER BY name")) {
      while (row.next()) all.add(row.getString(1));
    }
    return all;
  }
}
