package candlebench.station.guidance;

import java.util.Locale;

/** Which weighing of a batch: a part, more of a part as a remedy, mix split off, or a vessel; numbered from zero. */
public record Place(Kind kind, int number) {
  public enum Kind {
    PART,
    MORE,
    SPLIT_OFF,
    VESSEL
  }

  /** As it is written down, numbered from one: {@code part 2}, {@code split-off 1}. */
  @Override
  public String toString() {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-') + " " + (number + 1);
  }

  /** The reverse of {@link #toString}. */
  public static Place parse(String text) {
    int space = text.indexOf(' ');
    if (space < 0) throw new IllegalArgumentException("not a place: '" + text + "'");
    String kind = text.substring(0, space).toUpperCase(Locale.ROOT).replace('-', '_');
    return new Place(Kind.valueOf(kind), Integer.parseInt(text.substring(space + 1)) - 1);
  }
}
