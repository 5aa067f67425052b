package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import java.util.LinkedHashMap;
import java.util.Map;

/** What is to be said: a key of the page's message file, and the values that go into the sentence, not yet made text. */
public record Words(String key, Map<String, Term> with) {

  public Words {
    with = Map.copyOf(with);
  }

  public static Words of(String key) {
    return new Words(key, Map.of());
  }

  public Words and(String name, Mass mass) {
    return and(name, new Amount(mass));
  }

  public Words and(String name, String text) {
    return and(name, new Text(text));
  }

  public Words and(String name, long count) {
    return and(name, new Text(Long.toString(count)));
  }

  public Words and(String name, Fraction share) {
    return and(name, new Percent(share));
  }

  private Words and(String name, Term term) {
    Map<String, Term> more = new LinkedHashMap<>(with);
    more.put(name, term);
    return new Words(key, more);
  }

  /** A value in a sentence. */
  public sealed interface Term {}

  /** A mass, to be shown in the maker's unit, rounded to the scale's division. */
  public record Amount(Mass mass) implements Term {}

  /** Text as it stands. */
  public record Text(String text) implements Term {}

  /** A share, to be shown per cent. */
  public record Percent(Fraction share) implements Term {}
}
