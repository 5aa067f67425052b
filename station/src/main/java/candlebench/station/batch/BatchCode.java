package candlebench.station.batch;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;

/**
 * What a batch is called on its labels: the calendar date at the bench and a running number, such as {@code 20261229-41}.
 *
 * <p>The year is that of the calendar (ISO 8601 basic date), never that of the week, which differs around New Year. The number goes on
 * from batch to batch and from day to day, so that no two batches share it even where a clock was set wrong.
 *
 * @param number from 1
 */
public record BatchCode(LocalDate day, int number) {

  public BatchCode {
    if (day.getYear() < 1 || day.getYear() > 9999)
      throw new IllegalArgumentException("a batch's year has four digits, not " + day.getYear());
    if (number < 1)
      throw new IllegalArgumentException("batches are numbered from 1, not " + number);
  }

  @Override
  public String toString() {
    return DateTimeFormatter.BASIC_ISO_DATE.format(day) + "-" + number;
  }
}
