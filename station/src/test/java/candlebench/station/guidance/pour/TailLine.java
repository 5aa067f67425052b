package candlebench.station.guidance.pour;

import candlebench.station.guidance.pour.TailFit.Prior;
import java.util.Optional;

/** The guidance's own line, with nothing known beforehand, so that it can be set beside other estimators. */
public final class TailLine {
  private static final double FADING = 1.5;
  private final double noise;
  private Optional<StreamLine> line = Optional.empty();

  public TailLine(double noise) {
    this.noise = noise;
  }

  public void seen(double seconds, double grams) {
    StreamLine so = line.orElseGet(() -> StreamLine.begin(seconds, unknown(grams), FADING, noise));
    line = Optional.of(so.seen(
        seconds, grams, (before, at, shown, up) -> before.anew(at, unknown(shown), FADING)));
  }

  private static Prior unknown(double grams) {
    return new Prior(grams, 2, 3, 5, 3);
  }

  public double grams() {
    return line.map(so -> so.grams(so.newest())).orElse(0.0);
  }

  public double gramsPerSecond() {
    return line.map(StreamLine::flow).orElse(0.0);
  }
}
