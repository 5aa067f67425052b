package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.journal.EntryText;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.web.Program.Outcome;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The packaged program, as it is called from a shell. Frames: the A&D standard format, made up for these tests. */
@Tag("packaged")
class CommandLineTest {
  private static final String FRAMES =
      "ST,+00123.40  g\r\nUS,-00001.00  g\r\nOL,+9999999E+19\r\nrubbish\r\nST,+00123.50  g\r\n";
  private static final String SAID = """
      {"status":"stable","value":"123.40","unit":"g","kind":"unknown"}
      {"status":"unstable","value":"-1.00","unit":"g","kind":"unknown"}
      {"status":"overload","value":"","unit":"","kind":"unknown"}
      {"status":"refused","reason":"UNKNOWN_HEADER: no beginning of a line of this format","offset":51}
      {"status":"stable","value":"123.50","unit":"g","kind":"unknown"}
      """;

  @Test
  void bytes_on_standard_input_are_told_message_by_message() throws Exception {
    assertThat(Program.run(ascii(FRAMES), "decode", "--format", "and"))
        .isEqualTo(new Outcome(0, SAID, ""));
  }

  @Test
  void bytes_in_a_file_are_told_the_same(@TempDir Path folder) throws Exception {
    Path file = Files.write(folder.resolve("captured bytes.bin"), ascii(FRAMES));
    assertThat(Program.run("decode", "--format=and", file.toString()))
        .isEqualTo(new Outcome(0, SAID, ""));
  }

  @Test
  void nothing_in_is_nothing_out() throws Exception {
    assertThat(Program.run("decode", "--format", "and")).isEqualTo(new Outcome(0, "", ""));
  }

  @Test
  void a_message_is_told_before_the_next_arrives() throws Exception {
    Process process = Program.command("decode", "--format", "and").start();
    try (var in = process.outputWriter();
        var out = process.inputReader()) {
      for (String number : new String[] {"00123.40", "00123.50"}) {
        in.write("ST,+" + number + "  g\r\n");
        in.flush();
        assertThat(out.readLine()).contains("\"value\":\"" + number.substring(2) + "\"");
      }
    } finally {
      process.destroy();
    }
  }

  @Test
  void a_reader_that_has_seen_enough_is_no_fault(@TempDir Path folder) throws Exception {
    Path file = Files.write(folder.resolve("long.bin"), ascii(FRAMES.repeat(20_000)));
    Process process =
        Program.command("decode", "--format", "and", file.toString()).start();
    try (var out = process.inputReader()) {
      assertThat(out.readLine()).startsWith("{\"status\":\"stable\"");
    }
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isZero();
    assertThat(process.errorReader().readLine()).isNull();
  }

  @EnabledOnOs(OS.LINUX)
  @ParameterizedTest
  @ValueSource(strings = {"--help", "ports", "plan --example", "recognise", "audit --help"})
  void what_could_not_be_written_is_told(String words) throws Exception {
    Path full = Path.of("/dev/full");
    Process process = Program.command(words.split(" "))
        .redirectOutput(ProcessBuilder.Redirect.to(full.toFile()))
        .start();
    process.getOutputStream().close();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isEqualTo(2);
    assertThat(process.errorReader().readLine())
        .startsWith("candlebench: not all could be written");
  }

  @Test
  void an_unknown_scale_is_recognised_by_its_bytes() throws Exception {
    Outcome outcome =
        Program.run(ascii("ST,+00123.40  g\r\nUS,-00001.00  g\r\n".repeat(10)), "recognise");
    assertThat(outcome.out()).startsWith("and\n# ").contains("sure, from 20 weights");
    assertThat(outcome.code()).isZero();
  }

