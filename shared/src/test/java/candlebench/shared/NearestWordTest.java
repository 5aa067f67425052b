package candlebench.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestWordTest {

  @ParameterizedTest
  @CsvSource({"fromat,format", "line,line", "units,unit", "nmae,name", "x,d", "Max,max"})
  void a_mistyped_word_is_near_the_one_that_was_meant(String typed, String meant) {
    assertThat(NearestWord.to(typed, List.of("format", "line", "name", "d", "max", "unit", "ask")))
        .isEqualTo(meant);
  }
}
