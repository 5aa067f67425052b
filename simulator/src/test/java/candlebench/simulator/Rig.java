package candlebench.simulator;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import candlebench.shared.Stamp;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** A virtual scale on its pan, with all that it said, read back through its format's own decoder. */
final class Rig {

  /** A message and the moment it arrived. */
  record Heard(long nanos, Decoded decoded) {
    double grams() {
      return weighed().indication().mass(MassUnit.GRAM).roughGrams();
    }

    String number() {
      return weighed().indication().number();
    }

    boolean isStable() {
      return weighed().stability() == Stability.STABLE;
    }

    Weighed weighed() {
      return (Weighed) decoded;
    }
  }

  static final ScaleFormat FORMAT = ScaleFormats.of("and");

  final Pan pan = new Pan();
  final VirtualScale scale;
  final List<Heard> heard = new ArrayList<>();
  private final Framer framer = FORMAT.newFramer();

  Rig(ScaleTraits traits, ScaleQuirks quirks, long seed) {
    scale = new VirtualScale(traits, quirks, FORMAT, layout("standard"), pan, seed);
  }

  static WireLayout layout(String name) {
    return FORMAT.layouts().stream()
        .filter(layout -> layout.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  void runFor(String seconds) {
    long until = scale.nanos() + new BigDecimal(seconds).movePointRight(9).longValueExact();
    scale.advanceTo(until, this::hear);
  }

  /** Runs on and gives only what is heard meanwhile. */
  List<Heard> during(String seconds) {
    int before = heard.size();
    runFor(seconds);
    return List.copyOf(heard.subList(before, heard.size()));
  }

  void send(String command) {
    scale.receive(command.getBytes(java.nio.charset.StandardCharsets.US_ASCII));
  }

  Heard last() {
    return heard.get(heard.size() - 1);
  }

  void hear(long nanos, byte[] bytes) {
    framer.feed(
        bytes,
        bytes.length,
        new Stamp(Instant.EPOCH.plusNanos(nanos), nanos),
        frame -> heard.add(new Heard(nanos, FORMAT.decode(frame))));
  }
}
