package candlebench.station.batch.planning;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.Loss;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.ProcessWindows;
import candlebench.station.batch.ProcessWindows.Process;
import candlebench.station.batch.ProcessWindows.Window;
import candlebench.station.batch.Waits;
import candlebench.station.batch.Way;
import candlebench.station.batch.planning.FieldsJson.FieldWrong;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a plan file: a recipe, a kind of vessel, pots, scales and a batch, in strict JSON, as {@code plan-file.schema.json} says.
 *
 * <p>Amounts are text with their unit, such as {@code "252 g"}, {@code "0.86 g/mL"} or {@code "8 %"}, so that none is read in a unit that
 * was not meant and none loses a digit.
 */
public final class RecipeJson {
  /** Where the plan leaves room for a cure and the file says nothing of it: an over-pour by a tenth (common practice, no source). */
  static final Margin USUAL_CURE = new Margin.Share(Fraction.of(1, 10));

  static final String FEWEST = "fewest";

  private static final String OF_OIL = "oil";

  private RecipeJson() {}

  /** @throws UnreadablePlan if it is no plan file, naming the field and the fix */
  public static PlanOrder read(String text) throws UnreadablePlan {
    try {
      FieldsJson file =
          FieldsJson.read(text, "$schema", "recipe", "vessel", "pots", "cup", "scales", "batch");
      return order(file);
    } catch (FieldWrong wrong) {
      throw new UnreadablePlan(wrong.getMessage());
    }
  }

  private static PlanOrder order(FieldsJson file) {
    Formula formula = formula(file.object(
        "recipe",
        "the recipe, with its parts",
        "id",
        "version",
        "name",
        "oilLoad",
        "parts",
        "testedLoad",
        "waits",
        "windows",
        "trim"));
    Vessel vessel = vessel(file.object(
        "vessel", "the kind of vessel", "name", "fill", "tolerance", "empty", "spread"));
    List<Pot> pots = new ArrayList<>();
    for (FieldsJson each : file.objects("pots", "the pots", "name", "empty", "room"))
      pots.add(pot(each, each.text("name", "what the pot is called")));
    Optional<Pot> cup = file.objectIfAny("cup", "empty", "room").map(each -> pot(each, "cup"));
    List<BenchScale> scales = new ArrayList<>();
    for (FieldsJson each : file.objects(
        "scales",
        "the scales, the one you would rather use first",
        "name",
        "capacity",
        "division",
        "class",
        "interval",
        "repeatability")) scales.add(scale(each));
    FieldsJson batch = file.object(
        "batch", "the batch, with its vessels", "vessels", "loss", "charges", "cureMargin");
    int vessels = batch.count("vessels", "how many vessels are to be filled, such as 12");
    Loss loss =
        batch.objectIfAny("loss", "perPot", "perVessel").map(RecipeJson::loss).orElse(Loss.NONE);
    Charges charges = charges(batch);
    Margin cure = batch.typedIfAny("cureMargin", Typed::margin).orElse(USUAL_CURE);
    return batch.made(
        () -> new PlanOrder(formula, vessel, pots, cup, scales, vessels, loss, charges, cure));
  }

  private static Formula formula(FieldsJson recipe) {
    String id = recipe.text("id", "a short lasting name, such as harbour-lane");
    int version = recipe.count("version", "the recipe's version, counted from 1");
    String name = recipe.text("name", "what the product is called");
    Optional<Load> oilLoad = recipe.objectIfAny("oilLoad", "share", "of").map(RecipeJson::load);
    List<Ingredient> parts = new ArrayList<>();
    Fraction ofOil = Fraction.ZERO;
    for (FieldsJson each : recipe.objects(
        "parts",
        "the parts, in the order in which they go into the pot",
        "kind",
        "name",
        "way",
        "share",
        "of",
        "tolerance",
        "maximum",
        "sensitisers")) {
      parts.add(ingredient(each, oilLoad));
      if (isOfOil(each)) ofOil = ofOil.plus(each.typed("share", Typed::share, ""));
      else if (oilLoad.isPresent() && parts.get(parts.size() - 1).isOil())
        throw each.wrong("of", "say \"oil\", since the recipe gives the load of all oils together");
    }
    if (oilLoad.isPresent() && !ofOil.equals(Fraction.ONE))
      throw recipe.wrong(
          "parts", "the oils sum to " + Wording.percent(ofOil) + " of the oil: make it 100 %");
    Optional<LoadLimit> tested = limit(recipe, "testedLoad");
    Waits waits =
        recipe.objectIfAny("waits", "melt", "mix", "set").map(RecipeJson::waits).orElse(Waits.NONE);
    String trim = recipe.textIfAny("trim").orElse("");
    List<ProcessWindows> windows = windows(recipe);
    return recipe.made(() -> new Formula(id, version, name, parts, tested, waits, trim, windows));
  }

