package candlebench.station.guidance;

/** Which weighing of a batch: a part, more of a part as a remedy, or a vessel; numbered from zero. */
public record Place(Kind kind, int number) {
  public enum Kind {
    PART,
    MORE,
    VESSEL
  }

  @Override
  public String toString() {
    return kind.name().toLowerCase(java.util.Locale.ROOT) + " " + (number + 1);
  }
}
