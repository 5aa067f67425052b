package candlebench.web;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/**
 * A QR code (ISO/IEC 18004) as the path of a picture, one unit to a module.
 *
 * @param size modules to a side, with the quiet zone of four around it
 * @param path one stroke-free shape for each run of dark modules
 */
record QrPath(int size, String path) {
  private static final int QUIET = 4;

  static QrPath of(String text) {
    try {
      BitMatrix bits = new QRCodeWriter()
          .encode(
              text,
              BarcodeFormat.QR_CODE,
              0,
              0,
              Map.of(
                  EncodeHintType.MARGIN,
                  QUIET,
                  EncodeHintType.ERROR_CORRECTION,
                  ErrorCorrectionLevel.M));
      return new QrPath(bits.getWidth(), path(bits));
    } catch (WriterException tooLong) {
      throw new IllegalArgumentException("too long for a QR code: " + text, tooLong);
    }
  }

  private static String path(BitMatrix bits) {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < bits.getHeight(); y++) {
      for (int x = 0; x < bits.getWidth(); x++) {
        if (!bits.get(x, y)) continue;
        int from = x;
        while (x < bits.getWidth() && bits.get(x, y)) x++;
        path.append('M')
            .append(from)
            .append(' ')
            .append(y)
            .append('h')
            .append(x - from)
            .append("v1H")
            .append(from)
            .append('z');
      }
    }
    return path.toString();
  }
}
