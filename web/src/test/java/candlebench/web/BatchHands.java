package candlebench.web;

import candlebench.shared.Mass;
import candlebench.simulator.Hands;
import candlebench.simulator.Held;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.PourKind;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A maker's hands through a whole batch: they take up what the page's heading names, and pour and put in what its signal says. What was
 * lifted off is kept with its true weight.
 */
final class BatchHands implements Hands {
  static final Mass POT = Mass.ofGrams("412.3");
  private static final Pattern VESSEL = Pattern.compile("Put empty vessel (\\d+) of \\d+.*");
  private static final Mass SLAB = Mass.ofGrams("60");
  private static final long HANDS_NANOS = 4_000_000_000L;

  private final VirtualMaker maker;
  private final Map<String, Mass> vessels = new TreeMap<>();
  private final Map<String, Mass> filled = new TreeMap<>();
  private final List<Mass> inPot = new ArrayList<>();
  private Optional<Held> potAside = Optional.of(new Held("pot", POT, false));
  private volatile String heading = "";
  private long nextSlab;

  BatchHands(VirtualMaker maker) {
    this.maker = maker;
  }

  /** Hands that pour at about half the usual flow, for a page and a machine that may be slow. */
  static BatchHands slow() {
    return new BatchHands(new VirtualMaker(
        new MakerTraits(0.35, 0, 0.07, 0.5, 1, 0.5, 0, 0.030, 1.3), Slips.none(), 5, 0));
  }

  /** What the page says to do. */
  void read(String what) {
    heading = what;
  }

  /** The vessels that were lifted off, with what is in them; asked for on the bench's own thread. */
  Map<String, Mass> contents() {
    Map<String, Mass> contents = new TreeMap<>();
    filled.forEach((name, mass) -> contents.put(name, mass.minus(vessels.get(name))));
    return contents;
  }

  /** What was in the pot whenever it was put aside. */
  List<Mass> inPot() {
    return List.copyOf(inPot);
  }

  @Override
  public void advanceTo(long nanos, Perceived perceived, Pan pan) {
    maker.advanceTo(nanos, told(nanos, perceived, pan), pan);
  }

  @Override
  public boolean isPouring() {
    return maker.isPouring();
  }

  private Perceived told(long nanos, Perceived perceived, Pan pan) {
    String now = heading;
    Matcher vessel = VESSEL.matcher(now);
    if (vessel.matches()) return vesselOn("vessel " + vessel.group(1), pan);
    if (now.startsWith("Set out") || now.startsWith("Put the empty pot") || isPotBack(now))
      return potOn(pan);
    if (now.startsWith("Take the pot off") || now.startsWith("Lift vessel")) return off(pan);
    if (perceived.told() == Told.PIECES) slab(nanos, perceived, pan);
    maker.takes(now.startsWith("Fill") ? PourKind.WAX_PITCHER : PourKind.OIL_BOTTLE);
    return perceived;
  }

  private static boolean isPotBack(String now) {
    return now.startsWith("Put the pot back");
  }

  private Perceived potOn(Pan pan) {
    if (pan.holds("pot")) return Perceived.told(Told.WAIT);
    potAside.ifPresent(held -> maker.hand(held.thing(), held.mass(), held.hot()));
    potAside = Optional.empty();
    return Perceived.told(Told.PLACE);
  }

  private Perceived vesselOn(String name, Pan pan) {
    if (pan.receiver().filter(thing -> !thing.equals(name)).isPresent()) return off(pan);
    aside();
    if (pan.holds(name)) return Perceived.told(Told.WAIT);
    if (maker.held().isEmpty()) {
      vessels.putIfAbsent(name, Mass.ofGrams(Integer.toString(170 + 7 * vessels.size())));
      maker.hand(name, vessels.get(name), false);
    }
    return Perceived.told(Told.PLACE);
  }

  private Perceived off(Pan pan) {
    aside();
    return Perceived.told(pan.receiver().isPresent() ? Told.LIFT : Told.WAIT);
  }

  /** Puts aside what is to go there: the pot, or a vessel that is filled. */
  private void aside() {
    maker.held().ifPresent(held -> {
      if (held.thing().equals("pot")) {
        potAside = Optional.of(held);
        inPot.add(held.mass().minus(POT));
      } else if (held.mass().isMoreThan(vessels.get(held.thing())))
        filled.put(held.thing(), held.mass());
      else return;
      maker.putAside();
    });
  }

  /** Far from the target a slab goes in, four fifths of what is missing; the rest piece by piece. */
  private void slab(long nanos, Perceived perceived, Pan pan) {
    double toGo = perceived.toGo().orElse(0);
    if (toGo < SLAB.roughGrams() || nanos < nextSlab) return;
    nextSlab = nanos + HANDS_NANOS;
    pan.drop(Mass.ofGrams(Long.toString(Math.round(0.8 * toGo))), 0.02);
  }
}
