package candlebench.simulator;

/** Whoever works at a pan, in injected time. */
public interface Hands {

  /**
   * Acts on the pan at a moment, knowing what is perceived there and then. Steps of 20 ms or less keep a pour's shape; the scale
   * advances to the same moment first.
   */
  void advanceTo(long nanos, Perceived perceived, Pan pan);

  /** Whether something flows from these hands. */
  boolean isPouring();
}
