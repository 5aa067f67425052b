package candlebench.protocol.formats;

import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.shared.MassUnit;
import java.util.List;
import java.util.Optional;

/**
 * What the text beside a number says of it: a unit of mass we weigh in, or what else the number is. Upper and lower case are equal.
 *
 * <p>Source: the symbols printed in the manuals named at the head of each format; their common stock is put together here.
 *
 * @param mass the unit, where it is one of those we weigh in
 * @param matter what the number is, where it is no load
 */
record WireUnit(Optional<MassUnit> mass, Optional<Matter> matter) {
  /** No unit named. */
  static final WireUnit NONE = new WireUnit(Optional.empty(), Optional.empty());

  private static final WireUnit PIECES = of(Matter.PIECES);
  private static final WireUnit OTHER = of(Matter.OTHER_UNIT);

  /** Packed symbols begin with this, so that none is the beginning of another. */
  private static final long START = 1;

  private record Row(long symbol, WireUnit unit) {}

  private static final List<Row> KNOWN = List.of(
      row("g", of(MassUnit.GRAM)),
      row("kg", of(MassUnit.KILOGRAM)),
      row("mg", of(MassUnit.MILLIGRAM)),
      row("oz", of(MassUnit.OUNCE)),
      row("lb", of(MassUnit.POUND)),
      row("ct", of(MassUnit.CARAT)),
      row("pc", PIECES),
      row("pcs", PIECES),
      row("%", of(Matter.PERCENT)),
      row("n", of(Matter.FORCE)),
      row("ds", of(Matter.DENSITY)),
      row("ozt", OTHER), // troy ounce
      row("dwt", OTHER), // pennyweight
      row("gn", OTHER), // grain
      row("gr", OTHER),
      row("grn", OTHER),
      row("t", OTHER), // tonne, or tola
      row("tn", OTHER), // ton
      row("tl", OTHER), // tael; the third letter tells whose
      row("tlh", OTHER),
      row("tls", OTHER),
      row("tlt", OTHER),
      row("tlc", OTHER),
      row("tol", OTHER), // tola
      row("mom", OTHER), // momme
      row("bat", OTHER), // baht
      row("msg", OTHER), // mesghal
      row("/lb", OTHER), // parts per pound
      row("c", OTHER)); // named without its meaning in an Ohaus list

  private static final int LONGEST = 5;
  private static final Row[] TABLE = KNOWN.toArray(Row[]::new);

  /** What the symbol in these characters says, or empty if it is unknown. No characters at all are {@link #NONE}. */
  static Optional<WireUnit> named(byte[] text, int from, int to) {
    if (from == to) return Optional.of(NONE);
    if (to - from > LONGEST) return Optional.empty();
    long symbol = START;
    for (int at = from; at < to; at++) symbol = symbol << 8 | lowerCase(text[at]);
    for (Row row : TABLE) if (row.symbol == symbol) return Optional.of(row.unit);
    return Optional.empty();
  }

  private static int lowerCase(byte c) {
    return c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c;
  }

  private static Row row(String symbol, WireUnit unit) {
    long packed = START;
    for (int at = 0; at < symbol.length(); at++) packed = packed << 8 | symbol.charAt(at);
    return new Row(packed, unit);
  }

  static WireUnit of(MassUnit unit) {
    return new WireUnit(Optional.of(unit), Optional.empty());
  }

  static WireUnit of(Matter matter) {
    return new WireUnit(Optional.empty(), Optional.of(matter));
  }
}
