package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.ProcessWindows;
import candlebench.station.batch.Waits;
import candlebench.station.batch.Way;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Duration;
import java.util.List;
import java.util.function.Function;

/**
 * Writes a plan file that {@link RecipeJson} reads back as the same order. Weights are in grams, capacities in millilitres; an oil's share
 * of the oil is written as what it comes to.
 */
public final class RecipeWriterJson {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final JsonMapper JSON = new JsonMapper();

  private RecipeWriterJson() {}

  public static String text(PlanOrder order) {
    ObjectNode file = NODES.objectNode();
    file.set("recipe", recipe(order.formula()));
    file.set("vessel", vessel(order.vessel()));
    file.set("pots", each(order.pots(), pot -> named(pot.name(), pot(pot))));
    order.cup().ifPresent(cup -> file.set("cup", pot(cup)));
    file.set("scales", each(order.scales(), RecipeWriterJson::scale));
    file.set("batch", batch(order));
    try {
      return JSON.writer(new DefaultPrettyPrinter()).writeValueAsString(file) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a plan file that cannot be written", e);
    }
  }

  private static ObjectNode recipe(Formula formula) {
    ObjectNode json = NODES.objectNode();
    json.put("id", formula.id());
    json.put("version", formula.version());
    json.put("name", formula.name());
    json.set("parts", each(formula.ingredients(), RecipeWriterJson::part));
    formula.tested().ifPresent(tested -> json.set("testedLoad", limit(tested)));
    if (!formula.waits().equals(Waits.NONE)) {
      ObjectNode waits = json.putObject("waits");
      waits.put("melt", seconds(formula.waits().melt()));
      waits.put("mix", seconds(formula.waits().mix()));
      waits.put("set", seconds(formula.waits().set()));
    }
    if (!formula.windows().isEmpty())
      json.set("windows", each(formula.windows(), RecipeWriterJson::windows));
    if (!formula.trim().isEmpty()) json.put("trim", formula.trim());
    return json;
  }

  private static ObjectNode windows(ProcessWindows of) {
    ObjectNode json = NODES.objectNode();
    if (!of.lot().isEmpty()) json.put("lot", of.lot());
    for (ProcessWindows.Process each : ProcessWindows.Process.values())
      if (of.windows().containsKey(each))
        json.putObject(RecipeJson.word(each))
            .put("from", celsius(of.windows().get(each).fromTenths()))
            .put("to", celsius(of.windows().get(each).toTenths()));
    return json;
  }

  private static String celsius(int tenths) {
    return BigDecimal.valueOf(tenths, 1).stripTrailingZeros().toPlainString() + " °C";
  }

  private static ObjectNode part(Ingredient part) {
    ObjectNode json = NODES.objectNode();
    json.put("kind", RecipeJson.word(part.kind()));
    json.put("name", part.name());
    if (part.way() != Way.usual(part.kind())) json.put("way", RecipeJson.word(part.way()));
    json.setAll(load(part.load()));
    tolerance(json, part.tolerance());
    part.limit().ifPresent(limit -> json.set("maximum", limit(limit)));
    if (part.sensitisers().isEmpty()) return json;
    json.set("sensitisers", each(part.sensitisers(), sensitiser -> {
      ObjectNode one = NODES.objectNode();
      one.put("name", sensitiser.name());
      one.put("category", sensitiser.category().symbol());
      one.put("content", share(sensitiser.content()));
      sensitiser.specificLimit().ifPresent(own -> one.put("specificLimit", share(own)));
      return one;
    }));
    return json;
  }

  private static ObjectNode vessel(Vessel vessel) {
    ObjectNode json = NODES.objectNode();
    json.put("name", vessel.name());
    json.set("fill", fill(vessel.fill()));
    tolerance(json, vessel.tolerance());
    vessel.empty().ifPresent(empty -> json.put("empty", grams(empty)));
    json.put("spread", grams(vessel.spread()));
    return json;
  }

  private static ObjectNode pot(Pot pot) {
    ObjectNode json = NODES.objectNode();
    json.put("empty", grams(pot.empty()));
    pot.room().ifPresent(room -> json.set("room", fill(room)));
    return json;
  }

  private static ObjectNode named(String name, ObjectNode rest) {
    ObjectNode json = NODES.objectNode();
    json.put("name", name);
    json.setAll(rest);
    return json;
  }

  private static ObjectNode scale(BenchScale scale) {
    ObjectNode json = NODES.objectNode();
    json.put("name", scale.name());
    json.put("capacity", grams(scale.capacity()));
    json.put("division", grams(scale.division().step()));
    scale.accuracy().ifPresent(accuracy -> json.put("class", accuracy.name()));
    json.put("interval", grams(scale.interval()));
    json.put("repeatability", grams(scale.repeatability()));
    return json;
  }

  private static ObjectNode batch(PlanOrder order) {
    ObjectNode json = NODES.objectNode();
    json.put("vessels", order.vessels());
    ObjectNode loss = json.putObject("loss");
    loss.put("perPot", grams(order.loss().perPot()));
    loss.put("perVessel", grams(order.loss().perVessel()));
    if (order.charges() instanceof Charges.Exactly exactly) json.put("charges", exactly.count());
    if (order.charges() instanceof Charges.Fewest) json.put("charges", RecipeJson.FEWEST);
    json.put("cureMargin", margin(order.cure()));
    return json;
  }

  private static ObjectNode fill(Fill fill) {
    ObjectNode json = NODES.objectNode();
    if (fill instanceof Fill.Measured measured) return json.put("weight", grams(measured.mass()));
    if (fill instanceof Fill.OfWater water)
      return json.put("waterWeight", grams(water.water()))
          .put("density", water.density().toString());
    if (fill instanceof Fill.OfCapacity capacity)
      return json.put("capacity", capacity.capacity().toString())
          .put("density", capacity.density().toString());
    throw new AssertionError(fill);
  }

  private static void tolerance(ObjectNode json, Allowance tolerance) {
    if (tolerance.under().equals(tolerance.over())) {
      json.put("tolerance", margin(tolerance.under()));
      return;
    }
    json.putObject("tolerance")
        .put("under", margin(tolerance.under()))
        .put("over", margin(tolerance.over()));
  }

  private static ObjectNode limit(LoadLimit limit) {
    ObjectNode json = load(limit.most());
    limit.reason().ifPresent(reason -> json.put("reason", reason));
    return json;
  }

  private static ObjectNode load(Load load) {
    ObjectNode json = NODES.objectNode();
    json.put("share", share(load.share()));
    json.put("of", load.basis() == LoadBasis.OF_WAX ? "wax" : "total");
    return json;
  }

  private static String margin(Margin margin) {
    if (margin instanceof Margin.Grams grams) return grams(grams.mass());
    if (margin instanceof Margin.Share share) return share(share.share());
    throw new AssertionError(margin);
  }

  /** Per cent where two decimals hold it, as recipes are written; else the exact fraction. */
  private static String share(Fraction share) {
    boolean plain = BigInteger.valueOf(10_000).mod(share.denominator()).signum() == 0;
    return plain ? Wording.percent(share) : share.toString();
  }

  private static String grams(Mass mass) {
    return mass.toString();
  }

  private static String seconds(Duration duration) {
    return duration.toSeconds() + " s";
  }

  private static <T> ArrayNode each(List<T> values, Function<T, ObjectNode> json) {
    ArrayNode array = NODES.arrayNode();
    values.forEach(value -> array.add(json.apply(value)));
    return array;
  }
}
