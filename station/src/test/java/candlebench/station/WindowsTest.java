package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Mass;
import candlebench.station.batch.ProcessWindows.Process;
import candlebench.station.batch.planning.PlanOrder;
import candlebench.station.batch.planning.PlannedProduct;
import candlebench.station.batch.planning.RecipeJson;
import candlebench.station.batch.planning.RecipeWriterJson;
import candlebench.station.batch.planning.UnreadablePlan;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.TemperatureNoted;
import candlebench.station.guidance.GuidanceEvent.TemperatureOutside;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Between which temperatures a wax is melted, takes its oil and is poured: by lot, written down, and never forbidden. */
class WindowsTest {
  private static final String PLAN = """
      {"recipe": {"id": "warm", "version": 1, "name": "warm (invented)",
         "parts": [
           {"kind": "wax", "name": "wax", "share": "100 %", "of": "wax", "tolerance": "1 %"},
           {"kind": "oil", "name": "oil", "share": "8 %", "of": "wax", "tolerance": "1 %"}],
         "waits": {"melt": "10 min", "mix": "1 min"},
         "windows": [
           {"melt": {"from": "75 °C", "to": "85 °C"}, "oil": {"from": "149 °F", "to": "158 °F"},
            "pour": {"from": "50 °C", "to": "55.5 °C"}},
           {"lot": "W-13", "oil": {"from": "70 °C", "to": "80 °C"}}]},
       "vessel": {"name": "glass", "fill": {"weight": "260 g"}, "tolerance": "3 g"},
       "pots": [{"name": "Pot A", "empty": "400 g"}],
       "scales": [{"name": "bench", "capacity": "3 kg", "division": "0.1 g"}],
       "batch": {"vessels": 2}}
      """;

  private static VirtualBench atMelt(String lot) throws UnreadablePlan {
    VirtualBench bench = new VirtualBench(
        VirtualBench.Make.of(BenchSetup.of(List.of(new PlannedProduct(RecipeJson.read(PLAN))))));
    bench.run(3);
    bench.say(new MakerCommand.StartBatch("warm", 2, "Robin", Map.of("wax", lot)));
    bench.run(1);
    bench.pan.putOn("pot", Mass.ofGrams("400"));
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    bench.pan.add(bench.prompt().weighing().orElseThrow().target());
    bench.runUntil(Prompt.Kind.MELT, 15);
    return bench;
  }

  private static void note(VirtualBench bench, int tenths) {
    assertThat(bench.say(new MakerCommand.NoteTemperature(tenths))).isEmpty();
  }

  @Test
  void outside_its_window_a_temperature_is_written_down_and_the_batch_goes_on() throws Exception {
    VirtualBench bench = atMelt("W-12");
    note(bench, 750);
    note(bench, 850);
    assertThat(bench.all(TemperatureOutside.class)).isEmpty();
    note(bench, 851);
    assertThat(bench.last(TemperatureOutside.class).process()).isEqualTo(Process.MELT);
    assertThat(bench.last(TemperatureOutside.class).toTenths()).isEqualTo(850);
    bench.say(new MakerCommand.GoOn());
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    note(bench, 720);
    // 149 °F and 158 °F are 65 °C and 70 °C.
    assertThat(bench.last(TemperatureOutside.class).fromTenths()).isEqualTo(650);
    assertThat(bench.last(TemperatureOutside.class).toTenths()).isEqualTo(700);
    bench.pan.add(bench.prompt().weighing().orElseThrow().target());
    bench.runUntil(Prompt.Kind.MIX, 15);
    bench.runUntil(Prompt.Kind.PLACE_VESSEL, 80);
    note(bench, 499);
    assertThat(bench.all(TemperatureNoted.class)).hasSize(5);
    assertThat(bench.all(TemperatureOutside.class))
        .extracting(TemperatureOutside::process)
        .containsExactly(Process.MELT, Process.OIL, Process.POUR);
  }

  @Test
  void a_lot_of_wax_has_windows_of_its_own_and_else_those_of_any_lot() throws Exception {
    VirtualBench bench = atMelt("W-13");
    note(bench, 900);
    assertThat(bench.all(TemperatureOutside.class)).hasSize(1);
    bench.say(new MakerCommand.GoOn());
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    note(bench, 720);
    assertThat(bench.all(TemperatureOutside.class)).hasSize(1);
    note(bench, 690);
    assertThat(bench.last(TemperatureOutside.class).fromTenths()).isEqualTo(700);
  }

  @Test
  void they_are_written_out_as_they_were_read_and_a_wrong_one_names_the_field_and_the_fix()
      throws Exception {
    PlanOrder order = RecipeJson.read(PLAN);
    assertThat(RecipeJson.read(RecipeWriterJson.text(order))).isEqualTo(order);
    String[][] wrong = {
      {"\"75 °C\"", "\"75\"", "recipe.windows[0].melt.from", "75 °C"},
      {"\"75 °C\"", "\"95 °C\"", "recipe.windows[0].melt", "from the colder"},
      {"\"lot\"", "\"lots\"", "recipe.windows[1].lots", "lot"}
    };
    for (String[] each : wrong)
      assertThatThrownBy(() -> RecipeJson.read(PLAN.replace(each[0], each[1])))
          .isInstanceOf(UnreadablePlan.class)
          .hasMessageContainingAll(each[2], each[3]);
  }
}