  @Test
  void where_two_formats_remain_both_are_named_with_what_to_do(@TempDir Path folder)
      throws Exception {
    Path file = Files.write(folder.resolve("alike.bin"), ascii("+   123.45 g  \r\n".repeat(20)));
    Outcome outcome = Program.run("recognise", file.toString());
    assertThat(outcome.out()).startsWith("sbi\nand\n# ").contains("empty the pan and press zero");
    assertThat(outcome.code()).isEqualTo(1);
  }

  @Test
  void what_is_no_scale_stays_unknown() throws Exception {
    byte[] words = ascii("The quick brown fox\r\n".repeat(10));
    Outcome outcome = Program.run(words, "recognise");
    assertThat(outcome.out())
        .startsWith("unknown\n# Readable lines, but none of the formats we have.");
    assertThat(outcome.code()).isEqualTo(1);
    assertThat(Program.run(words, "recognise", "--json").out())
        .startsWith("{\"finding\":\"unknown-format\",\"ids\":[],\"line\":\"8N1\",\"words\":\"")
        .contains("\"ranked\":[{\"id\":\"");
  }

  @Test
  void a_record_as_written_is_sound_and_a_changed_one_is_not(@TempDir Path folder)
      throws Exception {
    try (SqliteJournal journal = SqliteJournal.open(Purpose.RECORD.under(folder), Purpose.RECORD)) {
      journal.append(
          "2026-11-25T12:00:00Z",
          List.of(new EntryText("note", "{}"), new EntryText("note", "{\"a\":1}")));
      String head = journal.head();
      Outcome sound = Program.run("audit", "--data", folder.toString(), "--against", head);
      assertThat(sound.out()).contains("2 entries, sound", "head " + head, "FOUND");
      assertThat(sound.code()).isZero();
      Outcome foreign =
          Program.run("audit", "--data", folder.toString(), "--against", "0123456789abcdef");
      assertThat(foreign.out()).contains("NOT FOUND");
      assertThat(foreign.code()).isEqualTo(1);
    }
  }

