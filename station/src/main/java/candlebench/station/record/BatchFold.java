package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.Goal;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.LotChanged;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Place;
import candlebench.station.record.WeighingLine.Standing;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Folds the entries of one batch into its record. What is in the pot, and which weighings stand, is taken from the bench's own fold of
 * the same events, so that sheet and bench cannot disagree.
 */
final class BatchFold {
  private final Map<Long, List<Correction>> corrections;
  private final List<Correction> ofTheStart;
  private final List<WeighingLine> lines = new ArrayList<>();
  private final Map<Place, List<LotShare.Until>> changedLots = new HashMap<>();
  private BenchProgress bench = BenchProgress.EMPTY;
  private Map<String, String> whenPutOn = Map.of();

  private BatchFold(List<Recorded> entries) {
    corrections = Correction.byEntry(entries);
    ofTheStart = corrections.getOrDefault(entries.get(0).entry(), List.of());
  }

  static BatchRecord of(List<Recorded> entries) {
    if (entries.isEmpty() || !(entries.get(0).event() instanceof BatchStarted started))
      throw new IllegalArgumentException("a batch's entries begin with its start");
    List<Recorded> own =
        entries.stream().filter(each -> isOf(started.code(), each)).toList();
    BatchFold fold = new BatchFold(own);
    for (Recorded recorded : own) fold.and(recorded);
    return new BatchRecord(own, fold.bench.batch().orElseThrow(), List.copyOf(fold.lines));
  }

  /** A note on another batch, or a correction of one, can be written while this one is under way. */
  private static boolean isOf(String code, Recorded recorded) {
    if (recorded.event() instanceof Noted noted) return noted.batch().equals(code);
    if (recorded.event() instanceof Corrected corrected)
      return corrected.batch().equals(code);
    return true;
  }

  private void and(Recorded recorded) {
    GuidanceEvent event = recorded.event();
    if (event instanceof LotChanged changed) changed(changed);
    if (event instanceof WeightAccepted weight) {
      WeighingLine line = line(recorded, weight);
      lines.add(line);
      bench = bench.after(line.counts());
    } else {
      bench = bench.after(event);
      strike(event);
      if (event instanceof VesselTared) whenPutOn = lotsInUse();
    }
  }

  /** Remembers how much of what is being weighed had come from the lot before. */
  private void changed(LotChanged changed) {
    Optional<Goal> goal = bench.batch().flatMap(batch -> batch.goal());
    if (changed.poured().compareTo(Mass.ZERO) <= 0 || goal.isEmpty()) return;
    changedLots
        .computeIfAbsent(goal.get().place(), none -> new ArrayList<>())
        .add(new LotShare.Until(changed.from(), changed.poured()));
  }

  private WeighingLine line(Recorded recorded, WeightAccepted written) {
    List<Correction> own = corrections.getOrDefault(recorded.entry(), List.of());
    WeightAccepted counts = weightCorrected(written, own);
    boolean isVessel = written.place().kind() == Place.Kind.VESSEL;
    Map<String, String> inUse = isVessel ? vesselLots(written.name(), own) : lotsInUse();
    return new WeighingLine(
        recorded.entry(),
        recorded.wall(),
        written,
        counts,
        Standing.STANDS,
        isVessel
            ? List.of(new LotShare(inUse.getOrDefault(written.name(), ""), counts.net()))
            : partLots(written, counts.net(), own),
        inUse,
        own);
  }

  /** What of a part came from which lot: by what had been poured at each change, with corrections. */
  private List<LotShare> partLots(WeightAccepted written, Mass net, List<Correction> own) {
    List<LotShare> lots =
        LotShare.of(changedLots.getOrDefault(written.place(), List.of()), written.lot(), net);
    for (Correction start : ofTheStart)
      if (start.corrected().material().equals(written.name()))
        lots = LotShare.misread(lots, start.corrected());
    for (Correction mine : own) lots = LotShare.corrected(lots, mine.corrected());
    return lots;
  }

  /** A vessel is of the lots that were in use when it was put on the scale, whatever changed while it was filled. */
  private Map<String, String> vesselLots(String vessel, List<Correction> own) {
    Map<String, String> lots = new HashMap<>(whenPutOn);
    for (Correction mine : own) {
      Corrected corrected = mine.corrected();
      String material = corrected.material().isEmpty() ? vessel : corrected.material();
      if (corrected.what() == Correctable.LOT) lots.put(material, corrected.now());
    }
    return Map.copyOf(lots);
  }

  /** The weight as corrected last; its verdict is taken anew. */
  private static WeightAccepted weightCorrected(WeightAccepted written, List<Correction> own) {
    WeightAccepted counts = written;
    for (Correction correction : own) {
      Corrected corrected = correction.corrected();
      if (corrected.what() != Correctable.WEIGHT) continue;
      Mass net = Mass.ofGrams(corrected.now());
      Mass more = net.minus(counts.net());
      boolean takenOut = written.place().kind() == Place.Kind.SPLIT_OFF;
      counts = new WeightAccepted(
          written.at(),
          written.place(),
          written.name(),
          written.lot(),
          written.target(),
          written.shownTarget(),
          written.tolerance(),
          written.indication(),
          written.basis(),
          written.tare(),
          takenOut ? counts.gross().minus(more) : counts.gross().plus(more),
          net,
          written.tolerance().judge(written.target(), net, WeighingLine.stepOf(written)),
          written.how(),
          written.reason(),
          written.scale(),
          written.scaleName(),
          written.person(),
          written.trace());
    }
    return counts;
  }

  private Map<String, String> lotsInUse() {
    Map<String, String> lots =
        new HashMap<>(bench.batch().orElseThrow().started().lots());
    for (Correction start : ofTheStart) {
      Corrected corrected = start.corrected();
      if (corrected.what() == Correctable.LOT)
        lots.computeIfPresent(
            corrected.material(),
            (material, lot) -> lot.equals(corrected.was()) ? corrected.now() : lot);
      if (corrected.what() == Correctable.LOT && corrected.was().isEmpty())
        lots.putIfAbsent(corrected.material(), corrected.now());
    }
    return Map.copyOf(lots);
  }

  /** Weighings that the bench no longer counts were taken back, or reopened, by this event. */
  private void strike(GuidanceEvent by) {
    List<WeightAccepted> kept = bench.batch().orElseThrow().charge().weights();
    for (int i = 0; i < lines.size(); i++) {
      WeighingLine line = lines.get(i);
      if (line.stands() && kept.stream().noneMatch(weight -> weight == line.counts()))
        lines.set(
            i,
            line.now(
                by instanceof GuidanceEvent.AcceptanceReopened
                    ? Standing.REOPENED
                    : Standing.TAKEN_BACK));
    }
  }
}
