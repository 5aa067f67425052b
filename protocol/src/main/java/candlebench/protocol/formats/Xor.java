package candlebench.protocol.formats;

/**
 * A checksum: the exclusive or of all bytes from a place up to here, as the byte itself or as two hexadecimal digits in capitals.
 *
 * @param from the place of the first byte that counts
 * @param inHex whether it is two hexadecimal digits
 */
record Xor(int from, boolean inHex) implements Field {
  private static final String HEX = "0123456789ABCDEF";

  /** As the byte itself. */
  static Xor asByte(int from) {
    return new Xor(from, false);
  }

  /** As two hexadecimal digits, the high one first. */
  static Xor inHex(int from) {
    return new Xor(from, true);
  }

  @Override
  public int width() {
    return inHex ? 2 : 1;
  }

  @Override
  public void take(LineText line, Draft draft) {
    int sum = 0;
    for (int at = from; at < line.place(); at++) sum ^= line.charAt(at);
    boolean right = inHex
        ? line.next() == high(sum) && line.charAt(line.place() + 1) == low(sum)
        : line.next() == sum;
    if (right) line.moveTo(line.place() + width());
    else draft.stop(line.wrongChecksum());
  }

  @Override
  public boolean write(Statement statement, StringBuilder text) {
    write(text);
    return true;
  }

  void write(StringBuilder text) {
    int sum = 0;
    for (int at = from; at < text.length(); at++) sum ^= text.charAt(at);
    if (inHex) text.append(high(sum)).append(low(sum));
    else text.append((char) sum);
  }

  private static char high(int sum) {
    return HEX.charAt(sum >> 4 & 0xF);
  }

  private static char low(int sum) {
    return HEX.charAt(sum & 0xF);
  }
}
