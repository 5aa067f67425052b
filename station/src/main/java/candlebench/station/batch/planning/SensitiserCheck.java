package candlebench.station.batch.planning;

import candlebench.station.batch.Fraction;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A sensitiser's share of the finished candle, against the limits of CLP: an aid for reading the supplier's sheet, no classification.
 * What several parts bring of one substance is added up; different substances are not (Annex I, 3.4.3.3.1: each is compared alone).
 *
 * @param share of the total, exact
 */
public record SensitiserCheck(Sensitiser sensitiser, Fraction share) {

  /** What is true of every such comparison. */
  public static final String CAUTION =
      "An aid for reading the supplier's sheet, no classification: it compares only the sensitisers typed in, at the planned load. "
          + "The sheet in force and the law where the candle is sold decide.";

  /** How it stands to the limits; a share that equals a limit has reached it. */
  public enum Standing {
    CLASSIFIES,
    NAMED,
    BELOW
  }

  static List<SensitiserCheck> of(Formula formula) {
    Map<String, SensitiserCheck> byName = new LinkedHashMap<>();
    for (Ingredient part : formula.ingredients())
      for (Sensitiser each : part.sensitisers()) {
        Fraction share = formula.ofTotal(part).times(each.content());
        byName.merge(each.name(), new SensitiserCheck(each, share), SensitiserCheck::plus);
      }
    return new ArrayList<>(byName.values());
  }

  private SensitiserCheck plus(SensitiserCheck more) {
    return new SensitiserCheck(sensitiser, share.plus(more.share));
  }

  public Standing standing() {
    if (share.compareTo(sensitiser.classifiesFrom()) >= 0) return Standing.CLASSIFIES;
    return share.compareTo(sensitiser.namedFrom()) >= 0 ? Standing.NAMED : Standing.BELOW;
  }

  Optional<Finding> finding() {
    String words =
        Wording.percent(share) + " of total; category " + sensitiser.category().symbol() + ", ";
    return switch (standing()) {
      case CLASSIFIES ->
        Optional.of(Finding.warned(
            Rule.SENSITISER_CLASSIFIES,
            sensitiser.name(),
            words + "from " + Wording.percent(sensitiser.classifiesFrom())
                + " on the candle is classified (H317)."));
      case NAMED ->
        Optional.of(Finding.noted(
            Rule.SENSITISER_NAMED,
            sensitiser.name(),
            words + "from " + Wording.percent(sensitiser.namedFrom())
                + " on the label names it (EUH208)."));
      case BELOW -> Optional.empty();
    };
  }
}
