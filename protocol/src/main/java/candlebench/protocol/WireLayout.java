package candlebench.protocol;

import candlebench.shared.MassUnit;
import java.util.Optional;

/**
 * One way a format lays out its frames, for writing them: tests and the simulator speak through it.
 *
 * <p>A format may have several layouts that its decoder tells apart by itself. The decoder never needs to know which is sent.
 */
public interface WireLayout {

  /** The layout's name within its format, such as {@code standard} or {@code csv}. */
  String name();

  /**
   * The frame that says this, byte for byte as the instrument would send it, or empty where the layout cannot say it.
   *
   * @param shown how the instrument shows weights now: what an overload frame's digits and unit follow from
   */
  Optional<byte[]> encode(Decoded said, Shown shown);

  /** How an instrument shows weights: unit, decimals, and its address on a shared line where it has one. */
  record Shown(MassUnit unit, int decimals, int address) {}
}
