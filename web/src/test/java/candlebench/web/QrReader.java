package candlebench.web;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a printed QR code back: the path is drawn dot by dot and looked at. */
final class QrReader {
  private static final int DOTS = 8;
  private static final Pattern RUN = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1H\\d+z");

  private QrReader() {}

  static String read(int size, String path) throws ReaderException {
    int[] picture = new int[size * size * DOTS * DOTS];
    java.util.Arrays.fill(picture, 0xFFFFFF);
    Matcher runs = RUN.matcher(path);
    while (runs.find())
      fill(
          picture,
          size * DOTS,
          Integer.parseInt(runs.group(1)),
          Integer.parseInt(runs.group(2)),
          Integer.parseInt(runs.group(3)));
    BinaryBitmap bitmap = new BinaryBitmap(
        new HybridBinarizer(new RGBLuminanceSource(size * DOTS, size * DOTS, picture)));
    return new QRCodeReader()
        .decode(bitmap, Map.of(DecodeHintType.TRY_HARDER, true))
        .getText();
  }

  private static void fill(int[] picture, int width, int x, int y, int modules) {
    for (int row = y * DOTS; row < (y + 1) * DOTS; row++)
      for (int column = x * DOTS; column < (x + modules) * DOTS; column++)
        picture[row * width + column] = 0;
  }
}
