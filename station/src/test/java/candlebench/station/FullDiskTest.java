package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FullDiskTest {

  @TempDir
  Path folder;

  @Test
  void a_disk_that_fills_up_in_mid_batch_stops_the_bench_with_a_word_and_loses_nothing()
      throws Exception {
    FullDiskRuns runs = new FullDiskRuns(folder);
    List<String> undisturbed = runs.undisturbed();
    assertThat(undisturbed).contains("batch-done").hasSizeGreaterThan(3);
    Set<Integer> points = new HashSet<>();
    for (int note = 200; note < 3_400; note += 400) {
      FullDiskRuns.Left left = runs.run(note, undisturbed);
      if (left.wasFull()) points.add(left.entriesThen());
    }
    assertThat(points).as("the points at which it was full").hasSizeGreaterThan(1);
  }
}
