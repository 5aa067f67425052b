package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.LoadBasis;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** A plan to be read: the sum step by step, and what speaks against it. */
public final class PlanText {
  private static final MathContext TWO = new MathContext(2);
  private final WorkshopPlan plan;
  private final List<String> lines = new ArrayList<>();

  private PlanText(WorkshopPlan plan) {
    this.plan = plan;
  }

  public static String of(WorkshopPlan plan) {
    PlanText text = new PlanText(plan);
    text.head();
    text.total();
    text.parts();
    text.charges();
    text.filling();
    text.limits();
    text.sensitisers();
    text.findings();
    return String.join("\n", text.lines) + "\n";
  }

  private void head() {
    Formula formula = plan.order().formula();
    lines.add(formula.name() + ", " + formula.id() + " version " + formula.version() + ": "
        + Wording.count(plan.order().vessels(), "vessel", "vessels") + " of "
        + plan.order().vessel().name());
    lines.add(plan.isRefused() ? "REFUSED, see the end" : "Planned");
  }

  private void total() {
    PlanOrder order = plan.order();
    chapter("Total");
    Fill fill = order.vessel().fill();
    line("fill of a vessel", fill.mass(), fill.words());
    line("fills", plan.fills(), order.vessels() + " × " + Wording.grams(fill.mass()));
    line(
        "loss",
        plan.losses(),
        Wording.count(plan.charges().size(), "pot", "pots") + " × "
            + order.loss().perPot() + " + "
            + Wording.count(order.vessels(), "vessel", "vessels") + " × "
            + order.loss().perVessel());
    line("total", plan.total(), "fills + loss");
  }

  private void parts() {
    chapter("Parts of the whole batch");
    for (PlannedPart each : plan.parts()) {
      line(
          each.part().name(),
          each.exact(),
          Wording.load(each.part().load()) + " as stated; " + Wording.percent(each.ofWax())
              + " of wax = " + Wording.percent(each.ofTotal()) + " of total");
      each.otherMeaning()
          .ifPresent(other -> lines.add("      meant as "
              + Wording.load(other.load()) + " it would be " + Wording.grams(other.part()) + " in "
              + Wording.grams(other.wax()) + " of wax"));
    }
    line(
        "sum",
        plan.parts().stream().map(PlannedPart::exact).reduce(Mass.ZERO, Mass::plus),
        "= total");
    lines.add("  All oils: " + Wording.load(plan.oils(LoadBasis.OF_WAX)) + " = "
        + Wording.load(plan.oils(LoadBasis.OF_TOTAL)));
  }

  private void charges() {
    chapter(Wording.count(plan.charges().size(), "charge", "charges") + ", of "
        + Wording.vessels(plan.charges()));
    for (int i = 0; i < plan.charges().size(); i++) {
      PlannedCharge charge = plan.charges().get(i);
      int same = plan.charges().indexOf(charge);
      if (same < i)
        lines.add(
            "  " + (i + 1) + ". as " + (same + 1) + "., in " + charge.pot().name());
      else charge(i + 1, charge);
    }
    lines.add("");
    lines.add("  ± is the expanded uncertainty, k = " + LoadUncertainty.COVERAGE
        + " (about 95 %): rounding, repeatability and the scale's permissible error in");
    lines.add(
        "  service; a reading shared by two parts is counted once. Buoyancy in air is left out.");
  }