  @Test
  void a_batch_is_planned_from_the_example_and_refused_or_unreadable_where_it_is_changed(
      @TempDir Path folder) throws Exception {
    String example = Program.run("plan", "--example").out();
    Path file = folder.resolve("evening.json");
    Files.writeString(file, example);
    Outcome planned = Program.run("plan", file.toString());
    assertThat(planned.out())
        .contains("\nPlanned\n", "total                                    3552.4 g");
    assertThat(planned.err()).isEmpty();
    assertThat(planned.code()).isZero();
    assertThat(Program.run("plan", file.toString(), "--json").out())
        .startsWith("{\n  \"verdict\" : \"planned\"")
        .endsWith("}\n");
    assertThat(Program.run("plan", file.toString(), "--chart").out()).contains("For so much wax");
    Files.writeString(file, example.replace("\"vessels\": 14", "\"vessels\": 48"));
    Outcome refused = Program.run("plan", file.toString(), "--json");
    assertThat(refused.out()).startsWith("{\n  \"verdict\" : \"refused\"").contains("pot-room");
    assertThat(refused.code()).isEqualTo(1);
    Files.writeString(
        file,
        example.replace("{\"waterWeight\": \"290 g\", \"density\": \"0.87 g/mL\"}", "\"9 oz\""));
    Outcome unreadable = Program.run("plan", file.toString());
    assertThat(unreadable.err())
        .contains("vessel.fill: say whether it is a weight or a capacity")
        .hasLineCount(1);
    assertThat(unreadable.out()).isEmpty();
    assertThat(unreadable.code()).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "decode --fromat and          | no option '--fromat'; nearest is '--format'",
        "decode --format amd          | no format 'amd'; nearest is 'and'",
        "decode                       | --format",
        "decode --format              | --format",
        "decode --format and no-file  | no file 'no-file'",
        "decode --format and target   | is a folder",
        "decode --format and pom.xml x| 'x'",
        "recognise no-file            | no file 'no-file'",
        "recognise --jsom             | nearest is '--json'",
        "plan                         | name a plan file",
        "plan no-file                 | no file 'no-file'",
        "plan target                  | is a folder",
        "plan pom.xml                 | 'pom.xml': line 1, column 1: not JSON",
        "plan pom.xml --jsn           | nearest is '--json'",
        "plan pom.xml --json --chart  | leave --chart out",
        "audit --data no-folder       | no record at",
        "audit --data target --against xyz | a head is 16 to 64 digits",
        "export --data no-folder      | no record at",
        "export --as xml              | no form 'xml'",
        "restore --data target no-file | no file 'no-file': name a copy",
        "restore --data target src    | no file 'src': name a copy",
        "serve --data target/x --scale tcp:localhost:1?format=and --scale tcp:localhost:1?format=sics | named twice",
        "bundle --port 9 --data target/x | no bench answers at http://127.0.0.1:9/api/bundle",
        "replay no-file               | no file 'no-file': name one that 'bundle' saved",
        "replay pom.xml               | 'pom.xml': it is no bundle",
        "serve --unit stone           | --unit is g, kg, oz or lb:oz, not 'stone'",
        "demo --count-in 200          | --count-in is 0 to 120 seconds, not 200",
        "demo --undo -1               | --undo is 0 to 120 seconds, not -1",
        "decod                        | nearest is 'decode'",
        "ports --all                  | no option '--all'",
      })
  void wrong_use_says_in_one_line_what_to_do(String line, String words) throws Exception {
    Outcome outcome = Program.run(line.split(" +"));
    assertThat(outcome.code()).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).contains(words).endsWith("\n").hasLineCount(1);
  }

  @Test
  void a_list_of_scales_that_is_no_text_is_named_with_a_way_on(@TempDir Path folder)
      throws Exception {
    Path list = Files.write(folder.resolve("scales.txt"), new byte[] {(byte) 0xFF, 0, (byte) 0x80});
    Outcome outcome = Program.run("serve", "--port", "0", "--data", folder.toString());
    assertThat(outcome.code()).isEqualTo(2);
    assertThat(outcome.err())
        .contains(list + " is no text any more: move it away")
        .hasLineCount(1);
  }

  @Test
  void a_setting_that_nobody_reads_ends_the_program_before_it_begins(@TempDir Path folder)
      throws Exception {
    Path file = Files.writeString(folder.resolve("candlebench.properties"), "prot = 7400\n");
    for (String command : new String[] {"serve", "demo"}) {
      Outcome outcome = Program.run(command, "--port", "0", "--data", folder.toString());
      assertThat(outcome.code()).isEqualTo(2);
      assertThat(outcome.err())
          .contains("in " + file + ", line 1: no key 'prot'; nearest is 'port'")
          .hasLineCount(1);
      assertThat(Program.run(command, "--help").out())
          .contains("candlebench.properties", "CANDLEBENCH_PORT");
    }
  }

  @Test
  void the_environment_may_name_the_data_folder(@TempDir Path folder) throws Exception {
    for (String words : new String[] {"audit", "export --as csv"}) {
      ProcessBuilder command = Program.command(words.split(" "));
      command.environment().put("CANDLEBENCH_DATA", folder.toString());
      Process process = command.start();
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isEqualTo(2);
      assertThat(process.errorReader().readLine()).contains("no record at '" + folder);
    }
  }

  @Test
  void help_names_every_command_and_each_tells_more() throws Exception {
    Outcome help = Program.run("--help");
    assertThat(help.code()).isZero();
    for (String command : Main.commands()) {
      assertThat(help.out()).contains("candlebench " + command);
      Outcome more = Program.run(command, "--help");
      assertThat(more.code()).isZero();
      assertThat(more.out()).startsWith("Usage: candlebench " + command);
    }
  }

  @Test
  void the_list_of_ports_tells_that_others_may_be_typed() throws Exception {
    Outcome outcome = Program.run("ports");
    assertThat(outcome.code()).isZero();
    assertThat(outcome.out()).contains("Any other path works too");
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
