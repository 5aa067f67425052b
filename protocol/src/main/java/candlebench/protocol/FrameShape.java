package candlebench.protocol;

/**
 * A message of a fixed length with known bytes at known places, drawn as a picture of it: {@code "\u0002???\r"} is STX, any three bytes, and
 * CR. So a byte that means something else elsewhere, such as a checksum that happens to be STX, misleads nobody.
 */
public final class FrameShape implements Ending {
  private static final char ANY = '?';

  private final String picture;
  private final int significantBits;

  private FrameShape(String picture, int significantBits) {
    if (picture.isEmpty() || picture.length() > Framer.LONGEST_MESSAGE)
      throw new IllegalArgumentException("a message has 1 to " + Framer.LONGEST_MESSAGE
          + " bytes, this picture " + picture.length());
    this.picture = picture;
    this.significantBits = significantBits;
  }

  /** Of 7-bit characters, bit 7 being parity if anything. */
  public static FrameShape ofSevenBits(String picture) {
    return new FrameShape(picture, 0x7F);
  }

  /** Of bytes in which bit 7 counts. */
  public static FrameShape ofEightBits(String picture) {
    return new FrameShape(picture, 0xFF);
  }

  @Override
  public int lengthOfMessage(byte[] gathered, int length) {
    int start = length - picture.length();
    if (start < 0) return 0;
    for (int at = picture.length() - 1; at >= 0; at--) {
      char mark = picture.charAt(at);
      if (mark != ANY && mark != (gathered[start + at] & significantBits)) return 0;
    }
    return picture.length();
  }
}
