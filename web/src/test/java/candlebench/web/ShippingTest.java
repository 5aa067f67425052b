package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What the shipped program must have in common with the one that is built here. */
class ShippingTest {
  private static final Path SHIP = Path.of("src/ship");

  @Test
  void the_shipped_program_runs_with_the_settings_of_a_lean_start() throws IOException {
    assertThat(Files.readString(SHIP.resolve("make")))
        .contains("--java-options \"" + String.join(" ", LeanStart.SETTINGS) + "\"");
  }

  @Test
  void the_service_starts_a_command_that_exists_and_ends_well_at_its_signal() throws IOException {
    String unit = Files.readString(SHIP.resolve("candlebench.service"));
    assertThat(unit).contains("ExecStart=/usr/bin/candlebench serve --data /var/lib/candlebench\n");
    assertThat(Main.commands()).contains("serve");
    assertThat(unit).contains("RestartPreventExitStatus=" + Main.WRONG_USE + "\n");
  }
}
