package candlebench.station.batch;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Remedy.Kind;
import candlebench.station.batch.Remedy.WhyNot;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class RemediesTest {
  private static final Room ROOMY = new Room(grams("350"), Mass.ZERO, Mass.ZERO);

  private static Mass grams(String grams) {
    return Mass.ofGrams(grams);
  }

  private static BatchPlan plan(Load load, String limitPercent) {
    Part oil = new Part(
        "oil",
        PartKind.OIL,
        Way.POURED,
        load,
        Tolerance.ofGrams("0.5", "0.5"),
        Fraction.percent(limitPercent));
    return new BatchPlan(Recipes.of("252", Loss.NONE, Recipes.WAX, oil), 3);
  }

  private static Remedy remedy(Kind kind, BatchPlan plan, String wax, String oil, Room room) {
    return new Remedies(plan, Map.of(0, grams(wax), 1, grams(oil)), 1, room)
        .all().stream().filter(way -> way.kind() == kind).findFirst().orElseThrow();
  }

  @Test
  void five_grams_of_oil_over_at_8_per_cent_of_wax_ask_for_62_5_g_of_wax() {
    Remedy add = remedy(Kind.ADD_MORE, plan(Load.ofWax("8"), "10"), "700", "61", ROOMY);
    assertThat(add.more()).isEqualTo(Map.of(0, grams("62.5")));
    assertThat(add.total()).isEqualTo(grams("823.5"));
    assertThat(add.surplus()).isEqualTo(grams("67.5"));
    assertThat(add.reached()).isEqualTo(Fraction.percent("8"));
    assertThat(add.whyNot()).isEmpty();
  }

  @Test
  void five_grams_of_oil_over_at_8_per_cent_of_total_ask_for_57_5_g_of_wax() {
    Remedy add = remedy(Kind.ADD_MORE, plan(Load.ofTotal("8"), "10"), "695.52", "65.48", ROOMY);
    assertThat(add.more()).isEqualTo(Map.of(0, grams("57.5")));
    assertThat(add.total()).isEqualTo(grams("818.5"));
  }

  @Test
  void one_of_three_oils_over_asks_for_more_of_all_that_is_in_and_nothing_of_what_is_to_come() {
    BatchPlan plan = new BatchPlan(
        Recipes.of(
            "252",
            Loss.NONE,
            Recipes.WAX,
            Recipes.part("additive", PartKind.ADDITIVE, Load.ofWax("1")),
            Recipes.part("first oil", PartKind.OIL, Load.ofWax("4")),
            Recipes.part("second oil", PartKind.OIL, Load.ofWax("3")),
            Recipes.part("third oil", PartKind.OIL, Load.ofWax("1"))),
        4);
    // 33 g are 3 % of 1100 g of wax. The additive, within its tolerance, asks for no wax of its
    // own.
    Map<Integer, Mass> inPot =
        Map.of(0, grams("1000"), 1, grams("10.4"), 2, grams("40"), 3, grams("33"));
    Remedy add = new Remedies(plan, inPot, 3, ROOMY).all().get(0);
    assertThat(add.more()).isEqualTo(Map.of(0, grams("100"), 1, grams("0.6"), 2, grams("4")));
    assertThat(add.total()).isEqualTo(grams("1199"));
    assertThat(add.reached()).isEqualTo(Fraction.percent("3"));
  }

  @Test
  void after_the_cure_of_a_blend_more_wax_than_asked_for_takes_the_other_parts_along() {
    BatchPlan plan = new BatchPlan(
        Recipes.of(
            "252",
            Loss.NONE,
            Recipes.WAX,
            Recipes.oil(Load.ofTotal("10")),
            Recipes.part("dye", PartKind.DYE, Load.ofWax("1"))),
        4);
    // W = T (1 - 0.1) / 1.01: 909 g of wax make 1020.1 g.
    Map<Integer, Mass> cured = Map.of(0, grams("909"), 1, grams("101"), 2, grams("9"));
    assertThat(plan.lacking(2, 1, cured)).isEqualTo(grams("0.09"));
    assertThat(plan.lacking(1, 1, cured)).isEqualTo(grams("1.01"));
  }

  @Test
  void keeping_it_says_the_load_and_is_closed_above_the_limit() {
    Remedy allowed = remedy(Kind.KEEP, plan(Load.ofWax("8"), "10"), "700", "61", ROOMY);
    assertThat(allowed.reached().percentText(2)).isEqualTo("8.71");
    assertThat(allowed.whyNot()).isEmpty();
    Remedy closed = remedy(Kind.KEEP, plan(Load.ofWax("8"), "8.5"), "700", "61", ROOMY);
    assertThat(closed.whyNot()).contains(WhyNot.OVER_LIMIT);
  }

  @Test
  void wax_is_not_added_where_pot_or_scale_have_no_room() {
    Room smallPot = new Room(grams("350"), grams("800"), Mass.ZERO);
    Room smallScale = new Room(grams("350"), Mass.ZERO, grams("1170"));
    BatchPlan plan = plan(Load.ofWax("8"), "10");
    assertThat(remedy(Kind.ADD_MORE, plan, "700", "61", smallPot).whyNot())
        .contains(WhyNot.POT_TOO_SMALL);
    assertThat(remedy(Kind.ADD_MORE, plan, "700", "61", smallScale).whyNot())
        .contains(WhyNot.SCALE_TOO_SMALL);
  }

  @Test
  void oil_on_wax_cannot_be_taken_back_but_alone_or_in_pieces_a_part_can() {
    BatchPlan plan = plan(Load.ofWax("8"), "10");
    assertThat(remedy(Kind.TAKE_BACK, plan, "700", "61", ROOMY).whyNot())
        .contains(WhyNot.ALREADY_IN_POT);
    Remedy waxOver = new Remedies(plan, Map.of(0, grams("712")), 0, ROOMY)
        .all().stream().filter(way -> way.kind() == Kind.TAKE_BACK).findFirst().orElseThrow();
    assertThat(waxOver.whyNot()).isEmpty();
    assertThat(waxOver.takeOut()).isEqualTo(grams("12"));
  }

  @Test
  void splitting_off_an_even_mix_and_adding_wax_comes_out_at_the_planned_total() {
    Remedy split = remedy(Kind.SPLIT_OFF, plan(Load.ofWax("8"), "10"), "700", "61", ROOMY);
    // 761 g x 5/61 out; then 700 - 700 x 56/61 in.
    assertThat(split.takeOut().text(candlebench.shared.MassUnit.GRAM, 3)).isEqualTo("62.377");
    assertThat(split.more().get(0).text(candlebench.shared.MassUnit.GRAM, 3)).isEqualTo("57.377");
    assertThat(split.surplus().abs()).isLessThan(new Mass(10));
  }

  @Test
  void for_wax_over_nothing_is_to_be_added_and_oil_follows() {
    Remedies ways = new Remedies(plan(Load.ofWax("8"), "10"), Map.of(0, grams("712")), 0, ROOMY);
    Remedy add = ways.all().get(0);
    assertThat(add.whyNot()).contains(WhyNot.NOTHING_TO_ADD);
    Remedy keep = ways.all().get(1);
    assertThat(keep.total()).isEqualTo(grams("768.96"));
    assertThat(keep.whyNot()).isEmpty();
  }

  @Test
  void an_over_pour_taken_back_to_the_last_gram_leaves_nothing_to_split_off() {
    for (String there : new String[] {"0", "-0.1", "56"}) {
      Remedies ways = new Remedies(
          plan(Load.ofWax("8"), "10"), Map.of(0, grams("700"), 1, grams(there)), 1, ROOMY);
      Remedy split = ways.all().get(3);
      assertThat(split.kind()).isEqualTo(Kind.SPLIT_OFF);
      assertThat(split.takeOut()).isEqualTo(Mass.ZERO);
      assertThat(split.whyNot()).contains(WhyNot.NOTHING_TO_ADD);
    }
    assertThat(new Remedies(plan(Load.ofWax("8"), "10"), Map.of(0, Mass.ZERO), 0, ROOMY).all())
        .hasSize(5);
  }

  @Test
  void adding_restores_every_load_whatever_the_recipe() {
    SplittableRandom random = new SplittableRandom(11);
    for (int i = 0; i < 2000; i++) {
      Load load = random.nextBoolean()
          ? Load.ofWax(1 + random.nextInt(12) + ".5")
          : Load.ofTotal(1 + random.nextInt(12) + ".5");
      Part additive = Recipes.part("additive", PartKind.ADDITIVE, Load.ofWax("0.5"));
      BatchPlan plan = new BatchPlan(
          Recipes.of("252", Loss.NONE, Recipes.WAX, additive, Recipes.oil(load)),
          1 + random.nextInt(12));
      Map<Integer, Mass> inPot = new TreeMap<>();
      for (int part = 0; part < 3; part++) inPot.put(part, plan.target(part, inPot));
      inPot.merge(2, inPot.get(2).times(random.nextInt(1, 30), 100), Mass::plus);
      Remedy add = new Remedies(plan, inPot, 2, ROOMY).all().get(0);
      add.more().forEach((part, more) -> inPot.merge(part, more, Mass::plus));
      assertThat(plan.target(2, inPot).minus(inPot.get(2)).abs()).isLessThanOrEqualTo(new Mass(20));
      assertThat(plan.target(1, inPot).minus(inPot.get(1)).abs()).isLessThanOrEqualTo(new Mass(20));
      assertThat(add.total()).isEqualTo(inPot.values().stream().reduce(Mass.ZERO, Mass::plus));
    }
  }
}
