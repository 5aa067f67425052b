package candlebench.protocol.formats;

import java.util.Locale;

/**
 * The fields of {@link CasTables} that say nothing about the load: they are read whatever they hold, so that no lamp, relay or number of a
 * device is ever taken for a comma or a line end.
 *
 * @param kind what it is
 */
record CasByte(Kind kind) implements Field {
  private static final int LIT = 0x80;
  private static final int BIT_5 = 0x20;

  private enum Kind {
    DEVICE,
    LAMPS,
    LAMPS_WITHOUT_BIT_5,
    RELAYS,
    ADDRESS
  }

  /** The number of the device and 30h in one byte: device 13 is an equals sign. */
  static CasByte device() {
    return new CasByte(Kind.DEVICE);
  }

  /**
   * Lamps, one bit each: 7 always set, 6 stable, 4 hold, 3 printer, 2 gross, 1 tare set, 0 zero.
   *
   * @param bitFive whether bit 5 is set too, as on CI-400 and CI-150A
   */
  static CasByte lamps(boolean bitFive) {
    return new CasByte(bitFive ? Kind.LAMPS : Kind.LAMPS_WITHOUT_BIT_5);
  }

  static CasByte blankOrRelays() {
    return new CasByte(Kind.RELAYS);
  }

  /** An address of two digits. */
  static CasByte address() {
    return new CasByte(Kind.ADDRESS);
  }

  @Override
  public int width() {
    return kind == Kind.ADDRESS ? 2 : 1;
  }

  @Override
  public void take(LineText line, Draft draft) {
    switch (kind) {
      case LAMPS, LAMPS_WITHOUT_BIT_5 -> {
        if (line.next() < LIT)
          draft.stop(line.notThisFormat(
              "bit 7 of the lamps is always set: read the line with 8 data bits"));
      }
      case ADDRESS -> {
        if (!LineText.isDigit(line.next()) || !LineText.isDigit(line.charAt(line.place() + 1)))
          draft.stop(line.unknownHeader());
      }
      case DEVICE, RELAYS -> {}
    }
    line.moveTo(line.place() + width());
  }

  @Override
  public boolean write(Statement statement, StringBuilder text) {
    int address = statement.scale().address();
    switch (kind) {
      case DEVICE -> text.append((char) ('0' + address));
      case RELAYS -> text.append(' ');
      case ADDRESS -> text.append(String.format(Locale.ROOT, "%02d", address));
      case LAMPS -> text.append((char) (lamps(statement) | BIT_5));
      case LAMPS_WITHOUT_BIT_5 -> text.append((char) lamps(statement));
    }
    return true;
  }

  private static int lamps(Statement statement) {
    boolean zero = statement.number().filter(Fields::isZero).isPresent();
    return LIT
        | (statement.is(Say.STABLE) ? 0x40 : 0)
        | (statement.is(Say.NET) ? 2 : 4)
        | (zero && !statement.is(Say.NET) ? 1 : 0);
  }
}
