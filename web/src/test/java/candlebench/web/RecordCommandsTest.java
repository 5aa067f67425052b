package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.web.Program.Outcome;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program on a record that a bench has open: written out, copied, put back. */
@Tag("packaged")
class RecordCommandsTest {

  @TempDir
  Path folder;

  private SqliteJournal journal;

  @BeforeEach
  void write() throws Exception {
    journal = SqliteJournal.open(Purpose.RECORD.under(folder), Purpose.RECORD);
    new RecordScenes(journal).three("20261125-1");
  }

  @AfterEach
  void close() {
    journal.close();
  }

  private Outcome run(String command, Path data, String... more) throws Exception {
    String[] all = new String[more.length + 3];
    all[0] = command;
    all[1] = "--data";
    all[2] = data.toString();
    System.arraycopy(more, 0, all, 3, more.length);
    return Program.run(all);
  }

  @Test
  void the_record_is_written_out_in_both_decimal_conventions_and_as_lines() throws Exception {
    Outcome point = run("export", folder, "--as", "csv");
    assertThat(point.code()).isZero();
    assertThat(point.out()).contains(",56.1,").contains(journal.head());
    assertThat(run("export", folder, "--as", "csv-comma").out()).contains(";56,1;");
    assertThat(run("export", folder).out().lines()).hasSize((int) journal.length() + 1);
  }

  @Test
  void a_copy_is_audited_restored_elsewhere_and_goes_on_there() throws Exception {
    Path copy = folder.resolve("copy.db");
    Outcome made = run("backup", folder, copy.toString());
    assertThat(made.code()).as(made.err()).isZero();
    assertThat(made.out()).contains("sound").contains("head " + journal.head());

    Path other = folder.resolve("other bench");
    Outcome restored =
        run("restore", other, "--against", journal.head().substring(0, 20), copy.toString());
    assertThat(restored.code()).as(restored.err()).isZero();
    try (SqliteJournal there = SqliteJournal.open(Purpose.RECORD.under(other), Purpose.RECORD)) {
      assertThat(there.head()).isEqualTo(journal.head());
      new RecordScenes(there).three("20261125-2");
    }
    assertThat(run("audit", other, "--against", journal.head()).code()).isZero();
  }

  @Test
  void a_record_that_is_there_is_never_written_over() throws Exception {
    Path copy = folder.resolve("copy.db");
    run("backup", folder, copy.toString());
    byte[] before = Files.readAllBytes(copy);
    Outcome again = run("backup", folder, copy.toString());
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("name a new file");
    assertThat(Files.readAllBytes(copy)).isEqualTo(before);
    Outcome onto = run("restore", folder, copy.toString());
    assertThat(onto.code()).isEqualTo(2);
    assertThat(onto.err()).contains("left as it is");
    assertThat(journal.length()).isPositive();
  }

  @Test
  void what_is_no_sound_copy_is_not_restored() throws Exception {
    Path copy = folder.resolve("copy.db");
    run("backup", folder, copy.toString());
    Path other = folder.resolve("other");
    Outcome foreign = run("restore", other, "--against", "0123456789abcdef", copy.toString());
    assertThat(foreign.code()).isEqualTo(1);
    assertThat(foreign.out()).contains("NOT FOUND").contains("nothing was restored");
    assertThat(run("restore", other, "--practice", copy.toString()).err())
        .contains("not of the practice");
    Path words = Files.writeString(
        folder.resolve("words.db"), "a shopping list ".repeat(90), StandardCharsets.UTF_8);
    assertThat(run("restore", other, words.toString()).code()).isEqualTo(2);
    assertThat(Purpose.RECORD.under(other)).doesNotExist();
  }
}
