package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** What a bench is told by flags, environment and file: who goes before whom, and what is said of a mistake. */
class SettingsTest {
  private static final String AND = "serial:/dev/ttyUSB0?format=and";
  private static final String SICS = "tcp:192.168.1.20:4001?format=sics";

  @TempDir
  private Path data;

  @ParameterizedTest
  @ValueSource(strings = {"serve", "demo"})
  void a_flag_goes_before_the_environment_and_that_before_the_file(String command)
      throws Exception {
    assertThat(with(command, Map.of())).containsExactly("--data", data.toString());
    file("port = 7001");
    assertThat(with(command, Map.of())).containsExactly("--port=7001", "--data", data.toString());
    Map<String, String> environment = Map.of("CANDLEBENCH_PORT", "7002");
    assertThat(with(command, environment))
        .containsExactly("--port=7002", "--data", data.toString());
    assertThat(with(command, environment, "--port", "7003"))
        .containsExactly("--data", data.toString(), "--port", "7003");
  }

  @Test
  void several_scales_have_a_line_each_and_in_the_environment_a_semicolon_between()
      throws Exception {
    file("# two scales", "", "scale = " + AND, "scale=" + SICS);
    assertThat(with("serve", Map.of())).startsWith("--scale=" + AND, "--scale=" + SICS);
    assertThat(with("serve", Map.of("CANDLEBENCH_SCALE", SICS + ";" + AND)))
        .containsExactly("--scale=" + SICS, "--scale=" + AND, "--data", data.toString());
    assertThat(with("serve", Map.of(), "--scale", SICS))
        .containsExactly("--data", data.toString(), "--scale", SICS);
  }

  @Test
  void what_is_of_the_other_command_is_passed_over() throws Exception {
    file("play = true", "scale = " + AND);
    assertThat(with("serve", Map.of())).startsWith("--scale=" + AND).doesNotContain("--play=true");
    assertThat(with("demo", Map.of())).startsWith("--play=true").doesNotContain("--scale=" + AND);
  }

  @Test
  void a_file_with_a_byte_order_mark_and_the_line_ends_of_windows_is_read() throws Exception {
    Files.writeString(data.resolve(Settings.FILE), "\uFEFFport = 7001\r\nlisten = 127.0.0.1\r\n");
    assertThat(with("serve", Map.of())).startsWith("--port=7001", "--listen=127.0.0.1");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "prot = 7400            | line 2: no key 'prot'; nearest is 'port'",
        "Port = 7400            | line 2: no key 'Port'; nearest is 'port'",
        "port 7400              | line 2: a line is key = value",
        "= 7400                 | line 2: a line is key = value",
        "port =                 | line 2: port is given no value",
        "port = many            | line 2: Invalid value for option '--port'",
        "play = perhaps         | line 2: Invalid value for option '--play'",
        "data = /srv/candles    | line 2: the file lies in the data folder and cannot name it",
        "help = true            | line 2: no key 'help'",
      })
  void a_line_that_cannot_be_read_is_named_with_what_to_do(String line, String words)
      throws Exception {
    file("# mine", line);
    assertThatThrownBy(() -> with("serve", Map.of()))
        .isInstanceOf(WrongUse.class)
        .hasMessageStartingWith("in " + data.resolve(Settings.FILE) + ", ")
        .hasMessageContaining(words)
        .satisfies(wrong -> assertThat(wrong.getMessage()).hasLineCount(1));
  }

  @Test
  void a_key_that_stands_there_twice_names_both_lines() throws Exception {
    file("port = 7001", "port = 7002");
    assertThatThrownBy(() -> with("serve", Map.of()))
        .hasMessageContaining("line 2: 'port' stands there already, in ")
        .hasMessageContaining("line 1: keep one of them");
  }

  @Test
  void a_variable_that_nobody_reads_is_named_with_the_nearest() {
    assertThatThrownBy(() -> with("serve", Map.of("CANDLEBENCH_PROT", "7400")))
        .isInstanceOf(WrongUse.class)
        .hasMessageContaining("CANDLEBENCH_PROT")
        .hasMessageContaining("nearest is 'CANDLEBENCH_PORT'");
    assertThatThrownBy(() -> with("demo", Map.of("CANDLEBENCH_PORT", "")))
        .hasMessageContaining("in the environment, CANDLEBENCH_PORT: port is given no value");
  }

  @Test
  void a_file_that_is_no_text_is_named_with_a_way_on() throws Exception {
    Files.write(data.resolve(Settings.FILE), new byte[] {(byte) 0xFF, 0});
    assertThatThrownBy(() -> with("serve", Map.of()))
        .hasMessageContaining("is not in UTF-8: save it as UTF-8");
  }

  @Test
  void what_was_typed_wrong_is_left_to_the_call_itself() throws Exception {
    file("nonsense");
    assertThat(with("serve", Map.of(), "--prot", "1"))
        .containsExactly("--data", data.toString(), "--prot", "1");
    assertThat(with("serve", Map.of(), "--help"))
        .containsExactly("--data", data.toString(), "--help");
  }

  @Test
  void the_readme_names_every_key_and_no_other() throws Exception {
    List<String> rows = Files.readAllLines(Path.of("../README.md")).stream()
        .dropWhile(line -> !line.startsWith("| Key |"))
        .skip(2)
        .takeWhile(line -> line.startsWith("|"))
        .map(line -> line.replaceFirst("^(\\| `[^`]+` \\| `[^`]+` \\|).*", "$1"))
        .toList();
    assertThat(rows)
        .containsExactlyElementsOf(Main.settings(Map.of()).keys().keySet().stream()
            .map(key -> "| `" + key + "` | `" + Settings.variable(key) + "` |")
            .toList());
  }

  private List<String> with(String command, Map<String, String> environment, String... more)
      throws WrongUse {
    return Main.settings(environment).with(commandLine(command), data(more));
  }

  private static CommandLine commandLine(String command) {
    return new CommandLine(command.equals("demo") ? new DemoCommand() : new ServeCommand());
  }

  private List<String> data(String... more) {
    String[] all = Arrays.copyOf(new String[] {"--data", data.toString()}, 2 + more.length);
    System.arraycopy(more, 0, all, 2, more.length);
    return List.of(all);
  }

  private void file(String... lines) throws IOException {
    Files.write(data.resolve(Settings.FILE), List.of(lines));
  }
}
