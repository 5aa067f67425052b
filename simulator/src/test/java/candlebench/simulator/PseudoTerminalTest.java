package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.protocol.LineSettings;
import java.io.ByteArrayOutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@EnabledOnOs(OS.LINUX)
class PseudoTerminalTest {
  private static final LineSettings EIGHT = LineSettings.of("9600-8N1");

  @TempDir
  Path folder;

  private PseudoTerminal terminal;

  @BeforeEach
  void create() {
    terminal = new PseudoTerminal(folder.resolve("scale"));
  }

  @AfterEach
  void remove() {
    terminal.close();
  }

  @Test
  void every_byte_passes_unchanged_both_ways() throws Exception {
    byte[] all = new byte[256];
    for (int b = 0; b < all.length; b++) all[b] = (byte) b;
    try (SerialProgram program = new SerialProgram(terminal.address(), EIGHT)) {
      assertThat(terminal.offer(all)).isTrue();
      assertThat(program.awaitBytes(256)).isEqualTo(all);
      program.send(all);
      ByteArrayOutputStream taken = new ByteArrayOutputStream();
      long deadline = System.nanoTime() + 20_000_000_000L;
      while (taken.size() < 256 && System.nanoTime() < deadline) taken.writeBytes(terminal.taken());
      assertThat(taken.toByteArray()).isEqualTo(all);
    }
  }

  @Test
  void plain_file_reading_sees_the_bytes_too() throws Exception {
    try (RandomAccessFile file = new RandomAccessFile(terminal.address(), "rw")) {
      assertThat(terminal.offer("450.0 g\r\n".getBytes(StandardCharsets.US_ASCII)))
          .isTrue();
      byte[] read = new byte[9];
      file.readFully(read);
      assertThat(read).asString().isEqualTo("450.0 g\r\n");
    }
  }

  @Test
  void while_nobody_listens_frames_are_dropped_and_none_is_waiting_for_who_opens_later()
      throws Exception {
    assertThat(terminal.isOpened()).isFalse();
    assertThat(terminal.offer("stale".getBytes(StandardCharsets.US_ASCII))).isFalse();
    try (SerialProgram program = new SerialProgram(terminal.address(), EIGHT)) {
      assertThat(terminal.offer("fresh".getBytes(StandardCharsets.US_ASCII))).isTrue();
      assertThat(program.awaitBytes(5)).asString().isEqualTo("fresh");
    }
    assertThat(terminal.offer("stale".getBytes(StandardCharsets.US_ASCII))).isFalse();
  }

  @Test
  void a_program_that_does_not_read_never_blocks_the_scale() throws Exception {
    try (RandomAccessFile file = new RandomAccessFile(terminal.address(), "rw")) {
      byte[] frame = new byte[18];
      int offered = 0;
      while (terminal.offer(frame)) assertThat(++offered).isLessThan(100_000);
      assertThat(offered).isPositive();
      assertThat(file.read()).isZero();
    }
  }

  @Test
  void pulling_the_plug_is_seen_by_the_program_and_the_same_path_works_again_afterwards()
      throws Exception {
    Path link = Path.of(terminal.address());
    try (SerialProgram program = new SerialProgram(terminal.address(), EIGHT)) {
      terminal.unplug();
      assertThat(program.awaitGone()).isTrue();
    }
    assertThat(link).doesNotExist();
    assertThat(terminal.offer(new byte[] {1})).isFalse();
    assertThat(terminal.taken()).isEmpty();

    terminal.replug();
    assertThat(Files.readSymbolicLink(link)).hasToString(terminal.device());
    try (SerialProgram program = new SerialProgram(terminal.address(), EIGHT)) {
      assertThat(terminal.offer("back".getBytes(StandardCharsets.US_ASCII))).isTrue();
      assertThat(program.awaitBytes(4)).asString().isEqualTo("back");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "9600-8N1",
        "2400-7E1",
        "1200-7O1",
        "4800-8O2",
        "19200-8E1",
        "38400-7M1",
        "115200-7S2",
        "2400-7N1"
      })
  void what_the_program_set_can_be_read_back(String settings) {
    assertThat(terminal.heardAs()).isEmpty();
    try (SerialProgram program = new SerialProgram(terminal.address(), LineSettings.of(settings))) {
      assertThat(terminal.heardAs()).contains(LineSettings.of(settings));
      assertThat(program.soFar()).isEmpty();
    }
    assertThat(terminal.heardAs()).isEmpty();
  }

  @Test
  void before_a_program_sets_it_the_line_is_as_a_serial_port_is_at_first() throws Exception {
    try (RandomAccessFile file = new RandomAccessFile(terminal.address(), "rw")) {
      assertThat(terminal.heardAs()).contains(EIGHT);
      assertThat(file.getFD().valid()).isTrue();
    }
  }

  @Test
  void something_else_at_its_path_is_neither_replaced_nor_removed() throws Exception {
    Path taken = Files.writeString(folder.resolve("taken"), "mine");
    assertThatThrownBy(() -> new PseudoTerminal(taken)).hasMessageContaining("is there already");
    assertThat(taken).hasContent("mine");

    Path link = Path.of(terminal.address());
    Files.delete(link);
    Files.createSymbolicLink(link, taken);
    terminal.unplug();
    assertThat(Files.exists(link, LinkOption.NOFOLLOW_LINKS)).isTrue();
  }
}
