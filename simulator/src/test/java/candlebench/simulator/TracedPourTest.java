package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TracedPourTest {

  @TempDir
  Path folder;

  @Test
  void a_stream_cut_at_once_is_found_with_its_gain_its_flow_and_no_tail() {
    List<TracedPour> pours = TracedPour.in(trace(15, at -> 5 * Math.max(0, Math.min(at - 2, 6))));
    assertThat(pours).hasSize(1);
    TracedPour pour = pours.get(0);
    assertThat(pour.startSeconds()).isCloseTo(2, within(0.3));
    assertThat(pour.endSeconds()).isCloseTo(8, within(0.3));
    assertThat(pour.gainGrams()).isCloseTo(30, within(0.2));
    assertThat(pour.medianFlow()).isCloseTo(5, within(0.05));
    assertThat(pour.fallSeconds().orElseThrow())
        .as("half a second of slope makes this of nothing")
        .isCloseTo(0.4, within(0.1));
    assertThat(pour.tailGrams().orElseThrow()).isCloseTo(0, within(0.35));
  }

  @Test
  void a_stream_that_dies_away_has_a_tail_and_settles_later() {
    TracedPour pour = TracedPour.in(trace(20, at -> {
          double flowing = 5 * Math.max(0, Math.min(at - 2, 6));
          return at < 8 ? flowing : flowing + 5 * 0.4 * (1 - Math.exp(-(at - 8) / 0.4));
        }))
        .get(0);
    assertThat(pour.gainGrams()).isCloseTo(32, within(0.3));
    assertThat(pour.tailGrams().orElseThrow()).isCloseTo(1.0, within(0.35));
    assertThat(pour.settleSeconds().orElseThrow()).isBetween(0.6, 1.4);
    assertThat(pour.fallSeconds().orElseThrow()).isBetween(0.8, 1.5);
  }

  @Test
  void what_adds_less_than_five_grams_or_runs_slower_than_a_trickle_is_no_pour() {
    assertThat(TracedPour.in(trace(15, at -> Math.min(4, Math.max(0, at - 2))))).isEmpty();
    assertThat(TracedPour.in(trace(60, at -> 0.2 * at))).isEmpty();
  }

  @Test
  void rest_noise_is_taken_about_a_line_and_not_while_the_weight_moves() {
    double[] zigzag = trace(
            20, at -> 100 + 0.05 * at + (Math.round(at * 10) % 2 == 0 ? 0.02 : -0.02))
        .restNoise();
    assertThat(zigzag).hasSize(9);
    for (double each : zigzag) assertThat(each).isCloseTo(0.021, within(0.002));
    assertThat(trace(20, at -> 100 + 0.2 * at).restNoise()).isEmpty();
    assertThat(trace(20, at -> 0).restNoise()).as("a display held at zero").isEmpty();
  }

  @Test
  void the_comparison_prints_each_recording_beside_the_model() throws IOException {
    Files.writeString(
        folder.resolve("a-pour-over.csv"),
        csv(trace(15, at -> 5 * Math.max(0, Math.min(at - 2, 6)))));
    Files.writeString(folder.resolve("notes.txt"), "no recording");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThat(compare(out, folder.toString())).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains("a-pour-over", "MODEL", "recordings, 1", "30.0");
  }

  @Test
  void a_wrong_folder_or_line_is_named() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThat(compare(out)).isEqualTo(2);
    assertThat(compare(out, folder.toString())).isEqualTo(2);
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("give the folder", "no .csv file");
    Files.writeString(folder.resolve("bad.csv"), "t_s,weight_g\n0.0,1.0\n0.1,heavy\n");
    assertThat(compare(out, folder.toString())).isEqualTo(2);
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("bad.csv, line 3", "0.1,heavy");
  }

  private static int compare(ByteArrayOutputStream out, String... arguments) {
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    return CompareWithRecordings.run(arguments, print, print);
  }

  private static String csv(WeightTrace trace) {
    StringBuilder csv = new StringBuilder("t_s,weight_g\n");
    for (int i = 0; i < trace.size(); i++)
      csv.append(trace.seconds()[i]).append(',').append(trace.grams()[i]).append('\n');
    return csv.toString();
  }

  private static WeightTrace trace(int seconds, DoubleUnaryOperator weight) {
    double[] times = new double[seconds * 10];
    double[] grams = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      times[i] = i / 10.0;
      grams[i] = weight.applyAsDouble(times[i]);
    }
    return new WeightTrace(times, grams);
  }
}
