package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/**
 * A plan as JSON, as {@code plan.schema.json} says. Masses are exact decimal text in grams; a share is a fraction in lowest terms, with
 * decimal text beside it.
 */
public final class PlanJson {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final JsonMapper JSON = new JsonMapper();
  private static final MathContext SIX = new MathContext(6);

  private PlanJson() {}

  public static String text(WorkshopPlan plan) {
    try {
      return JSON.writer(new DefaultPrettyPrinter()).writeValueAsString(json(plan));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a plan that cannot be written", e);
    }
  }

  private static ObjectNode json(WorkshopPlan plan) {
    ObjectNode json = NODES.objectNode();
    json.put("verdict", plan.isRefused() ? "refused" : "planned");
    json.set("findings", each(plan.findings(), PlanJson::finding));
    json.set("recipe", recipe(plan));
    json.set("total", total(plan));
    json.set("parts", each(plan.parts(), PlanJson::part));
    json.set("charges", each(plan.charges(), PlanJson::charge));
    plan.fewest()
        .ifPresent(fewest ->
            json.set("fewestCharges", each(fewest, charge -> NODES.numberNode(charge.vessels()))));
    json.set("filling", filling(plan.filling()));
    json.set("limits", each(plan.limits(), PlanJson::limit));
    json.set("sensitisers", sensitisers(plan));
    json.set("chart", chart(BenchChart.of(plan)));
    return json;
  }

  private static ObjectNode finding(Finding finding) {
    ObjectNode json = NODES.objectNode();
    json.put("severity", finding.severity().name().toLowerCase(Locale.ROOT));
    json.put("rule", finding.rule().id());
    json.put("asks", finding.rule().words());
    json.put("source", finding.rule().source());
    json.put("subject", finding.subject());
    json.put("words", finding.words());
    return json;
  }

  private static ObjectNode recipe(WorkshopPlan plan) {
    Formula formula = plan.order().formula();
    ObjectNode json = NODES.objectNode();
    json.put("id", formula.id());
    json.put("version", formula.version());
    json.put("name", formula.name());
    json.set("oilsOfWax", share(formula.oils(LoadBasis.OF_WAX)));
    json.set("oilsOfTotal", share(formula.oils(LoadBasis.OF_TOTAL)));
    return json;
  }

  private static ObjectNode total(WorkshopPlan plan) {
    PlanOrder order = plan.order();
    ObjectNode json = NODES.objectNode();
    json.put("vessels", order.vessels());
    json.put("fill", grams(order.vessel().fill().mass()));
    json.put("fillKnownBy", order.vessel().fill().words());
    json.put("fills", grams(plan.fills()));
    json.put("lossPerPot", grams(order.loss().perPot()));
    json.put("lossPerVessel", grams(order.loss().perVessel()));
    json.put("losses", grams(plan.losses()));
    json.put("total", grams(plan.total()));
    json.put("shown", grams(shown(plan)));
    json.put("rounding", grams(shown(plan).minus(plan.total())));
    return json;
  }

  private static Mass shown(WorkshopPlan plan) {
    return plan.parts().stream().map(PlannedPart::shown).reduce(Mass.ZERO, Mass::plus);
  }

  private static ObjectNode part(PlannedPart planned) {
    ObjectNode json = NODES.objectNode();
    json.put("name", planned.part().name());
    json.put("kind", RecipeJson.word(planned.part().kind()));
    json.set("stated", load(planned.part().load()));
    json.set("ofWax", share(planned.ofWax()));
    json.set("ofTotal", share(planned.ofTotal()));
    json.put("exact", grams(planned.exact()));
    json.put("shown", grams(planned.shown()));
    json.put("rounding", grams(planned.shown().minus(planned.exact())));
    planned.otherMeaning().ifPresent(other -> {
      ObjectNode meaning = NODES.objectNode();
      meaning.set("stated", load(other.load()));
      meaning.put("exact", grams(other.part()));
      meaning.put("wax", grams(other.wax()));
      json.set("otherMeaning", meaning);
    });
    return json;
  }

  private static ObjectNode charge(PlannedCharge charge) {
    ObjectNode json = NODES.objectNode();
    json.put("pot", charge.pot().name());
    json.put("vessels", charge.vessels());
    json.put("contents", grams(charge.contents()));
    json.put("potEmpty", grams(charge.pot().empty()));
    json.put("gross", grams(charge.gross()));
    json.put("scale", charge.scale().name());
    json.put("roomLeft", grams(charge.roomLeft()));
    json.put("cureMargin", grams(charge.cure()));
    charge.curable().ifPresent(most -> json.put("curableOverPour", grams(most)));
    List<LoadUncertainty> all = charge.uncertainties();
    List<LoadUncertainty> ofReading = charge.uncertaintiesOfReading();
    ArrayNode parts = json.putArray("parts");
    for (int i = 0; i < all.size(); i++) {
      ObjectNode part = weighing(charge.weighings().get(i));
      part.set("uncertainty", uncertainty(all.get(i)));
      part.set("uncertaintyOfReading", uncertainty(ofReading.get(i)));
      parts.add(part);
    }
    return json;
  }

