package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.journal.CrashPoints.Point;
import candlebench.station.journal.Purpose;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills a working bench in another process: nothing shown as recorded is lost, nothing is doubled, it goes on at the same step. */
class CrashTest {
  private static final int KILLS = Integer.getInteger("crash.kills", 6);
  private static final long SEED = Long.getLong("crash.seed", 20261125L);

  @TempDir
  Path folder;

  @Test
  void stopped_dead_at_each_named_instant_it_loses_nothing_and_goes_on() throws Exception {
    CrashRuns runs = CrashRuns.ofOil(folder);
    SplittableRandom random = new SplittableRandom(SEED);
    for (Point point : Point.values()) {
      CrashRuns.Left left = runs.stopDead(point, 2 + random.nextInt(6));
      // Between the commit and the view, and only there, more is on disk than was shown.
      boolean between = switch (point) {
        case AFTER_COMMIT, AFTER_APPEND, AFTER_STATE, AFTER_EFFECTS -> true;
        case BEFORE_APPEND, BEFORE_COMMIT, AFTER_VIEW -> false;
      };
      assertThat(left.inFlight()).as(point.name()).isEqualTo(between);
    }
    assertThat(runs.finish(1).inFlight()).isFalse();
  }

  @Test
  void killed_at_random_instants_it_loses_nothing_and_goes_on() throws Exception {
    CrashRuns runs = CrashRuns.ofOil(folder);
    SplittableRandom random = new SplittableRandom(SEED);
    for (int kill = 0; kill < KILLS; kill++) runs.kill(random);
    CrashRuns.Left left = runs.finish(2);
    assertThat(left.inFlight()).isFalse();
    assertThat(left.entries()).isPositive();
  }

  @Test
  void a_whole_batch_survives_a_stop_at_each_named_instant_and_kills_at_random_ones()
      throws Exception {
    CrashRuns runs = CrashRuns.ofWholeBatches(folder);
    SplittableRandom random = new SplittableRandom(SEED);
    for (Point point : Point.values()) runs.stopDead(point, 2 + random.nextInt(20));
    for (int kill = 0; kill < KILLS; kill++) runs.kill(random);
    assertThat(runs.finish(1).inFlight()).isFalse();
  }

  @Test
  void a_record_that_lost_what_was_shown_does_not_pass_this_check() throws Exception {
    CrashRuns runs = CrashRuns.ofOil(folder);
    runs.finish(1);
    try (Connection behindOurBack =
            DriverManager.getConnection("jdbc:sqlite:" + Purpose.RECORD.under(folder));
        Statement statement = behindOurBack.createStatement()) {
      statement.executeUpdate("DROP TRIGGER entry_is_never_erased");
      statement.executeUpdate(
          "DELETE FROM entry WHERE sequence = (SELECT max(sequence) FROM entry)");
    }
    assertThatThrownBy(() -> runs.check("cut"))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("is lost");
  }
}
