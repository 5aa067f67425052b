package candlebench.protocol;

/**
 * What bit 7 of the bytes heard is, when a line is heard with 8 data bits and no parity. On a line of 7 data bits it is what the sender
 * put after them.
 */
public enum BitSeven {
  /** Clear: 8 data bits, or 7 and space parity. */
  CLEAR("8N1"),
  /** It makes the number of ones even. */
  EVEN("7E1"),
  /** It makes the number of ones odd. */
  ODD("7O1"),
  /** Set: 7 data bits and two stop bits, or mark parity. */
  SET("7N2"),
  /** None of these: not text, or heard at a wrong speed. */
  MIXED("");

  /** Of a hundred bytes so many must agree: a byte of lamps or a hit byte now and then changes nothing. */
  private static final int PERCENT = 90;

  private final String line;

  BitSeven(String line) {
    this.line = line;
  }

  /** Data bits, parity and stop bits that the sender seems to use, such as {@code 7E1}; empty where that cannot be said. */
  public String line() {
    return line;
  }

  static BitSeven of(byte[] bytes, int length) {
    int clear = 0;
    int even = 0;
    for (int at = 0; at < length; at++) {
      if (bytes[at] >= 0) clear++;
      if (Integer.bitCount(bytes[at] & 0xFF) % 2 == 0) even++;
    }
    int enough = (length * PERCENT + 99) / 100;
    if (clear >= enough) return CLEAR;
    if (even >= enough) return EVEN;
    if (length - even >= enough) return ODD;
    return length - clear >= enough ? SET : MIXED;
  }
}
