package candlebench.web;

import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.planning.LoadUncertainty;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.FillTarget;
import candlebench.station.record.LabelClaim;
import candlebench.station.record.LoadReached;
import candlebench.station.record.LotShare;
import candlebench.station.record.LotUse;
import candlebench.station.record.NetContent;
import candlebench.station.record.PourCurve;
import candlebench.station.record.Remark;
import candlebench.station.record.ScaleCheck;
import candlebench.station.record.Spread;
import candlebench.station.record.WeighingLine;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The rows of a sheet, from what the record says to text. Each figure is in the unit and to the step in which it was weighed. */
final class SheetRows {

  /** Keeps a number and its unit on one line. */
  private static final char NO_BREAK = '\u00a0';

  private SheetRows() {}

  /** A part as the recipe has it, with its share said both ways where it has two, and what was weighed of it. */
  record Part(
      String name,
      String kind,
      String share,
      String basis,
      String otherShare,
      String otherBasis,
      String limit,
      List<Line> lines) {}

  /**
   * One weighing.
   *
   * @param number of the part or vessel, from one
   * @param grams the net weight that counts, exact and without its unit
   * @param lots what came from which lot, in words; {@code lotNumbers} the lots alone
   * @param was the net weight as it was written, where it was corrected
   */
  record Line(
      long entry,
      String time,
      String kind,
      int number,
      String name,
      String target,
      String exactTarget,
      String net,
      String grams,
      String difference,
      String verdict,
      String how,
      String standing,
      String lots,
      List<String> lotNumbers,
      String scale,
      String indication,
      String was,
      List<Curve> curve) {

    static Line of(WeighingLine line) {
      MassUnit unit = unit(line);
      int decimals = line.written().indication().decimals();
      return new Line(
          line.entry(),
          line.wall(),
          word(line.place().kind()),
          line.place().number() + 1,
          line.written().name(),
          figure(line.counts().shownTarget(), unit, decimals),
          exact(line.counts().target(), unit, decimals),
          figure(line.net(), unit, decimals),
          line.net().grams(),
          signed(line.net().minus(line.counts().shownTarget()), unit, decimals),
          word(line.counts().verdict()),
          word(line.counts().how()),
          word(line.standing()),
          line.lots().stream().map(each -> share(each, line)).collect(Collectors.joining(" + ")),
          line.lots().stream().map(LotShare::lot).toList(),
          line.written().scaleName(),
          line.written().indication().toString(),
          line.net().equals(line.written().net())
              ? ""
              : figure(line.written().net(), unit, decimals),
          PourCurve.of(line.written()).map(Curve::of).stream().toList());
    }

    private static String share(LotShare share, WeighingLine line) {
      if (line.lots().size() == 1) return share.lot();
      return (share.lot().isEmpty() ? "?" : share.lot()) + " ("
          + figure(share.amount(), unit(line), line.written().indication().decimals()) + ")";
    }

    private static MassUnit unit(WeighingLine line) {
      return line.written().indication().unit().orElse(MassUnit.GRAM);
    }
  }

  record Curve(
      String path, int width, int height, int target, int over, int under, String seconds) {
    static Curve of(PourCurve curve) {
      return new Curve(
          curve.path(),
          PourCurve.WIDTH,
          PourCurve.HEIGHT,
          curve.targetY(),
          curve.overY(),
          curve.underY(),
          curve.seconds());
    }
  }

