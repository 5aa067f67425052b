package candlebench.station.batch.planning;

/**
 * Something that a plan says for or against itself.
 *
 * @param subject what it is about, such as a part or a pot
 * @param words the figures, and what to do
 */
public record Finding(Severity severity, Rule rule, String subject, String words) {

  static Finding refused(Rule rule, String subject, String words) {
    return new Finding(Severity.REFUSED, rule, subject, words);
  }

  static Finding warned(Rule rule, String subject, String words) {
    return new Finding(Severity.WARNED, rule, subject, words);
  }

  static Finding noted(Rule rule, String subject, String words) {
    return new Finding(Severity.NOTED, rule, subject, words);
  }

  public boolean refuses() {
    return severity == Severity.REFUSED;
  }
}
