package candlebench.protocol;

/** How a message is known by its last bytes, whatever stands before them. */
public interface Ending {

  /**
   * How many of the bytes gathered since the last message are a message that ends with the newest of them; 0 if none does.
   *
   * @param gathered not to be changed or kept; what counts is its first {@code length} bytes
   */
  int lengthOfMessage(byte[] gathered, int length);

  /** This one's message or, where it sees none, the other's. */
  default Ending or(Ending other) {
    return (gathered, length) -> {
      int found = lengthOfMessage(gathered, length);
      return found > 0 ? found : other.lengthOfMessage(gathered, length);
    };
  }

  /** A message begins with the nearest of these first bytes and ends with this last one; bit 7 is passed over if it is parity. */
  static Ending between(int first, int last, int significantBits) {
    return (gathered, length) -> {
      if ((gathered[length - 1] & significantBits) != last) return 0;
      int start = length - 1;
      while (start > 0 && (gathered[start] & significantBits) != first) start--;
      return length - start;
    };
  }

  /** All that was gathered is a line once CR LF ends it, but for the end of an earlier line before it. */
  static Ending ofLines() {
    return (gathered, length) -> {
      boolean ends = length > 1 && gathered[length - 1] == '\n' && gathered[length - 2] == '\r';
      if (!ends) return 0;
      int start = 0;
      while (start < length - 2 && (gathered[start] == '\n' || gathered[start] == '\r')) start++;
      return length - start;
    };
  }
}
