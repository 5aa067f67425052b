package candlebench.protocol.formats;

import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.util.Optional;

/** A weight shown in two parts, whole pounds and ounces, given in ounces with the decimals of its ounces. */
final class PoundsAndOunces {
  private static final BigDecimal OUNCES_PER_POUND = BigDecimal.valueOf(16);

  private PoundsAndOunces() {}

  /** 16 times the pounds and the ounces; a minus before the pounds is of both. */
  static Indication ounces(String pounds, String ounces) {
    boolean negative = pounds.startsWith("-");
    String whole = negative ? pounds.substring(1) : pounds;
    String sum = new BigDecimal(whole)
        .multiply(OUNCES_PER_POUND)
        .add(new BigDecimal(ounces))
        .toPlainString();
    return Indication.of(negative ? "-" + sum : sum, MassUnit.OUNCE);
  }

  /** Takes a number written {@code 2:05.3}, without its unit; empty where there is none. */
  static Optional<Indication> take(LineText line) {
    int start = line.place();
    Optional<String> pounds = line.number();
    boolean whole = pounds.isPresent() && !pounds.get().contains(".") && line.take(':');
    line.takeSpaces();
    Optional<String> ounces =
        whole && LineText.isDigit(line.next()) ? line.number() : Optional.empty();
    if (ounces.isEmpty()) line.moveTo(start);
    return ounces.map(part -> ounces(pounds.orElseThrow(), part));
  }
}
