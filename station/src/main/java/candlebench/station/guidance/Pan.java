package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceInput.NoWeightShown;
import java.util.Optional;

/**
 * What one scale shows just now. Transient: built anew from readings after a restart.
 *
 * @param last the newest reading; kept while none can be trusted, to say what was last seen
 * @param before the one before it, however long ago, to notice what no pouring can do
 * @param steady the run of steady readings that it ends
 * @param rested the newest rest that was settled, in a stated unit
 * @param none why there is no weight just now, if there is none
 * @param plausible which reading is in doubt
 * @param zeroDoubt why its zero is in doubt
 */
record Pan(
    Optional<Reading> last,
    Optional<Reading> before,
    Optional<Steady> steady,
    Optional<Rest> rested,
    Optional<NoWeightShown.Why> none,
    boolean answering,
    Division division,
    Plausible plausible,
    ZeroDoubt zeroDoubt) {

  /**
   * A rest that was settled.
   *
   * @param newest the newest reading of it
   * @param middle the reading of it that is to be taken
   */
  record Rest(Reading newest, Reading middle) {}

  static final Pan UNHEARD = new Pan(
      Optional.empty(),
      Optional.empty(),
      Optional.empty(),
      Optional.empty(),
      Optional.empty(),
      true,
      Division.ofDecimals(1, MassUnit.GRAM),
      Plausible.NONE_YET,
      ZeroDoubt.UNHEARD);

  /** A key may be pressed while the number wavers: what was settled so lately and is still about the same counts. */
  private static final long LATELY = 3_000_000_000L;

  private static final long ABOUT_STEPS = 2;

  Pan seen(Reading reading, BenchSetup.Scale scale) {
    Division step = divisionOf(reading, scale);
    Plausible judged = plausible.and(reading, division);
    ZeroDoubt zero = zeroDoubt.and(plausible.doubted().or(() -> last), reading, step);
    if (judged.isInDoubt())
      return new Pan(
          last, before, Optional.empty(), rested, none, answering, division, judged, zero);
    Steady run =
        steady.map(before -> before.and(reading, step)).orElseGet(() -> Steady.from(reading));
    boolean rests = run.settled() && !reading.unitAssumed();
    return new Pan(
        Optional.of(reading),
        last,
        Optional.of(run),
        rests ? Optional.of(new Rest(reading, run.middle())) : rested,
        Optional.empty(),
        true,
        step,
        judged,
        run.atRest() ? zero.resting(reading) : zero);
  }

  /** Whether the newest reading counts for nothing until the next one. */
  boolean isInDoubt() {
    return plausible.isInDoubt();
  }

  Pan without(NoWeightShown.Why why) {
    return unheard(
        Optional.of(why),
        true,
        why == NoWeightShown.Why.UNDERLOAD ? ZeroDoubt.UNDER : ZeroDoubt.UNHEARD);
  }

  Pan line(boolean nowAnswering) {
    return nowAnswering == answering ? this : unheard(none, nowAnswering, ZeroDoubt.UNHEARD);
  }

  private Pan unheard(Optional<NoWeightShown.Why> why, boolean nowAnswering, ZeroDoubt zeroNow) {
    return new Pan(
        last,
        before,
        Optional.empty(),
        Optional.empty(),
        why,
        nowAnswering,
        division,
        Plausible.NONE_YET,
        zeroNow);
  }

  /** Its zero was just found. */
  Pan sure() {
    return new Pan(
        last, before, steady, rested, none, answering, division, plausible, ZeroDoubt.NONE);
  }

  /** The reading, if it may be trusted: of a live line, a number, and not older than {@link Steady#MOST_GAP}. */
  Optional<Reading> fresh(long nanos) {
    return answering && none.isEmpty()
        ? last.filter(reading -> nanos - reading.stamp().nanos() <= Steady.MOST_GAP)
        : Optional.empty();
  }

  /** The reading to be taken, if the load is settled by a reading to be trusted and its unit was stated. */
  Optional<Reading> settled(long nanos) {
    return fresh(nanos)
        .flatMap(now -> rested.filter(rest -> rest.newest().stamp().equals(now.stamp())))
        .map(Rest::middle);
  }

  /** The reading, if the load is at rest by the station's own rule; enough to find a zero, not to take a weight. */
  Optional<Reading> resting(long nanos) {
    return fresh(nanos)
        .filter(reading -> !reading.unitAssumed())
        .flatMap(reading -> steady.filter(Steady::atRest))
        .map(Steady::middle);
  }

  /** What was settled lately, if the number is still about the same. */
  Optional<Reading> settledLately(long nanos) {
    return fresh(nanos)
        .flatMap(now -> rested
            .filter(rest -> nanos - rest.newest().stamp().nanos() <= LATELY)
            .map(Rest::middle)
            .filter(taken -> !differs(now.mass().minus(taken.mass()), ABOUT_STEPS)));
  }

  /** Whether a difference is more than so many of the scale's steps, either way. */
  boolean differs(Mass difference, long steps) {
    return Math.abs(division.stepsIn(difference)) > steps;
  }

  private static Division divisionOf(Reading reading, BenchSetup.Scale scale) {
    MassUnit unit = reading.indication().unit().orElse(MassUnit.GRAM);
    Division shown = Division.ofDecimals(reading.indication().decimals(), unit);
    return scale.division().filter(set -> set.step().isMoreThan(shown.step())).orElse(shown);
  }
}
