package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.station.batch.Product;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/**
 * What guidance is told of the bench before it starts.
 *
 * @param scales in the order in which inputs number them
 * @param pots the pots whose empty weight is known; may be none
 * @param products what can be started
 * @param zone where the bench stands, for the date in a batch's code
 */
public record BenchSetup(
    List<Scale> scales,
    List<Pot> pots,
    List<? extends Product> products,
    Timing timing,
    ZoneId zone) {

  public BenchSetup {
    scales = List.copyOf(scales);
    pots = List.copyOf(pots);
    products = List.copyOf(products);
    if (scales.isEmpty()) throw new IllegalArgumentException("a bench needs at least one scale");
  }

  /** One scale of unknown step and capacity, no known pots, the usual times, and the day by UTC. */
  public static BenchSetup of(List<? extends Product> products) {
    return new BenchSetup(
        List.of(Scale.named("scale")), List.of(), products, Timing.USUAL, ZoneOffset.UTC);
  }

  Optional<Product> product(String id) {
    return products.stream()
        .<Product>map(known -> known)
        .filter(known -> known.id().equals(id))
        .findFirst();
  }

  /**
   * A scale.
   *
   * @param division its step, where it is not one of the last digit shown
   * @param capacity what it can carry, if known
   */
  public record Scale(String name, Optional<Division> division, Optional<Mass> capacity) {
    public static Scale named(String name) {
      return new Scale(name, Optional.empty(), Optional.empty());
    }
  }

  /**
   * A pot whose empty weight is known.
   *
   * @param room the most it should hold; zero where not known
   */
  public record Pot(String name, Mass empty, Mass room) {}

  /**
   * The times that can be adjusted.
   *
   * @param countIn between settled and taken, to be heard
   * @param undo how long the last step may be taken back
   */
  public record Timing(Duration countIn, Duration undo) {
    /** Longer than this is no time at a bench but a slip of the finger. */
    public static final BigDecimal MOST_SECONDS = BigDecimal.valueOf(120);

    public static final Timing USUAL = new Timing(Duration.ofSeconds(2), Duration.ofSeconds(10));

    public Timing {
      for (Duration time : new Duration[] {countIn, undo})
        if (time.isNegative() || time.compareTo(Duration.ofSeconds(MOST_SECONDS.longValue())) > 0)
          throw new IllegalArgumentException(
              "count-in and undo take 0 to " + MOST_SECONDS + " seconds, not " + time.toSeconds());
    }
  }
}
