package candlebench.station;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.protocol.ScaleCommand;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.station.link.Counters;
import candlebench.station.link.LinkReport;
import candlebench.station.link.LinkState;
import candlebench.station.link.ScaleSettings;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.StationView.ScaleView;
import java.util.Locale;
import java.util.Optional;

/** What one scale last showed, as a page is to see it, whatever guidance makes of it. */
final class ScaleDial {

  /** Later than this a frame is dealt with, and the bench is said to be behind. */
  private static final long BEHIND_NANOS = 500_000_000L;

  private static final long NANOS_PER_MILLI = 1_000_000L;

  private final String name;
  private final ScaleSettings settings;
  private final Counters counters;
  private final RestOnly restOnly = new RestOnly();
  private LinkReport report = LinkReport.of(LinkState.CONNECTING);
  private String shown = "";
  private String unit = "";
  private String stability = "";
  private boolean unitAssumed;
  private boolean heard;
  private long heardNanos;
  private boolean behind;

  ScaleDial(String name, ScaleSettings settings, Counters counters) {
    this.name = name;
    this.settings = settings;
    this.counters = counters;
  }

  void changed(LinkReport now) {
    report = now;
    restOnly.changed(now.state());
  }

  /**
   * Takes a frame in.
   *
   * @param unitUnlessNamed the unit of a number that names none
   * @param now when it is dealt with
   */
  void heard(Frame frame, Decoded decoded, Optional<MassUnit> unitUnlessNamed, long now) {
    restOnly.heard(decoded);
    behind = now - frame.stamp().nanos() > BEHIND_NANOS;
    if (decoded instanceof Decoded.Weighed weighed) {
      Indication indication = weighed.indication();
      unitAssumed = indication.unit().isEmpty() && unitUnlessNamed.isPresent();
      String symbol =
          indication.unit().or(() -> unitUnlessNamed).map(MassUnit::symbol).orElse("");
      show(frame, indication.number(), symbol, weighed.stability().name());
    } else if (decoded instanceof Decoded.OutOfRange beyond) {
      show(frame, "", "", beyond.side() + "LOAD");
    } else if (decoded instanceof Decoded.InstrumentFault) {
      show(frame, "", "", "fault");
    } else if (decoded instanceof Decoded.StatusOnly status) {
      show(frame, "", "", status.stability().name());
    } else if (decoded instanceof Decoded.NotALoad line) {
      switch (line.matter()) {
        case TOTAL, REMARK -> {}
        case PIECES, PERCENT, FORCE, DENSITY, OTHER_UNIT, BLANK -> show(frame, "", "", "");
      }
    }
  }

  ScaleView view(long now) {
    return new ScaleView(
        name,
        report.state().name().toLowerCase(Locale.ROOT),
        settings.format().id(),
        shown,
        unit,
        stability,
        heard ? Math.max(0, now - heardNanos) / NANOS_PER_MILLI : -1,
        unitAssumed,
        counters.frames(),
        counters.refused(),
        trouble());
  }

  private void show(Frame frame, String number, String symbol, String rest) {
    shown = number;
    unit = symbol;
    stability = rest.toLowerCase(Locale.ROOT);
    unitAssumed &= !number.isEmpty();
    heard = true;
    heardNanos = frame.stamp().nanos();
  }

  private Optional<Say> trouble() {
    boolean lateForAPour = restOnly.holds()
        && (report.state() == LinkState.LIVE || report.state() == LinkState.SILENT);
    if (lateForAPour) return Optional.of(Say.of(sendsOnlyAtRest()));
    return switch (report.state()) {
      case CONNECTING -> Optional.empty();
      case LIVE -> behind ? Optional.of(Say.of("scale.behind")) : Optional.empty();
      case SILENT, GARBLED, LOST, HELD, DENIED, TELNET ->
        Optional.of(
            new Say("scale." + report.state().name().toLowerCase(Locale.ROOT), report.with()));
    };
  }

  private String sendsOnlyAtRest() {
    boolean canBeAsked = settings.format().command(ScaleCommand.SEND).isPresent();
    return canBeAsked ? "scale.rest-only" : "scale.rest-only-unasked";
  }
}
