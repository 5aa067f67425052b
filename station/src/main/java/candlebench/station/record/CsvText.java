package candlebench.station.record;

import java.util.regex.Pattern;

/**
 * A cell of text that a spreadsheet leaves as text.
 *
 * <p>A cell that begins with an equals sign, plus, minus, at, tab or line end is run as a formula, whoever wrote it (OWASP, "CSV
 * Injection"); one that looks like a number, a date or a truth value is changed without a word: lot 007 into 7, lot 3-4 into a day in
 * April, lot 1E5 into 100000. Such a cell gets an apostrophe in front, which a reader may take off again.
 */
final class CsvText {
  private static final String STARTS_A_FORMULA = "=+-@\t\r\n＝＋－＠";

  private static final Pattern NUMBER =
      Pattern.compile("[(]?[$€£]?[\\d.,  ']*\\d[\\d.,  ']*([eE][+-]?\\d+)?[)]?%?");
  private static final Pattern DATE_OR_TIME =
      Pattern.compile("\\d{1,4}([-/.:]\\d{1,4}){1,2}( \\d{1,2}:\\d{2}(:\\d{2})?)?( ?[aApP][mM]?)?");
  private static final Pattern NAMES_A_MONTH = Pattern.compile(
      "(\\d{1,4}[ ./-]?)?(jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?)\\.?([ ./-]?\\d{1,4})?",
      Pattern.CASE_INSENSITIVE);
  private static final Pattern TRUTH =
      Pattern.compile("true|false|wahr|falsch|vrai|faux", Pattern.CASE_INSENSITIVE);

  private CsvText() {}

  static String cell(String text) {
    String safe = wouldBeChanged(text) ? "'" + text : text;
    boolean quoted = safe.chars().anyMatch(c -> c == '"' || c == ',' || c == ';' || c < ' ')
        || !safe.equals(safe.strip());
    return quoted ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }

  private static boolean wouldBeChanged(String text) {
    String bare = text.strip();
    if (bare.isEmpty()) return !text.isEmpty() && isFormula(text);
    return isFormula(text)
        || isFormula(bare)
        || NUMBER.matcher(bare).matches()
        || DATE_OR_TIME.matcher(bare).matches()
        || NAMES_A_MONTH.matcher(bare).matches()
        || TRUTH.matcher(bare).matches();
  }

  private static boolean isFormula(String text) {
    return STARTS_A_FORMULA.indexOf(text.charAt(0)) >= 0;
  }
}
