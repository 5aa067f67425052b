package candlebench.station.batch;

import candlebench.shared.Mass;
import candlebench.station.batch.Remedy.Kind;
import candlebench.station.batch.Remedy.WhyNot;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The remedies for a part poured over, computed from the recipe as it is and from what is really in the pot.
 *
 * <p>With f the part's share of the wax: x g over ask for x/f g more wax, and for as much more of each other part that is in already;
 * what is still to come follows the wax. Example worked by hand: 700 g wax and 61 g oil at 8 % of the
 * wax ask for 62.5 g more wax, 823.5 g in all. Of the total, 695.52 g and 65.48 g ask for 57.5 g.
 *
 * @param inPot what is in the pot, the part poured over included
 */
public record Remedies(BatchPlan plan, Map<Integer, Mass> inPot, int part, Room room) {

  public List<Remedy> all() {
    return List.of(addMore(), keep(), takeBack(), splitOff(), scrap());
  }

  private Part over() {
    return plan.recipe().parts().get(part);
  }

  private Remedy keep() {
    Mass total = plan.total(inPot);
    Fraction reached = reached(inPot);
    boolean overLimit =
        !over().limit().isZero() && !over().isWax() && reached.compareTo(over().limit()) > 0;
    return remedy(
        Kind.KEEP,
        Map.of(),
        Mass.ZERO,
        total,
        reached,
        overLimit ? Optional.of(WhyNot.OVER_LIMIT) : roomFor(total));
  }

  private Remedy addMore() {
    Map<Integer, Mass> more = more(inPot);
    Map<Integer, Mass> then = new TreeMap<>(inPot);
    more.forEach((which, mass) -> then.merge(which, mass, Mass::plus));
    Mass total = plan.total(then);
    Optional<WhyNot> whyNot = more.isEmpty() ? Optional.of(WhyNot.NOTHING_TO_ADD) : roomFor(total);
    return remedy(Kind.ADD_MORE, more, Mass.ZERO, total, reached(then), whyNot);
  }

  private Remedy takeBack() {
    Mass target = plan.target(part, without(part));
    Mass out = inPot.get(part).minus(target);
    Map<Integer, Mass> then = new TreeMap<>(inPot);
    then.put(part, target);
    boolean apart =
        inPot.size() == 1 || over().way() == Way.BY_PIECES || over().way() == Way.IN_CUP;
    return remedy(
        Kind.TAKE_BACK,
        Map.of(),
        out,
        plan.total(then),
        reached(then),
        apart ? Optional.empty() : Optional.of(WhyNot.ALREADY_IN_POT));
  }

  /**
   * Take out as much of the even mix as leaves the right weight of this part, then make the rest up. Where it was already taken back, down
   * to an empty pot, all that is there is kept.
   */
  private Remedy splitOff() {
    Mass there = inPot.get(part);
    Mass target = plan.target(part, without(part));
    Fraction kept = there.isMoreThan(target) ? Fraction.ratio(target, there) : Fraction.ONE;
    Mass contents = sum(inPot);
    Mass out = contents.minus(kept.of(contents));
    Map<Integer, Mass> left = new TreeMap<>();
    inPot.forEach((which, mass) -> left.put(which, kept.of(mass)));
    Map<Integer, Mass> more = more(left);
    more.forEach((which, mass) -> left.merge(which, mass, Mass::plus));
    boolean mixes = !plan.recipe().waits().mix().isZero();
    Optional<WhyNot> whyNot = more.isEmpty()
        ? Optional.of(WhyNot.NOTHING_TO_ADD)
        : mixes ? Optional.empty() : Optional.of(WhyNot.NOT_MIXED);
    return remedy(Kind.SPLIT_OFF, more, out, plan.total(left), reached(left), whyNot);
  }

  private Remedy scrap() {
    return remedy(Kind.SCRAP, Map.of(), Mass.ZERO, Mass.ZERO, reached(inPot), Optional.empty());
  }

  /** What the other parts lack for the part that was poured over; empty where wax itself was. */
  private Map<Integer, Mass> more(Map<Integer, Mass> there) {
    Map<Integer, Mass> more = new TreeMap<>();
    if (over().isWax()) return more;
    for (int i : there.keySet()) {
      Mass lacking = plan.lacking(i, part, there);
      if (i != part && lacking.isMoreThan(Mass.ZERO)) more.put(i, lacking);
    }
    return more;
  }

  private Fraction reached(Map<Integer, Mass> there) {
    Mass whole = over().load().basis() == LoadBasis.OF_WAX ? plan.wax(there) : plan.total(there);
    return whole.isZero() ? Fraction.ZERO : Fraction.ratio(there.get(part), whole);
  }

  private Map<Integer, Mass> without(int which) {
    Map<Integer, Mass> rest = new TreeMap<>(inPot);
    rest.remove(which);
    return rest;
  }

  private Optional<WhyNot> roomFor(Mass total) {
    if (!room.potHolds(total)) return Optional.of(WhyNot.POT_TOO_SMALL);
    if (!room.scaleCarries(total)) return Optional.of(WhyNot.SCALE_TOO_SMALL);
    return Optional.empty();
  }

  private Remedy remedy(
      Kind kind,
      Map<Integer, Mass> more,
      Mass out,
      Mass total,
      Fraction reached,
      Optional<WhyNot> whyNot) {
    return new Remedy(kind, more, out, total, total.minus(plan.total()), reached, whyNot);
  }

  private static Mass sum(Map<Integer, Mass> masses) {
    return masses.values().stream().reduce(Mass.ZERO, Mass::plus);
  }
}
