package candlebench.protocol.formats;

import candlebench.shared.Basis;
import java.util.Optional;

/** The second header of the indicators: what the number is. */
enum AndLoad {
  GROSS(Basis.GROSS),
  NET(Basis.NET),
  TARE(Basis.UNSTATED),
  TOTAL(Basis.UNSTATED);

  private final Basis basis;

  AndLoad(Basis basis) {
    this.basis = basis;
  }

  /** Takes the header and the separator behind it. */
  static Optional<AndLoad> take(LineText line) {
    Optional<AndLoad> load = read(line);
    if (load.isEmpty() || !AndFormat.isSeparator(line.charAt(line.place() + 2)))
      return Optional.empty();
    line.moveTo(line.place() + 3);
    return load;
  }

  Basis basis() {
    return basis;
  }

  private static Optional<AndLoad> read(LineText line) {
    if (line.comes("GS") || line.comes("G ")) return Optional.of(GROSS);
    if (line.comes("NT") || line.comes("N ")) return Optional.of(NET);
    if (line.comes("TR") || line.comes("T ") || line.comes("PT")) return Optional.of(TARE);
    if (line.comes("TW") || line.comes("TN")) return Optional.of(TOTAL);
    return Optional.empty();
  }
}
