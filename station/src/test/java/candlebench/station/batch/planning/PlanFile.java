package candlebench.station.batch.planning;

/** A small plan file to start from: three glasses of 252 g at 8 % of the wax, one pot, one scale. The materials are invented. */
public final class PlanFile {
  static final String TEXT = """
      {
        "recipe": {
          "id": "harbour-lane", "version": 1, "name": "Harbour Lane candle (invented)",
          "parts": [
            {"kind": "wax", "name": "Lane Soy 1", "share": "100 %", "of": "wax", "tolerance": "1 %"},
            {"kind": "oil", "name": "Quay Cedar", "share": "8 %", "of": "wax", "tolerance": "1 %"}
          ]
        },
        "vessel": {"name": "Lane Glass", "fill": {"weight": "252 g"}, "tolerance": "3 g", "empty": "210 g"},
        "pots": [{"name": "Pot A", "empty": "450 g"}],
        "scales": [{"name": "Bench scale", "capacity": "5000 g", "division": "0.1 g", "class": "II"}],
        "batch": {"vessels": 3}
      }
      """;

  private PlanFile() {}

  /** The text with each odd word replaced by the even one after it; a word that is not there is a mistake of the test. */
  static String text(String... fromTo) {
    String text = TEXT;
    for (int i = 0; i < fromTo.length; i += 2) {
      if (!text.contains(fromTo[i])) throw new AssertionError("no " + fromTo[i] + " in " + text);
      text = text.replace(fromTo[i], fromTo[i + 1]);
    }
    return text;
  }

  public static PlanOrder order(String... fromTo) {
    try {
      return RecipeJson.read(text(fromTo));
    } catch (UnreadablePlan wrong) {
      throw new AssertionError(wrong.getMessage(), wrong);
    }
  }

  static WorkshopPlan plan(String... fromTo) {
    return WorkshopPlan.of(order(fromTo));
  }
}
