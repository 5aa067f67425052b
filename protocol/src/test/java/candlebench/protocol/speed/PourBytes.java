package candlebench.protocol.speed;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.WireLayout.Shown;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** The bytes of some pours in a format's usual layout: rests, moving numbers, a few below zero, now and then an overload. */
final class PourBytes {
  static final int FRAMES = 1000;

  private static final Shown SHOWN = new Shown(MassUnit.GRAM, 1, 0);

  private PourBytes() {}

  static byte[] of(String id) {
    ScaleFormat format = ScaleFormats.of(id);
    WireLayout layout = format.layouts().get(0);
    SplittableRandom random = new SplittableRandom(11);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int frames = 0, tenths = -30;
        frames < FRAMES;
        tenths = (tenths + random.nextInt(40)) % 30_000) {
      boolean stable = random.nextInt(3) == 0;
      Optional<byte[]> frame = frames % 100 == 99
          ? layout.encode(new OutOfRange(Side.OVER, outBasis(id)), SHOWN)
          : encoded(layout, id, BigDecimal.valueOf(tenths, 1).toPlainString(), stable);
      if (frame.isEmpty()) frame = encoded(layout, id, "0.0", true);
      bytes.writeBytes(frame.orElseThrow());
      frames++;
    }
    return bytes.toByteArray();
  }

  private static Optional<byte[]> encoded(
      WireLayout layout, String id, String number, boolean stable) {
    Stability stability = stable ? Stability.STABLE : Stability.UNSTABLE;
    List<Decoded> ways = new ArrayList<>();
    for (Indication shown :
        List.of(Indication.of(number, MassUnit.GRAM), Indication.withoutUnit(number)))
      ways.add(new Weighed(shown, basis(id), stability));
    return ways.stream().flatMap(way -> layout.encode(way, SHOWN).stream()).findFirst();
  }

  private static Basis basis(String id) {
    return switch (id) {
      case "sics" -> Basis.NET;
      case "cas/18", "kern/comma" -> Basis.GROSS;
      default -> Basis.UNSTATED;
    };
  }

  /** Replies of weights are net by definition; that the range was left is no weight. */
  private static Basis outBasis(String id) {
    return id.equals("sics") ? Basis.UNSTATED : basis(id);
  }
}