  private static List<ProcessWindows> windows(FieldsJson recipe) {
    List<ProcessWindows> windows = new ArrayList<>();
    for (FieldsJson each : recipe.objectsIfAny("windows", "lot", "melt", "oil", "pour")) {
      Map<Process, Window> known = new EnumMap<>(Process.class);
      for (Process process : Process.values())
        each.objectIfAny(word(process), "from", "to")
            .ifPresent(window -> known.put(process, window(window)));
      String lot = each.textIfAny("lot").orElse("");
      windows.add(each.made(() -> new ProcessWindows(lot, known)));
    }
    return windows;
  }

  private static Window window(FieldsJson window) {
    int from = window.typed("from", Typed::tenthsCelsius, "the colder end, such as \"75 °C\"");
    int to = window.typed("to", Typed::tenthsCelsius, "the hotter end, such as \"85 °C\"");
    return window.made(() -> new Window(from, to));
  }

  static String word(Process process) {
    return process.name().toLowerCase(Locale.ROOT);
  }

  private static Ingredient ingredient(FieldsJson part, Optional<Load> oilLoad) {
    PartKind kind = part.typed(
        "kind",
        typed -> Typed.oneOf(typed, PartKind.values(), RecipeJson::word),
        "wax, oil, additive or dye");
    String name = part.text("name", "the material, as you call it");
    Way way = part.typedIfAny("way", typed -> Typed.oneOf(typed, Way.values(), RecipeJson::word))
        .orElse(Way.usual(kind));
    Load load = isOfOil(part) ? shareOfOil(part, kind, oilLoad) : load(part);
    Allowance tolerance = tolerance(part, "what it is held to, such as \"1 %\" or \"0.5 g\"");
    Optional<LoadLimit> limit = limit(part, "maximum");
    List<Sensitiser> sensitisers = new ArrayList<>();
    for (FieldsJson each :
        part.objectsIfAny("sensitisers", "name", "category", "content", "specificLimit"))
      sensitisers.add(sensitiser(each));
    return part.made(() -> new Ingredient(name, kind, way, load, tolerance, limit, sensitisers));
  }

  static String word(PartKind kind) {
    return switch (kind) {
      case WAX -> "wax";
      case OIL -> OF_OIL;
      case ADDITIVE -> "additive";
      case DYE -> "dye";
    };
  }

  static String word(Way way) {
    return switch (way) {
      case POURED -> "poured";
      case BY_PIECES -> "by pieces";
      case FROM_BOTTLE -> "from the bottle";
      case IN_CUP -> "in a cup";
    };
  }

  private static boolean isOfOil(FieldsJson part) {
    return part.isText("of") && part.text("of", "").equals(OF_OIL);
  }

  private static Load shareOfOil(FieldsJson part, PartKind kind, Optional<Load> oilLoad) {
    if (kind != PartKind.OIL)
      throw part.wrong("of", "only an oil states its share of the oil: write wax or total");
    if (oilLoad.isEmpty())
      throw part.wrong(
          "of",
          "a share of the oil needs the load of all oils: give recipe.oilLoad, or write wax or total");
    Fraction share = part.typed("share", Typed::share, "its share of the oil, such as \"60 %\"");
    return part.made(
        () -> new Load(share.times(oilLoad.get().share()), oilLoad.get().basis()));
  }

  private static Load load(FieldsJson fields) {
    Fraction share = fields.typed("share", Typed::share, "how much, such as \"8 %\"");
    LoadBasis basis = fields.typed(
        "of", Typed::basis, "what the share is of, \"wax\" or \"total\": both are in print");
    return fields.made(() -> new Load(share, basis));
  }

  private static Optional<LoadLimit> limit(FieldsJson fields, String name) {
    return fields.objectIfAny(name, "share", "of", "reason").map(limit -> {
      Load most = load(limit);
      Optional<String> reason = limit.textIfAny("reason");
      return limit.made(() -> new LoadLimit(most, reason));
    });
  }

  private static Sensitiser sensitiser(FieldsJson fields) {
    String name = fields.text("name", "the substance, as the supplier's sheet names it");
    SensitiserCategory category =
        fields.typed("category", Typed::category, "its category for the skin: 1, 1A or 1B");
    Fraction content =
        fields.typed("content", Typed::share, "its share of this part, such as \"11 %\"");
    Optional<Fraction> specific = fields.typedIfAny("specificLimit", Typed::share);
    return fields.made(() -> new Sensitiser(name, category, content, specific));
  }

