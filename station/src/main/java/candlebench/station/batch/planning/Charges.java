package candlebench.station.batch.planning;

/** Into how many charges a batch is split. */
public sealed interface Charges {

  /** The pots named are the pots used, each once. */
  record OnePerPot() implements Charges {}

  /** So many, the pots taking turns. */
  record Exactly(int count) implements Charges {

    public Exactly {
      if (count < 1) throw new IllegalArgumentException("a batch has at least one charge");
    }
  }

  /** As few as fit, the pots taking turns. */
  record Fewest() implements Charges {}
}