  /**
   * A load that was reached.
   *
   * @param surelyOfWax how far it may lie from that in about 95 % of cases, in points of per cent, rounded up; empty where it cannot be
   *     said
   */
  record Load(
      String name,
      String ofWax,
      String surelyOfWax,
      String ofTotal,
      String surelyOfTotal,
      boolean overLimit) {

    static List<Load> of(BatchRecord batch) {
      Map<Integer, LoadUncertainty> known = batch.loadUncertainties();
      List<Load> loads = new ArrayList<>();
      for (LoadReached load : batch.loads()) {
        Optional<LoadUncertainty> surely =
            Optional.ofNullable(known.get(batch.recipe().parts().indexOf(load.part())));
        loads.add(new Load(
            load.part().name(),
            load.ofWax().map(share -> percent(share, 2)).orElse(""),
            surely.map(LoadUncertainty::ofWax).map(Load::points).orElse(""),
            percent(load.ofTotal(), 2),
            surely.map(LoadUncertainty::ofTotal).map(Load::points).orElse(""),
            load.overLimit()));
      }
      return List.copyOf(loads);
    }

    private static String points(BigDecimal standard) {
      BigDecimal expanded = standard.multiply(BigDecimal.valueOf(LoadUncertainty.COVERAGE));
      return expanded.movePointRight(2).setScale(2, RoundingMode.UP).toPlainString() + NO_BREAK
          + "%";
    }
  }

  /**
   * A scale that weighed some of the batch, and its last check before it.
   *
   * @param time empty where it was never checked, and all that follows with it
   * @param weightAsked the coarsest class of weight that such a check may be made with; empty where the mass is no usual weight
   */
  record Check(
      String scale,
      String time,
      String known,
      String shown,
      String difference,
      String allowed,
      boolean within,
      String weightAsked,
      String person) {

    static Check of(String scale, Optional<ScaleCheck> last) {
      if (last.isEmpty()) return new Check(scale, "", "", "", "", "", false, "", "");
      ScaleCheck check = last.get();
      Indication shown = check.checked().indication();
      MassUnit unit = shown.unit().orElse(MassUnit.GRAM);
      return new Check(
          scale,
          check.wall(),
          check.checked().known().toString(),
          figure(check.checked().shown(), unit, shown.decimals()),
          signed(check.difference(), unit, shown.decimals()),
          figure(check.allowed(), unit, shown.decimals()),
          check.isWithin(),
          check.weightAsked().map(Enum::name).orElse(""),
          check.checked().person());
    }
  }

  record Lot(String material, String lot, boolean unknown, String amount, List<Integer> vessels) {
    static Lot of(LotUse use) {
      return new Lot(
          use.material(),
          use.lot(),
          use.isUnknown(),
          use.amount().isZero() ? "" : use.amount().toString(),
          use.vessels());
    }
  }

  record Moment(String time, String what, String about) {
    static Moment of(candlebench.station.record.Moment moment) {
      return new Moment(moment.wall(), word(moment.what()), moment.about());
    }
  }

  record Deviation(
      long entry,
      String time,
      String kind,
      String about,
      String amount,
      String choice,
      String reason) {
    static Deviation of(candlebench.station.record.Deviation deviation) {
      return new Deviation(
          deviation.entry(),
          deviation.wall(),
          word(deviation.kind()),
          deviation.about(),
          deviation.amount(),
          deviation.choice(),
          deviation.reason());
    }
  }

  record Note(long entry, String time, String text, String person, boolean corrected) {
    static Note of(Remark remark) {
      return new Note(
          remark.entry(),
          remark.wall(),
          remark.text(),
          remark.written().person(),
          !remark.corrections().isEmpty());
    }
  }

  record Correction(
      long entry,
      String time,
      long corrects,
      String what,
      String material,
      String was,
      String now,
      String reason,
      String person) {
    static Correction of(candlebench.station.record.Correction correction) {
      Corrected made = correction.corrected();
      return new Correction(
          correction.entry(),
          correction.wall(),
          made.entry(),
          word(made.what()),
          made.material(),
          made.was(),
          made.now(),
          made.reason(),
          made.person());
    }
  }

