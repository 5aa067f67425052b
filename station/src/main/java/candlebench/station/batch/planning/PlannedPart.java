package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import java.util.Optional;

/**
 * A part of the whole batch, over all its charges.
 *
 * @param ofWax its share of all wax, exact
 * @param ofTotal its share of the total, exact
 * @param exact the sum of its targets
 * @param shown the sum of its targets as the scales can show them
 */
public record PlannedPart(
    Ingredient part,
    Fraction ofWax,
    Fraction ofTotal,
    Mass exact,
    Mass shown,
    Optional<OtherMeaning> otherMeaning) {}
