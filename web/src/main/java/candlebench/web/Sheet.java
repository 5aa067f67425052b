package candlebench.web;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.batch.Fraction;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.CandleLabel;
import candlebench.station.record.LabelClaim;
import candlebench.station.record.Recorded;
import candlebench.station.record.Spread;
import java.util.List;

/**
 * The content of a batch's sheet and labels. Figures are text with their unit; what is absent is an empty text or list; words are left
 * to the page, but for those of a label.
 *
 * @param planned how many vessels, {@code filled} how many were filled
 * @param struck weighings that were taken back or reopened
 * @param content the net content, of which there is one where vessels were filled
 * @param entries how many entries the journal had when this was made, {@code head} the hash of the last of them
 */
record Sheet(
    String code,
    boolean practice,
    String recipe,
    String person,
    String started,
    String ended,
    String ending,
    int planned,
    int filled,
    String pot,
    List<SheetRows.Check> scales,
    List<SheetRows.Part> parts,
    List<SheetRows.Line> vessels,
    List<SheetRows.Line> struck,
    List<SheetRows.Load> loads,
    Yield yield,
    List<SheetRows.Content> content,
    Label label,
    List<SheetRows.Lot> lots,
    List<SheetRows.Moment> moments,
    List<SheetRows.Deviation> deviations,
    List<SheetRows.Note> notes,
    List<SheetRows.Correction> corrections,
    long firstEntry,
    long entries,
    String head) {

  /** What became of what went into the pot. */
  record Yield(String planned, String weighedIn, String filled, String left, String percent) {

    static Yield of(BatchRecord batch) {
      int decimals = batch.standing().stream()
          .map(line -> line.written().indication())
          .filter(shown -> shown.unit().orElse(MassUnit.GRAM) == MassUnit.GRAM)
          .mapToInt(shown -> shown.decimals())
          .max()
          .orElse(1);
      Mass in = batch.weighedIn();
      return new Yield(
          grams(batch.planned(), decimals),
          grams(in, decimals),
          grams(batch.filled(), decimals),
          grams(in.minus(batch.filled()), decimals),
          in.isZero() ? "" : SheetRows.percent(Fraction.ratio(batch.filled(), in), 1));
    }

    private static String grams(Mass mass, int decimals) {
      return SheetRows.figure(mass, MassUnit.GRAM, decimals);
    }
  }

  /** What each candle's label says. */
  record Label(
      String product,
      String stated,
      String ounces,
      String metric,
      String signalWord,
      List<String> safety,
      String trim,
      String deference,
      QrPath qr) {

    static Label of(BatchRecord batch, LabelClaim claim) {
      CandleLabel label = CandleLabel.of(
          batch.recipe().name(), batch.code(), claim.printed(), batch.recipe().trim());
      return new Label(
          label.product(),
          claim.stated(),
          label.net().ounces(),
          label.net().metric(),
          CandleLabel.SIGNAL_WORD,
          CandleLabel.SAFETY,
          label.trim().orElse(""),
          CandleLabel.DEFERENCE,
          QrPath.of(label.code()));
    }
  }

  /**
   * The sheet of a batch.
   *
   * @param scales the scales that weighed any of it, with their last checks
   * @param offsets how far the maker's fills lay off their targets, in this batch and in earlier ones
   */
  static Sheet of(
      BatchRecord batch,
      List<SheetRows.Check> scales,
      LabelClaim claim,
      Spread offsets,
      boolean practice,
      long entries,
      String head) {
    return new Sheet(
        batch.code(),
        practice,
        batch.recipe().name(),
        batch.person(),
        batch.started(),
        batch.end().map(Recorded::wall).orElse(""),
        SheetRows.word(batch.batch().end()),
        batch.vessels(),
        batch.vesselLines().size(),
        batch.pot().map(SheetRows::pot).orElse(""),
        scales,
        SheetRows.parts(batch),
        SheetRows.lines(batch.vesselLines()),
        SheetRows.lines(
            batch.weighings().stream().filter(line -> !line.stands()).toList()),
        SheetRows.Load.of(batch),
        Yield.of(batch),
        SheetRows.Content.of(batch, claim, offsets),
        Label.of(batch, claim),
        batch.lotUses().stream().map(SheetRows.Lot::of).toList(),
        batch.moments().stream().map(SheetRows.Moment::of).toList(),
        batch.deviations().stream().map(SheetRows.Deviation::of).toList(),
        batch.remarks().stream().map(SheetRows.Note::of).toList(),
        batch.corrections().stream().map(SheetRows.Correction::of).toList(),
        batch.firstEntry(),
        entries,
        head);
  }
}