  private static Allowance tolerance(FieldsJson fields, String fix) {
    if (!fields.has("tolerance") || fields.isText("tolerance"))
      return Allowance.of(fields.typed("tolerance", Typed::margin, fix));
    FieldsJson sides = fields.object("tolerance", fix, "under", "over");
    return new Allowance(
        sides.typed("under", Typed::margin, "how far below is allowed, such as \"2 g\""),
        sides.typed("over", Typed::margin, "how far above is allowed, such as \"3 g\""));
  }

  private static Waits waits(FieldsJson fields) {
    Duration melt = fields.typedIfAny("melt", Typed::duration).orElse(Duration.ZERO);
    Duration mix = fields.typedIfAny("mix", Typed::duration).orElse(Duration.ZERO);
    Duration set = fields.typedIfAny("set", Typed::duration).orElse(Duration.ZERO);
    return fields.made(() -> new Waits(melt, mix, set));
  }

  private static Vessel vessel(FieldsJson vessel) {
    String name = vessel.text("name", "what the kind of vessel is called");
    Fill fill = fill(vessel, "fill");
    Allowance tolerance = tolerance(
        vessel, "what a fill is held to, such as {\"under\": \"2 g\", \"over\": \"3 g\"}");
    Optional<Mass> empty = vessel.typedIfAny("empty", Typed::mass);
    Mass spread = vessel.typedIfAny("spread", Typed::mass).orElse(Mass.ZERO);
    return vessel.made(() -> new Vessel(name, fill, tolerance, empty, spread));
  }

  private static Fill fill(FieldsJson of, String name) {
    String ways =
        "{\"weight\": \"252 g\"}, {\"waterWeight\": \"290 g\", \"density\": \"0.87 g/mL\"} or {\"capacity\": \"300 mL\", \"density\": \"0.84 g/mL\"}";
    if (of.isText(name)) throw of.wrong(name, "say whether it is a weight or a capacity: " + ways);
    FieldsJson fill = of.object(name, ways, "weight", "waterWeight", "capacity", "density");
    if (fill.has("weight")) {
      if (fill.has("waterWeight") || fill.has("capacity") || fill.has("density"))
        throw of.wrong(name, "a weight stands alone: " + ways);
      return new Fill.Measured(fill.typed("weight", Typed::mass, ways));
    }
    if (fill.has("waterWeight") == fill.has("capacity"))
      throw of.wrong(name, "give one way to know it: " + ways);
    String why =
        "the density of the mix as you measured it, such as \"0.86 g/mL\"; a volume has no weight without one";
    Density density = fill.typed("density", Typed::density, why);
    if (fill.has("waterWeight"))
      return new Fill.OfWater(fill.typed("waterWeight", Typed::mass, ways), density);
    return new Fill.OfCapacity(fill.typed("capacity", Typed::volume, ways), density);
  }

  private static Pot pot(FieldsJson pot, String name) {
    Mass empty = pot.typed("empty", Typed::mass, "its own weight, such as \"450 g\"");
    Optional<Fill> room = pot.has("room") ? Optional.of(fill(pot, "room")) : Optional.empty();
    return pot.made(() -> new Pot(name, empty, room));
  }

  private static BenchScale scale(FieldsJson scale) {
    String name = scale.text("name", "what the scale is called");
    Mass capacity = scale.typed("capacity", Typed::mass, "the most it carries, such as \"5 kg\"");
    Mass step = scale.typed("division", Typed::mass, "its step, such as \"0.1 g\"");
    Optional<AccuracyClass> accuracy = scale.typedIfAny("class", Typed::accuracy);
    Mass interval = scale.typedIfAny("interval", Typed::mass).orElse(step);
    Mass repeatability = scale.typedIfAny("repeatability", Typed::mass).orElse(Mass.ZERO);
    return scale.made(() ->
        new BenchScale(name, capacity, new Division(step), accuracy, interval, repeatability));
  }

  private static Loss loss(FieldsJson loss) {
    return new Loss(
        loss.typed("perPot", Typed::mass, "what stays in each pot, such as \"8 g\""),
        loss.typed("perVessel", Typed::mass, "what is lost at each vessel, such as \"0.2 g\""));
  }

  private static Charges charges(FieldsJson batch) {
    if (!batch.has("charges")) return new Charges.OnePerPot();
    if (batch.isText("charges"))
      return batch.typed("charges", RecipeJson::fewest, "a whole number, or \"fewest\"");
    int count = batch.count("charges", "a whole number, or \"fewest\"");
    if (count < 1) throw batch.wrong("charges", count + " is not at least 1");
    return new Charges.Exactly(count);
  }

  private static Charges fewest(String typed) {
    if (typed.equals(FEWEST)) return new Charges.Fewest();
    throw new IllegalArgumentException(
        "'" + typed + "' is not 'fewest': write that, or a whole number without quotes");
  }
}
