package candlebench.station.batch.planning;

import candlebench.station.batch.Fraction;
import java.util.Optional;

/**
 * A skin sensitiser in a part, as its supplier's sheet states it.
 *
 * @param content its share of the part; where the sheet gives a range, the upper end
 * @param specificLimit a limit of its own, which takes the place of its category's
 */
public record Sensitiser(
    String name, SensitiserCategory category, Fraction content, Optional<Fraction> specificLimit) {

  private static final Fraction TENTH = Fraction.of(1, 10);

  public Sensitiser {
    if (name.isBlank()) throw new IllegalArgumentException("a sensitiser needs its name");
    if (content.isNegative() || content.compareTo(Fraction.ONE) > 0)
      throw new IllegalArgumentException("a content lies between 0 and 100 %: " + name);
    if (specificLimit.filter(limit -> limit.compareTo(Fraction.ZERO) <= 0).isPresent())
      throw new IllegalArgumentException("a specific limit is above zero: " + name);
  }

  Fraction classifiesFrom() {
    return specificLimit.orElse(category.classifiesFrom());
  }

  /**
   * A tenth of a specific limit, but no later than its category. From memory: the note to CLP Table 3.4.6 asks for the tenth only where
   * the specific limit is under 0.1 %; the earlier of the two is the safe one to tell.
   */
  Fraction namedFrom() {
    return specificLimit
        .map(limit -> limit.times(TENTH))
        .filter(tenth -> tenth.compareTo(category.namedFrom()) < 0)
        .orElse(category.namedFrom());
  }
}