  private void charge(int number, PlannedCharge charge) {
    lines.add("  " + number + ". " + charge.pot().name() + ", "
        + Wording.count(charge.vessels(), "vessel", "vessels") + ", "
        + Wording.grams(charge.contents()) + "; with the pot " + Wording.grams(charge.gross())
        + " on " + charge.scale().words());
    lines.add("     room left " + Wording.grams(charge.roomLeft()) + ", for a cure "
        + Wording.grams(charge.cure())
        + charge
            .curable()
            .map(most -> "; over-pours up to " + Wording.grams(most) + " can be cured")
            .orElse(""));
    Mass shown = Mass.ZERO;
    List<LoadUncertainty> uncertainties = charge.uncertainties();
    for (int i = 0; i < charge.weighings().size(); i++) {
      PlannedWeighing way = charge.weighings().get(i);
      shown = shown.plus(way.shown());
      lines.add(String.format(
          "     %-32s %12s  weigh %10s (%s %s)  into the %s on %s",
          way.part().name(),
          Wording.grams(way.exact()),
          Wording.grams(way.shown()),
          way.part().tolerance(),
          signed(way.rounding()) + " by rounding",
          way.into() == Into.POT ? "pot" : "cup",
          way.scale().name()));
      if (!way.part().isWax()) lines.add("        " + known(way, uncertainties.get(i)));
    }
    lines.add(String.format(
        "     %-32s %12s  weigh %10s (%s by rounding)",
        "sum",
        Wording.grams(charge.contents()),
        Wording.grams(shown),
        signed(shown.minus(charge.contents()))));
  }

  private String known(PlannedWeighing way, LoadUncertainty uncertainty) {
    Formula formula = plan.order().formula();
    return Wording.percent(formula.ofWax(way.part())) + " ± " + points(uncertainty.ofWax())
        + " of wax, " + Wording.percent(formula.ofTotal(way.part())) + " ± "
        + points(uncertainty.ofTotal()) + " of total; at least "
        + Wording.grams(way.fineness().minimumWeight()) + " on this scale";
  }

  private static String points(BigDecimal standard) {
    BigDecimal percent = standard
        .multiply(BigDecimal.valueOf(LoadUncertainty.COVERAGE))
        .movePointRight(2)
        .round(TWO);
    return Wording.plain(percent) + " %";
  }

  private void filling() {
    Filling filling = plan.filling();
    chapter("Filling");
    lines.add("  Each vessel to " + Wording.grams(filling.shown()) + " ("
        + filling.vessel().tolerance() + ") on " + filling.scale().words() + ", "
        + Wording.grams(filling.onPan()) + " on the pan when full"
        + (filling.vessel().empty().isPresent()
            ? "."
            : ", and the vessel's own weight, which is not given."));
    lines.add(
        "  Hot wax stands too high at the right weight, and shrinks as it sets: go by the scale, not by the line.");
  }

  private void limits() {
    if (plan.limits().isEmpty()) return;
    chapter("Limits");
    for (LimitCheck check : plan.limits()) {
      String basis = Wording.basis(check.limit().most().basis());
      lines.add("  " + check.of() + ": " + Wording.percent(check.planned()) + " " + basis
          + " planned, at most " + Wording.percent(check.limit().most().share()) + " " + basis
          + (check.isKept() ? ", kept" : ", NOT KEPT") + " (" + check.rule().source() + ")");
    }
  }

  private void sensitisers() {
    if (plan.sensitisers().isEmpty()) return;
    chapter("Sensitisers (CLP)");
    for (SensitiserCheck check : plan.sensitisers())
      lines.add("  " + check.sensitiser().name() + ", category "
          + check.sensitiser().category().symbol() + ": " + check.share() + " = "
          + Wording.percent(check.share()) + " of total; classifies from "
          + Wording.percent(check.sensitiser().classifiesFrom()) + ", named from "
          + Wording.percent(check.sensitiser().namedFrom()) + ": "
          + switch (check.standing()) {
            case CLASSIFIES -> "CLASSIFIES";
            case NAMED -> "named on the label";
            case BELOW -> "below both";
          });
    lines.add("  " + SensitiserCheck.CAUTION);
  }

  private void findings() {
    if (plan.findings().isEmpty()) return;
    chapter("Findings");
    for (Finding each : plan.findings()) {
      lines.add("  " + each.severity() + "  " + each.subject() + ": " + each.words());
      lines.add("      rule: " + each.rule().words() + " (" + each.rule().source() + ").");
    }
  }

  private void chapter(String title) {
    lines.add("");
    lines.add(title);
  }

  private void line(String name, Mass mass, String how) {
    lines.add(String.format("  %-34s %14s   %s", name, Wording.grams(mass), how));
  }

  private static String signed(Mass mass) {
    return (mass.isNegative() ? "−" : "+") + Wording.grams(mass.abs());
  }
}
