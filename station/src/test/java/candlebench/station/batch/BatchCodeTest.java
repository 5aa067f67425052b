package candlebench.station.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BatchCodeTest {

  @ParameterizedTest
  @CsvSource({
    "2026-12-31, 2026, 20261231-41",
    "2027-01-01, 2026, 20270101-41", // still in the last week of 2026
    "2024-12-30, 2025, 20241230-41", // already in the first week of 2025
    "2024-02-29, 2024, 20240229-41"
  })
  void the_year_is_the_calendars_even_where_the_week_belongs_to_another(
      LocalDate day, int weekYear, String code) {
    assertThat(day.get(IsoFields.WEEK_BASED_YEAR)).isEqualTo(weekYear);
    assertThat(new BatchCode(day, 41)).hasToString(code);
  }

  @Test
  void batches_are_numbered_from_one() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new BatchCode(LocalDate.of(2026, 11, 25), 0));
  }
}
