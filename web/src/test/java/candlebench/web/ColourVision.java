package candlebench.web;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;

/**
 * How colours look to an eye that lacks one kind of cone. Matrices over linear RGB: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A
 * physiologically-based model for simulation of color vision deficiency", IEEE Transactions on Visualization and Computer Graphics 15
 * (2009), severity 1.0; digits from memory, held against the browser's own simulation by a test. The transfer of sRGB: IEC 61966-2-1.
 */
enum ColourVision {
  USUAL(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}),
  PROTANOPIA(new double[][] {
    {0.152286, 1.052583, -0.204868},
    {0.114503, 0.786281, 0.099216},
    {-0.003882, -0.048116, 1.051998}
  }),
  DEUTERANOPIA(new double[][] {
    {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
  }),
  TRITANOPIA(new double[][] {
    {1.255528, -0.076749, -0.178779},
    {-0.078411, 0.930809, 0.147602},
    {0.004733, 0.691367, 0.303900}
  });

  private static final double[] LINEAR = new double[256];

  static {
    for (int level = 0; level < 256; level++) {
      double share = level / 255.0;
      LINEAR[level] = share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
  }

  private final double[][] matrix;

  ColourVision(double[][] matrix) {
    this.matrix = matrix;
  }

  /** The matrix by rows, as a page can be given it. */
  List<List<Double>> rows() {
    return Arrays.stream(matrix).map(row -> Arrays.stream(row).boxed().toList()).toList();
  }

  /** A picture as this eye sees it. */
  BufferedImage of(BufferedImage picture) {
    BufferedImage seen =
        new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < picture.getHeight(); y++)
      for (int x = 0; x < picture.getWidth(); x++) seen.setRGB(x, y, of(picture.getRGB(x, y)));
    return seen;
  }

  /** A colour as this eye sees it, as 0xRRGGBB. */
  int of(int rgb) {
    double[] linear = {LINEAR[rgb >> 16 & 255], LINEAR[rgb >> 8 & 255], LINEAR[rgb & 255]};
    int seen = 0;
    for (double[] row : matrix)
      seen = seen << 8 | level(row[0] * linear[0] + row[1] * linear[1] + row[2] * linear[2]);
    return seen;
  }

  /** The lightness of a colour, 0 to 100: CIE 1976 L*, from the luminance of sRGB. */
  static double lightness(int rgb) {
    double y = 0.2126 * LINEAR[rgb >> 16 & 255]
        + 0.7152 * LINEAR[rgb >> 8 & 255]
        + 0.0722 * LINEAR[rgb & 255];
    return y <= 216.0 / 24389 ? y * 24389 / 27 : 116 * Math.cbrt(y) - 16;
  }

  private static int level(double linear) {
    double share = Math.min(1, Math.max(0, linear));
    double shown = share <= 0.0031308 ? share * 12.92 : 1.055 * Math.pow(share, 1 / 2.4) - 0.055;
    return (int) Math.round(shown * 255);
  }
}
