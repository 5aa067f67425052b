package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Verdict;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.Answered;
import candlebench.station.guidance.GuidanceEvent.BatchAbandoned;
import candlebench.station.guidance.GuidanceEvent.BatchScrapped;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.LotChanged;
import candlebench.station.guidance.GuidanceEvent.MixCompared;
import candlebench.station.guidance.GuidanceEvent.MixSpilt;
import candlebench.station.guidance.GuidanceEvent.OverGone;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.RemedyChosen;
import candlebench.station.guidance.GuidanceEvent.ReweighSkipped;
import candlebench.station.guidance.GuidanceEvent.TemperatureOutside;
import candlebench.station.guidance.GuidanceEvent.Undone;
import candlebench.station.guidance.GuidanceEvent.VesselsLeftOut;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MixStanding;
import candlebench.station.record.Deviation.Kind;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What on a batch's record did not go by the recipe, in the order in which it came about. */
final class Deviations {
  private final BatchRecord batch;
  private final List<Deviation> found = new ArrayList<>();

  private Deviations(BatchRecord batch) {
    this.batch = batch;
  }

  static List<Deviation> of(BatchRecord batch) {
    Deviations deviations = new Deviations(batch);
    batch.entries().forEach(deviations::event);
    batch.standing().forEach(deviations::weighing);
    deviations.loads();
    deviations.lots();
    deviations.found.sort(Comparator.comparingLong(Deviation::entry));
    return List.copyOf(deviations.found);
  }

  private void event(Recorded at) {
    GuidanceEvent event = at.event();
    if (event instanceof OverPoured over)
      add(at, Kind.OVER_POURED, over.name(), grams(over.net().minus(over.target())), "", "");
    if (event instanceof OverGone gone) add(at, Kind.OVER_GONE, "", "", gone.choice(), "");
    if (event instanceof RemedyChosen chosen)
      add(at, Kind.REMEDY, "", grams(chosen.total()), word(chosen.remedy()), chosen.reason());
    if (event instanceof Undone undone) add(at, Kind.TAKEN_BACK, "", "", undone.what(), "");
    if (event instanceof AcceptanceReopened reopened)
      add(
          at,
          Kind.REOPENED,
          reopened.place().toString(),
          grams(reopened.now().minus(reopened.was())),
          "",
          "");
    if (event instanceof Answered answered)
      add(at, Kind.PAN_DIFFERED, "", grams(answered.gross()), answered.choice(), "");
    if (event instanceof ReweighSkipped) add(at, Kind.NOT_WEIGHED_AGAIN, "", "", "", "");
    if (event instanceof LotChanged changed)
      add(at, Kind.LOT_CHANGED, changed.material(), "", changed.to(), "");
    if (event instanceof MixCompared mix && mix.standing() == MixStanding.TOO_LITTLE)
      add(at, Kind.MIX_SHORT, "", grams(mix.left()), "", "");
    if (event instanceof TemperatureOutside outside)
      add(
          at,
          Kind.TEMPERATURE_OUTSIDE,
          word(outside.process()) + " " + degrees(outside.fromTenths()) + " to "
              + degrees(outside.toTenths()),
          degrees(outside.tenthsCelsius()),
          "",
          "");
    if (event instanceof MixSpilt spilt)
      add(at, Kind.MIX_SPILT, "", spilt.amount().isZero() ? "?" : grams(spilt.amount()), "", "");
    if (event instanceof VesselsLeftOut out)
      add(at, Kind.VESSELS_LEFT_OUT, Integer.toString(out.vessels()), grams(out.left()), "", "");
    if (event instanceof BatchScrapped scrapped)
      add(at, Kind.SCRAPPED, "", "", "", scrapped.reason());
    if (event instanceof BatchAbandoned given) add(at, Kind.GIVEN_UP, "", "", "", given.reason());
  }

  private void weighing(WeighingLine line) {
    WeightAccepted counts = line.counts();
    String about = line.isVessel() ? line.place().toString() : counts.name();
    if (counts.verdict() != Verdict.WITHIN)
      add(line, Kind.OUT_OF_TOLERANCE, about, grams(line.difference()), counts.reason());
    if (counts.how() == How.BY_HAND)
      add(line, Kind.BY_HAND, about, grams(counts.net()), counts.reason());
  }

  private void loads() {
    for (LoadReached load : batch.loads())
      if (load.overLimit())
        lastOf(load.part().name())
            .ifPresent(line -> add(
                line,
                Kind.OVER_LIMIT,
                load.part().name(),
                load.asStated().percentText(2) + " %",
                line.counts().reason()));
  }

  private void lots() {
    for (LotUse use : batch.lotUses())
      if (use.isUnknown())
        found.add(new Deviation(
            batch.firstEntry(), batch.started(), Kind.LOT_UNKNOWN, use.material(), "", "", ""));
  }

  private Optional<WeighingLine> lastOf(String name) {
    return batch.standing().stream()
        .filter(line -> line.written().name().equals(name))
        .reduce((before, last) -> last);
  }

  private void add(
      Recorded at, Kind kind, String about, String amount, String choice, String reason) {
    found.add(new Deviation(at.entry(), at.wall(), kind, about, amount, choice, reason));
  }

  private void add(WeighingLine line, Kind kind, String about, String amount, String reason) {
    found.add(new Deviation(line.entry(), line.wall(), kind, about, amount, "", reason));
  }

  private static String degrees(int tenths) {
    return BigDecimal.valueOf(tenths, 1).toPlainString() + " °C";
  }

  /** Grams to a hundredth, which no scale of a bench goes beyond for long; the record itself keeps them exact. */
  private static String grams(Mass mass) {
    BigDecimal rounded = new BigDecimal(mass.text(MassUnit.GRAM, 2)).stripTrailingZeros();
    return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString() + " g";
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
