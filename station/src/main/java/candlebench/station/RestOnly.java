package candlebench.station;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Weighed;
import candlebench.shared.Stability;
import candlebench.station.link.LinkState;
import java.util.Optional;

/**
 * Notices a scale that sends only at rest, which is too late for a pour: its line falls silent again and again, and it never says that it
 * moves. Many scales leave the factory so.
 */
final class RestOnly {

  /** One silence may be a scale that slept. */
  private static final int SILENCES = 2;

  private boolean silent;
  private int silences;
  private Optional<String> lastShown = Optional.empty();

  void changed(LinkState state) {
    switch (state) {
      case SILENT -> {
        silent = true;
        lastShown = Optional.empty();
      }
      case LIVE -> {
        if (silent) silences++;
        silent = false;
      }
      case LOST, HELD, DENIED, TELNET -> forget();
      case CONNECTING, GARBLED -> {}
    }
  }

  void heard(Decoded decoded) {
    if (saysItMoves(decoded)) forget();
    if (decoded instanceof Weighed weighed)
      lastShown = Optional.of(weighed.indication().number());
  }

  boolean holds() {
    return silences >= SILENCES;
  }

  /** It says so, or it states no rest and shows one number after another. */
  private boolean saysItMoves(Decoded decoded) {
    if (decoded instanceof Decoded.StatusOnly status)
      return status.stability() == Stability.UNSTABLE;
    if (!(decoded instanceof Weighed weighed)) return false;
    return switch (weighed.stability()) {
      case UNSTABLE -> true;
      case STABLE -> false;
      case UNSTATED ->
        lastShown.isPresent() && !lastShown.get().equals(weighed.indication().number());
    };
  }

  private void forget() {
    silent = false;
    silences = 0;
    lastShown = Optional.empty();
  }
}