  /**
   * The net content against the label.
   *
   * @param aim what to aim the next vessels at, with the rule that asks for it; empty while too few were filled to say
   */
  record Content(
      String label,
      int count,
      String mean,
      String deviation,
      String meanShort,
      String tolerable,
      String t1,
      String t2,
      int belowT1,
      int allowedBelowT1,
      int belowT2,
      String mav,
      int beyondMav,
      boolean keepsTheRules,
      boolean fineEnough,
      String aim,
      String aimRule,
      int fillsLookedAt) {

    static List<Content> of(BatchRecord batch, LabelClaim claim, Spread offsets) {
      if (batch.fills().isEmpty()) return List.of();
      NetContent content = NetContent.of(claim, batch.fills());
      Division coarsest = batch.vesselLines().stream()
          .map(WeighingLine::division)
          .reduce((one, other) -> one.step().isMoreThan(other.step()) ? one : other)
          .orElseThrow();
      Optional<FillTarget> aim = FillTarget.of(claim.net(), offsets, batch.vessels());
      return List.of(new Content(
          claim.stated(),
          content.fills().size(),
          grams(content.spread().mean()),
          grams(content.spread().deviation()),
          grams(content.meanShort()),
          grams(content.tolerable()),
          grams(content.tolerable().map(claim.net()::minus)),
          grams(content.tolerable().map(error -> claim.net().minus(error.times(2)))),
          content.belowT1(),
          content.allowedBelowT1(),
          content.belowT2(),
          grams(content.indicativeMav()),
          content.beyondMav(),
          content.keepsTheRules(),
          content.canBeCheckedIn(coarsest),
          grams(aim.map(FillTarget::aim)),
          aim.map(target -> word(target.rule())).orElse(""),
          offsets.count()));
    }

    private static String grams(Optional<Mass> mass) {
      return mass.map(some -> figure(some, MassUnit.GRAM, 2)).orElse("");
    }
  }

  static List<Line> lines(List<WeighingLine> lines) {
    return lines.stream().map(Line::of).toList();
  }

  static List<Part> parts(BatchRecord batch) {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < batch.recipe().parts().size(); i++) {
      candlebench.station.batch.Part part = batch.recipe().parts().get(i);
      boolean hasTwo = !part.isWax() && !isWhole(part);
      parts.add(new Part(
          part.name(),
          word(part.kind()),
          percent(part.load()),
          word(part.load().basis()),
          hasTwo ? percent(part.load().otherWay()) : "",
          hasTwo ? word(part.load().otherWay().basis()) : "",
          part.limit().isZero() ? "" : percent(part.limit(), 0),
          lines(batch.partLines(i))));
    }
    return List.copyOf(parts);
  }

  /** A part that is all there is has no share of the wax. */
  private static boolean isWhole(candlebench.station.batch.Part part) {
    return part.load().basis() == LoadBasis.OF_TOTAL && part.load().share().equals(Fraction.ONE);
  }

  static String pot(PotTared pot) {
    String weight = figure(
        pot.tare(),
        pot.indication().unit().orElse(MassUnit.GRAM),
        pot.indication().decimals());
    return pot.pot().isEmpty() ? weight : pot.pot() + ", " + weight;
  }

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** A mass with its unit, to so many decimals. */
  static String figure(Mass mass, MassUnit unit, int decimals) {
    String number = mass.text(unit, decimals);
    boolean isZero = new BigDecimal(number).signum() == 0;
    return (isZero ? number.replace("-", "") : number) + NO_BREAK + unit.symbol();
  }

  /** A difference, with its sign. */
  private static String signed(Mass mass, MassUnit unit, int decimals) {
    int sign = new BigDecimal(mass.text(unit, decimals)).signum();
    return (sign > 0 ? "+" : "") + figure(mass, unit, decimals).replace('-', '\u2212');
  }

  /** An exact target where it says more than the one rounded to the scale's step; else empty. */
  private static String exact(Mass target, MassUnit unit, int decimals) {
    BigDecimal more = new BigDecimal(target.text(unit, decimals + 2)).stripTrailingZeros();
    return more.scale() <= decimals ? "" : more.toPlainString() + NO_BREAK + unit.symbol();
  }

  /** A share per cent, with so many decimals. */
  static String percent(Fraction share, int decimals) {
    return share.percentText(decimals) + NO_BREAK + "%";
  }

  private static String percent(candlebench.station.batch.Load load) {
    return percent(load.share(), 2).replaceFirst("\\.?0+(?=\u00a0)", "");
  }
}
