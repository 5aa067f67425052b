package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A power cut after any step on the disk, in a run of a whole batch: what had been shown as recorded is there. */
@EnabledOnOs(OS.LINUX)
class PowerCutTest {

  @TempDir
  Path folder;

  private Path library;

  @BeforeEach
  void build() throws Exception {
    Optional<Path> built = DiskLog.library(folder);
    assertThat(built)
        .as(
            "a process is followed by a small library, for which a C compiler is needed: install gcc")
        .isPresent();
    library = built.get();
  }

  @Test
  void nothing_shown_as_recorded_is_lost_whatever_was_not_synced() throws Exception {
    PowerCutRuns runs = PowerCutRuns.of(folder, library, "FULL", 2);
    assertThat(runs.syncs()).as("the log saw the bench at work").isGreaterThan(10);
    PowerCutRuns.Result nothingKept = runs.cut(1, Optional.empty());
    assertThat(nothingKept.entries()).isGreaterThan(9);
    assertThat(nothingKept.faults()).isEmpty();
    assertThat(runs.cut(3, Optional.of(1L)).faults()).isEmpty();
  }

  @Test
  void a_bench_that_does_not_sync_each_entry_is_caught() throws Exception {
    for (String hasty : new String[] {"NORMAL", "OFF"}) {
      PowerCutRuns runs = PowerCutRuns.of(folder, library, hasty, 1);
      assertThat(runs.cut(2, Optional.empty()).faults()).as(hasty).isNotEmpty();
    }
  }
}
