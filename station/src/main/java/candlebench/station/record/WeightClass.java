package candlebench.station.record;

import candlebench.shared.Mass;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The accuracy classes of weights, from coarse to fine, with how far one may be off, in milligrams by nominal size.
 *
 * <p>Source: OIML R 111-1:2004, Table 1, sizes from 1 g to 5 kg; seen in two reproductions that agree.
 */
public enum WeightClass {
  M2("3", "4", "5", "6", "8", "10", "16", "30", "80", "160", "300", "800"),
  M1("1", "1.2", "1.6", "2", "2.5", "3", "5", "10", "25", "50", "100", "250"),
  F2("0.3", "0.4", "0.5", "0.6", "0.8", "1", "1.6", "3", "8", "16", "30", "80"),
  F1("0.1", "0.12", "0.16", "0.2", "0.25", "0.3", "0.5", "1", "2.5", "5", "10", "25"),
  E2("0.03", "0.04", "0.05", "0.06", "0.08", "0.1", "0.16", "0.3", "0.8", "1.6", "3", "8");

  private static final List<String> GRAMS =
      List.of("1", "2", "5", "10", "20", "50", "100", "200", "500", "1000", "2000", "5000");

  /** A weight is off by at most a third of what the scale may be off (OIML R 76-1:2006, 3.7.1). */
  private static final long SHARE = 3;

  private final List<Mass> errors;

  WeightClass(String... milligrams) {
    errors =
        Arrays.stream(milligrams).map(each -> Mass.ofGrams(each).times(1, 1000)).toList();
  }

  /** How far a weight of this class and nominal size may be off; none for a size that the table does not have. */
  public Optional<Mass> mostOff(Mass nominal) {
    for (int i = 0; i < GRAMS.size(); i++)
      if (Mass.ofGrams(GRAMS.get(i)).equals(nominal)) return Optional.of(errors.get(i));
    return Optional.empty();
  }

  /** The coarsest class of weight that will do to judge a scale which may be off by so much at this load; none where no class does. */
  public static Optional<WeightClass> coarsestFor(Mass nominal, Mass scaleMayBeOff) {
    return Arrays.stream(values())
        .filter(each -> each.mostOff(nominal)
            .filter(off -> !off.times(SHARE).isMoreThan(scaleMayBeOff))
            .isPresent())
        .min(Comparator.naturalOrder());
  }
}
