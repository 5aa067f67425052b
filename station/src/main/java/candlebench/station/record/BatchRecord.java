package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.planning.LoadUncertainty;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchAbandoned;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.BatchScrapped;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * All that the journal says of one batch: the content of its sheet. A fold of its entries, with each correction beside what it
 * corrects.
 *
 * @param entries from the batch's start to the next one's, and later corrections and notes
 * @param batch how far it came, by the bench's own fold of the same events with their corrections
 * @param weighings all of them, those that were taken back too, in order
 */
public record BatchRecord(
    List<Recorded> entries, BatchProgress batch, List<WeighingLine> weighings) {

  /** The material under which the lot of the wick is asked for and kept. */
  public static final String WICK = "wick";

  /** @throws IllegalArgumentException if the entries do not begin with the start of a batch */
  public static BatchRecord of(List<Recorded> entries) {
    return BatchFold.of(entries);
  }

  public String code() {
    return batch.started().code();
  }

  public Recipe recipe() {
    return batch.started().recipe();
  }

  /** How many vessels were planned. */
  public int vessels() {
    return batch.started().vessels();
  }

  public String person() {
    return batch.started().person();
  }

  public long firstEntry() {
    return entries.get(0).entry();
  }

  /** When it began, ISO 8601 with offset. */
  public String started() {
    return entries.get(0).wall();
  }

  /** How it ended, once it has. */
  public Optional<Recorded> end() {
    if (batch.runs()) return Optional.empty();
    return entries.stream().filter(each -> isEnd(each.event())).reduce((before, last) -> last);
  }

  private static boolean isEnd(GuidanceEvent event) {
    return event instanceof BatchDone
        || event instanceof BatchAbandoned
        || event instanceof BatchScrapped;
  }

  /** The pot, once it was weighed. */
  public Optional<PotTared> pot() {
    return batch.charge().pot();
  }

  /** The scales that weighed any of it, by the maker's names. */
  public Set<String> scales() {
    Set<String> names = new LinkedHashSet<>();
    for (Recorded each : entries) {
      if (each.event() instanceof PotTared pot) names.add(pot.scaleName());
      if (each.event() instanceof VesselTared vessel) names.add(vessel.scaleName());
      if (each.event() instanceof WeightAccepted weight) names.add(weight.scaleName());
    }
    return names;
  }

  /** The weighings that stand, in order. */
  public List<WeighingLine> standing() {
    return weighings.stream().filter(WeighingLine::stands).toList();
  }

  /** The weighings that put a part into the pot, by its number. */
  public List<WeighingLine> partLines(int part) {
    return standing().stream().filter(line -> line.isOfPart(part)).toList();
  }

  /** The vessels that were filled, in order. */
  public List<WeighingLine> vesselLines() {
    return standing().stream().filter(WeighingLine::isVessel).toList();
  }

  public List<Mass> fills() {
    return vesselLines().stream().map(WeighingLine::net).toList();
  }

  /** What went into the pot of each part, by its number, less what was taken out again. */
  public Map<Integer, Mass> inPot() {
    return batch.charge().inPot();
  }

  /** The loads reached, of all parts but wax. */
  public List<LoadReached> loads() {
    return LoadReached.of(recipe(), inPot());
  }

  /** How surely the loads are known, by part number, where there is wax to compare them with. */
  public Map<Integer, LoadUncertainty> loadUncertainties() {
    return LoadsKnown.of(this);
  }

  /** The lots used, those weighed and those counted, unknown ones too. */
  public List<LotUse> lotUses() {
    return LotUse.in(this);
  }

  public List<Moment> moments() {
    return entries.stream().flatMap(each -> Moment.of(each).stream()).toList();
  }

  public List<Deviation> deviations() {
    return Deviations.of(this);
  }

  public List<Remark> remarks() {
    return Remark.in(entries);
  }

  public List<Correction> corrections() {
    return entries.stream()
        .filter(each -> each.event() instanceof Corrected)
        .map(each -> Correction.of(each, (Corrected) each.event()))
        .toList();
  }

  /** What the plan asked for, all parts together. */
  public Mass planned() {
    return new BatchPlan(recipe(), vessels()).total();
  }

  /** What went into the pot, all parts together. */
  public Mass weighedIn() {
    return batch.charge().contents();
  }

  /** What went into vessels. */
  public Mass filled() {
    return fills().stream().reduce(Mass.ZERO, Mass::plus);
  }
}
