package candlebench.station.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Mass;
import candlebench.station.guidance.MakerCommand;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandJsonTest {

  static MakerCommand[] commands() {
    return new MakerCommand[] {
      new MakerCommand.StartBatch("harbour-lane", 3, "Robin", Map.of("wax", "W-12")),
      new MakerCommand.GoOn(),
      new MakerCommand.EnterByHand(Mass.ofGrams("56.1"), "scale is \"away\""),
      new MakerCommand.NoteTemperature(-5)
    };
  }

  @ParameterizedTest
  @MethodSource("commands")
  void what_the_maker_said_comes_back_as_it_was_written(MakerCommand command) {
    assertThat(CommandJson.command(CommandJson.text(command))).isEqualTo(command);
  }

  @Test
  void its_kind_is_in_the_words_of_the_page() {
    assertThat(CommandJson.text(new MakerCommand.GoOn())).isEqualTo("{\"command\":\"go-on\"}");
    assertThat(CommandJson.kind(new MakerCommand.NoteTemperature(1))).isEqualTo("note-temperature");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "[]", "{}", "{\"command\":\"dance\"}", "{\"command\":\"note-temperature\"}"})
  void what_is_no_command_is_refused(String text) {
    assertThatThrownBy(() -> CommandJson.command(text))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