  private static ObjectNode weighing(PlannedWeighing way) {
    ObjectNode json = NODES.objectNode();
    json.put("name", way.part().name());
    json.put("exact", grams(way.exact()));
    json.put("shown", grams(way.shown()));
    json.put("rounding", grams(way.rounding()));
    json.set("tolerance", tolerance(way.tolerance()));
    json.put("scale", way.scale().name());
    json.put("division", grams(way.scale().division().step()));
    json.put("into", way.into() == Into.POT ? "pot" : "cup");
    json.put("onPan", grams(way.after()));
    json.set("fineness", fineness(way.fineness()));
    return json;
  }

  private static ObjectNode uncertainty(LoadUncertainty uncertainty) {
    ObjectNode json = NODES.objectNode();
    json.put("net", six(uncertainty.ofNet()));
    json.put("ofWax", six(uncertainty.ofWax()));
    json.put("ofTotal", six(uncertainty.ofTotal()));
    json.put("coverage", LoadUncertainty.COVERAGE);
    json.put("expandedNet", six(expanded(uncertainty.ofNet())));
    json.put("expandedOfWax", six(expanded(uncertainty.ofWax())));
    json.put("expandedOfTotal", six(expanded(uncertainty.ofTotal())));
    return json;
  }

  private static BigDecimal expanded(BigDecimal standard) {
    return standard.multiply(BigDecimal.valueOf(LoadUncertainty.COVERAGE));
  }

  private static ObjectNode fineness(Fineness fineness) {
    ObjectNode json = NODES.objectNode();
    json.put("widestStep", grams(fineness.widestStep()));
    json.put("minimumWeight", grams(fineness.minimumWeight()));
    json.put("suffices", fineness.suffices());
    return json;
  }

  private static ObjectNode filling(Filling filling) {
    ObjectNode json = NODES.objectNode();
    Mass fill = filling.vessel().fill().mass();
    json.put("vessel", filling.vessel().name());
    json.put("exact", grams(fill));
    json.put("shown", grams(filling.shown()));
    json.put("rounding", grams(filling.shown().minus(fill)));
    json.set("tolerance", tolerance(filling.vessel().tolerance().of(fill)));
    json.put("scale", filling.scale().name());
    json.put("division", grams(filling.scale().division().step()));
    json.put("onPan", grams(filling.onPan()));
    json.put("spread", grams(filling.vessel().spread()));
    json.set("fineness", fineness(filling.fineness()));
    return json;
  }

  private static ObjectNode limit(LimitCheck check) {
    ObjectNode json = NODES.objectNode();
    json.put("rule", check.rule().id());
    json.put("of", check.of());
    json.set("most", load(check.limit().most()));
    json.set("planned", share(check.planned()));
    json.put("kept", check.isKept());
    check.limit().reason().ifPresent(reason -> json.put("reason", reason));
    return json;
  }

  private static ObjectNode sensitisers(WorkshopPlan plan) {
    ObjectNode json = NODES.objectNode();
    json.put("caution", SensitiserCheck.CAUTION);
    json.set("compared", each(plan.sensitisers(), check -> {
      ObjectNode one = NODES.objectNode();
      one.put("name", check.sensitiser().name());
      one.put("category", check.sensitiser().category().symbol());
      one.set("ofTotal", share(check.share()));
      one.set("classifiesFrom", share(check.sensitiser().classifiesFrom()));
      one.set("namedFrom", share(check.sensitiser().namedFrom()));
      one.put("standing", check.standing().name().toLowerCase(Locale.ROOT));
      return one;
    }));
    return json;
  }

  private static ObjectNode chart(BenchChart chart) {
    ObjectNode json = NODES.objectNode();
    json.set("forWax", each(chart.forWax(), row -> row(chart, row)));
    json.set("forVessels", each(chart.forVessels(), row -> row(chart, row)));
    return json;
  }

  private static ObjectNode row(BenchChart chart, BenchChart.Row row) {
    ObjectNode json = NODES.objectNode();
    json.put("amount", row.amount());
    ArrayNode parts = json.putArray("parts");
    for (int i = 0; i < row.parts().size(); i++) {
      ObjectNode cell = parts.addObject();
      cell.put("name", chart.plan().order().formula().ingredients().get(i).name());
      cell.put("shown", grams(row.parts().get(i).shown()));
      cell.put("fineEnough", row.parts().get(i).fineEnough());
    }
    json.put("total", grams(row.total()));
    return json;
  }

  private static ObjectNode load(Load load) {
    ObjectNode json = share(load.share());
    json.put("of", load.basis() == LoadBasis.OF_WAX ? "wax" : "total");
    return json;
  }

  private static ObjectNode share(Fraction share) {
    ObjectNode json = NODES.objectNode();
    json.put("fraction", share.toString());
    json.put("decimal", Wording.decimal(share));
    return json;
  }

  private static ObjectNode tolerance(Tolerance tolerance) {
    ObjectNode json = NODES.objectNode();
    json.put("under", grams(tolerance.under()));
    json.put("over", grams(tolerance.over()));
    return json;
  }

  private static String grams(Mass mass) {
    return mass.grams();
  }

  /** An estimate to six significant digits. */
  private static String six(BigDecimal number) {
    return Wording.plain(number.round(SIX));
  }

  private static <T> ArrayNode each(List<T> values, Function<T, JsonNode> json) {
    ArrayNode array = NODES.arrayNode();
    values.forEach(value -> array.add(json.apply(value)));
    return array;
  }
}
