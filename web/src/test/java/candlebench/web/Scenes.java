package candlebench.web;

import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.BatchView;
import candlebench.station.view.StationView.BenchView;
import candlebench.station.view.StationView.Choice;
import candlebench.station.view.StationView.Countdown;
import candlebench.station.view.StationView.Cue;
import candlebench.station.view.StationView.Key;
import candlebench.station.view.StationView.PartState;
import candlebench.station.view.StationView.PartView;
import candlebench.station.view.StationView.PotState;
import candlebench.station.view.StationView.PotView;
import candlebench.station.view.StationView.RecordView;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.StationView.ScaleView;
import candlebench.station.view.StationView.Trust;
import candlebench.station.view.StationView.WeighingView;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;

/** Views for each state of the bench, as a page may be sent them. Recipe, lots and weights are invented. */
final class Scenes {
  private static final AtomicLong REVISION = new AtomicLong();

  /** A scene does not age while it is looked at: it was made an hour from now. */
  private static final long FRESH = System.nanoTime() + 3_600_000_000_000L;

  private Scenes() {}

  /** The same, made now, so that it ages. */
  static StationView ageing(StationView view) {
    return new StationView(
        REVISION.incrementAndGet(),
        System.nanoTime(),
        view.practice(),
        view.scales(),
        view.bench(),
        view.record());
  }

  /** Every scene by its name. */
  static Map<String, StationView> all() {
    Map<String, StationView> scenes = new LinkedHashMap<>();
    scenes.put("no-scale", new BenchWithoutScale(ShownUnit.GRAM).view());
    scenes.put("idle", idle());
    scenes.put("place-pot", placePot());
    scenes.put("pour", pouring());
    scenes.put("slow", oil("51.8", "4.2", 925, Cue.SLOW, Trust.MOVING, 1400L));
    scenes.put("stop", oil("54.9", "1.1", 980, Cue.STOP, Trust.MOVING, 0L));
    scenes.put("drops", drops());
    scenes.put("hold-still", oil("56.1", "-0.1", 1002, Cue.HOLD_STILL, Trust.LIVE, -1L));
    scenes.put("count-in", countIn());
    scenes.put("over", over());
    scenes.put("stale", stale());
    scenes.put("lost", lost());
    scenes.put("assumed", assumed());
    scenes.put("overload", overload());
    scenes.put("fill-vessel", fillVessel());
    scenes.put("waiting", waiting());
    scenes.put("in-turns", inTurns());
    scenes.put("finished", finished());
    return scenes;
  }

  /** The sentences of the scenes, which are no part of the program. */
  static Map<String, String> sentences() {
    return Map.ofEntries(
        Map.entry("detail.idle", "Three recipes are known."),
        Map.entry("now.add", "Pour {part}."),
        Map.entry("detail.follows-wax", "{load} of the {wax} of wax that is in: {target}."),
        Map.entry("detail.place-pot", "Empty it weighs {empty}."),
        Map.entry("now.over", "Too much {part}."),
        Map.entry("detail.over", "The load is now {load}; planned was {planned}."),
        Map.entry("now.fill", "Fill vessel {number} of {of}."),
        Map.entry("detail.enough", "{left} left for {vessels} vessels: enough."),
        Map.entry("now.stir", "Stir."),
        Map.entry("detail.stir", "Slowly, without beating air in."),
        Map.entry("now.finished", "{vessels} vessels are poured."),
        Map.entry("detail.finished", "Write {code} on each. Load {load}."),
        Map.entry("count-in.taking", "Taking {amount}"),
        Map.entry("undo.taken", "{part} {amount}"),
        Map.entry("timer.stir", "Keep stirring"),
        Map.entry("key.take-now", "Take it now"),
        Map.entry("key.stirred", "Stirred"),
        Map.entry("key.next-batch", "Next batch"),
        Map.entry("choice.add-wax", "Add {amount} of wax"),
        Map.entry("choice.keep", "Keep it at {load}"),
        Map.entry("choice.take-back", "Take oil back"),
        Map.entry("choice.scrap", "Scrap the pot"),
        Map.entry("cost.surplus", "Makes {amount} more than the vessels hold."),
        Map.entry("cost.above-tested", "Above the tested load of {tested}."),
        Map.entry("cost.lost", "Loses {amount}."),
        Map.entry("why-not.mixed", "it is in the wax already."),
        Map.entry("trouble.stale", "The scale has gone quiet. Wake it up; nothing is lost."),
        Map.entry("trouble.silent", "Nothing comes from the scale."),
        Map.entry(
            "trouble.lost", "The cable is out. {known} of {part} is known. Plug it in again."),
        Map.entry("record.last", "{part} {amount}"),
        Map.entry("answer.done", "Done."));
  }

  static StationView pouring() {
    return oil("12.3", "43.7", 220, Cue.POUR, Trust.MOVING, -1L);
  }

  /** The scale's live number, alone on the bench. */
  static StationView showing(String grams) {
    return oil(grams, "0.0", 1000, Cue.POUR, Trust.LIVE, -1L, scale(grams, "live", "stable", 0));
  }

  /** Eight figures, as a scale for pots may show on a scale of 0.01 g. */
  static StationView longWeight() {
    return view(
        List.of(scale("12345.67", "live", "unstable", 40)),
        bench("ADD_PART", say("now.add", "part", "Container soya wax, second delivery of November"))
            .detail(say(
                "detail.follows-wax",
                "wax",
                "12 345.67 g",
                "load",
                "8.75 % of wax",
                "target",
                "12 350.00 g"))
            .cue(Cue.POUR)
            .weighing(new WeighingView(
                "Wax",
                "Bench scale",
                Trust.MOVING,
                "12345.67",
                "12345.67",
                "24691.34",
                "24691.3401",
                "100.00",
                "100.00",
                "g",
                "",
                500))
            .parts(parts(0))
            .build());
  }

  static StationView over() {
    WeighingView weighing = oilWeighing("61.0", "-5.0", 1089, Trust.LIVE);
    return view(
        List.of(scale("761.0", "live", "stable", 40)),
        bench("OVER_POUR", say("now.over", "part", "Harbour Fig oil"))
            .detail(
                say("detail.over", "by", "5.0 g", "load", "8.71 % of wax", "planned", "8 % of wax"))
            .cue(Cue.OVER)
            .weighing(weighing)
            .choices(List.of(
                new Choice(
                    "add-wax",
                    say("choice.add-wax", "amount", "62.5 g"),
                    Optional.of(say("cost.surplus", "amount", "67.5 g")),
                    true,
                    Optional.empty(),
                    false),
                new Choice(
                    "keep",
                    say("choice.keep", "load", "8.71 % of wax"),
                    Optional.of(say("cost.above-tested", "tested", "8.5 %")),
                    true,
                    Optional.empty(),
                    true),
                new Choice(
                    "take-back",
                    Say.of("choice.take-back"),
                    Optional.empty(),
                    false,
                    Optional.of(Say.of("why-not.mixed")),
                    false),
                new Choice(
                    "scrap",
                    Say.of("choice.scrap"),
                    Optional.of(say("cost.lost", "amount", "761 g")),
                    true,
                    Optional.empty(),
                    true)))
            .parts(parts(1))
            .build());
  }

  static StationView stale() {
    return view(
        List.of(scale("731.2", "silent", "unstable", 1600).with("trouble.silent")),
        bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
            .cue(Cue.WAITING)
            .weighing(oilWeighing("31.2", "24.8", 557, Trust.STALE))
            .trouble(Say.of("trouble.stale"))
            .parts(parts(1))
            .build());
  }

  private static StationView lost() {
    return view(
        List.of(scale("", "lost", "", -1).with("trouble.lost")),
        bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
            .cue(Cue.WAITING)
            .weighing(oilWeighing("", "", 557, Trust.NONE))
            .trouble(say("trouble.lost", "part", "Harbour Fig oil", "known", "31.2 g"))
            .parts(parts(1))
            .build());
  }

  private static StationView overload() {
    return view(
        List.of(scale("", "live", "overload", 90).with("trouble.overload")),
        bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
            .cue(Cue.WAITING)
            .weighing(oilWeighing("", "", 557, Trust.NONE))
            .trouble(Say.of("trouble.overload"))
            .parts(parts(1))
            .build());
  }

  private static StationView assumed() {
    return view(
        List.of(scale("731.2", "live", "unstable", 40)),
        bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
            .cue(Cue.POUR)
            .weighing(oilWeighing("31.2", "24.8", 557, Trust.ASSUMED))
            .parts(parts(1))
            .build());
  }

  /** A view in which each text that a person can have typed is this one. */
  static StationView everyTextIs(String text) {
    StationView over = over();
    PartView part = new PartView(text, PartState.NOW, "56.0", "", "g", "", false);
    BenchView bench = bench("OVER_POUR", say("now.over", "part", text))
        .detail(say("detail.over", "by", text, "load", text, "planned", text))
        .cue(Cue.OVER)
        .weighing(oilWeighing("61.0", "-5.0", 1089, Trust.LIVE))
        .choices(List.of(new Choice(
            "keep",
            say("choice.keep", "load", text),
            Optional.of(say("cost.lost", "amount", text)),
            true,
            Optional.empty(),
            true)))
        .parts(List.of(part))
        .batch(Optional.of(new BatchView(text, text, 12, "8", "of_wax", "7.41")))
        .build();
    ScaleView scale = over.scales().get(0);
    return new StationView(
        REVISION.incrementAndGet(),
        FRESH,
        false,
        List.of(new ScaleView(
            text,
            scale.link(),
            scale.format(),
            scale.shown(),
            scale.unit(),
            scale.stability(),
            scale.ageMillis(),
            false,
            1,
            0,
            Optional.empty())),
        bench,
        new RecordView(
            37,
            "9f2c".repeat(16),
            Optional.of(say("record.last", "part", text, "amount", text)),
            Optional.empty()));
  }

  /** The same pour at the practice bench. */
  static StationView practising() {
    StationView pouring = pouring();
    return new StationView(
        pouring.revision(),
        pouring.madeAtNanos(),
        true,
        pouring.scales(),
        pouring.bench(),
        pouring.record());
  }

  /** No scale answers, so that a weight may be typed in. */
  static StationView byHand() {
    return view(
        List.of(scale("", "lost", "", -1).with("trouble.lost")),
        bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
            .cue(Cue.WAITING)
            .weighing(oilWeighing("", "", 557, Trust.NONE))
            .trouble(say("trouble.lost", "part", "Harbour Fig oil", "known", "31.2 g"))
            .parts(parts(1))
            .byHand()
            .build());
  }

  private static StationView idle() {
    return view(
        List.of(scale("0.0", "live", "stable", 80)),
        bench("IDLE", Say.of("now.idle"))
            .detail(Say.of("detail.idle"))
            .batch(Optional.empty())
            .build());
  }

  private static StationView placePot() {
    return view(
        List.of(scale("0.0", "live", "stable", 80)),
        bench("PLACE_POT", say("now.place-pot", "pot", "blue pot"))
            .detail(say("detail.place-pot", "empty", "412.6 g"))
            .cue(Cue.WAITING)
            .parts(parts(0))
            .build());
  }

  private static StationView drops() {
    BenchView bench = bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
        .cue(Cue.DROPS)
        .dropsToGo(9)
        .weighing(oilWeighing("55.7", "0.3", 995, Trust.LIVE))
        .parts(parts(1))
        .build();
    return view(List.of(scale("755.7", "live", "stable", 40)), bench);
  }

  private static StationView countIn() {
    BenchView bench = bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
        .cue(Cue.HOLD_STILL)
        .weighing(oilWeighing("56.1", "-0.1", 1002, Trust.LIVE))
        .countIn(new Countdown(say("count-in.taking", "amount", "56.1 g"), 1900, 3000))
        .confirm(new Key("go-on", Say.of("key.take-now")))
        .parts(parts(1))
        .build();
    return view(List.of(scale("756.1", "live", "stable", 40)), bench);
  }

  private static StationView fillVessel() {
    return view(
        List.of(scale("371.4", "live", "unstable", 40)),
        bench("FILL_VESSEL", say("now.fill", "number", "4", "of", "12"))
            .detail(say("detail.enough", "left", "1 640 g", "vessels", "8"))
            .cue(Cue.POUR)
            .weighing(new WeighingView(
                "Vessel 4",
                "Bench scale",
                Trust.MOVING,
                "171.4",
                "55.6",
                "227.0",
                "227.0",
                "3.0",
                "2.0",
                "g",
                "",
                755))
            .undo(new Countdown(
                say("undo.taken", "part", "Vessel 3", "amount", "227.6 g"), 6200, 10000))
            .parts(vessels(3))
            .build());
  }

  private static StationView waiting() {
    return view(
        List.of(scale("1168.7", "live", "stable", 40)),
        bench("STIR", Say.of("now.stir"))
            .detail(Say.of("detail.stir"))
            .cue(Cue.WAITING)
            .timer(new Countdown(Say.of("timer.stir"), 83_000, 120_000))
            .confirm(new Key("go-on", Say.of("key.stirred")))
            .parts(parts(2))
            .build());
  }

  /** Two pots that take turns, a third that calls, and a share to come. */
  private static StationView inTurns() {
    return view(
        List.of(scale("1168.7", "live", "stable", 40)),
        bench("STIR", Say.of("now.stir"))
            .detail(Say.of("detail.stir"))
            .cue(Cue.WAITING)
            .timer(new Countdown(Say.of("timer.stir"), 83_000, 120_000))
            .confirm(new Key("go-on", Say.of("key.stirred")))
            .parts(parts(2))
            .pots(pots())
            .build());
  }

  private static List<PotView> pots() {
    Countdown melts = new Countdown(Say.of("timer.melt"), 492_000, 1_500_000);
    return List.of(
        new PotView("Pot A", "20261125-1", PotState.IN_HAND, 12, 0, Optional.empty()),
        new PotView("Pot B", "20261125-2", PotState.WAITING, 12, 0, Optional.of(melts)),
        new PotView("Large pot", "20261125-3", PotState.CALLS, 16, 3, Optional.empty()),
        new PotView("Pot A", "", PotState.TO_COME, 12, 0, Optional.empty()));
  }

  private static StationView finished() {
    return view(
        List.of(scale("0.0", "live", "stable", 40)),
        bench("DONE", say("now.finished", "vessels", "12"))
            .detail(say("detail.finished", "code", "HL-1125-02", "load", "8.02 % of wax"))
            .confirm(new Key("go-on", Say.of("key.next-batch")))
            .parts(vessels(12))
            .build());
  }

  private static StationView oil(
      String net, String toGo, int fill, Cue cue, Trust trust, long stopIn) {
    return oil(
        net,
        toGo,
        fill,
        cue,
        trust,
        stopIn,
        scale("700", "live", trust == Trust.LIVE ? "stable" : "unstable", 40));
  }

  private static StationView oil(
      String net, String toGo, int fill, Cue cue, Trust trust, long stopIn, Scale scale) {
    Building bench = bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
        .detail(
            say("detail.follows-wax", "wax", "700.4 g", "load", "8 % of wax", "target", "56.0 g"))
        .cue(cue)
        .weighing(oilWeighing(net, toGo, fill, trust))
        .parts(parts(1));
    if (stopIn >= 0) bench.stopIn(stopIn);
    return view(List.of(scale), bench.build());
  }

  /** The oil being poured, to a maker who reads pounds and ounces from a scale of 0.1 g. */
  static StationView inPoundsAndOunces() {
    WeighingView weighing = new WeighingView(
        "Harbour Fig oil",
        "Bench scale",
        Trust.MOVING,
        "0:00.434",
        "0:01.542",
        "0:01.976",
        "0:01.97648",
        "0:00.018",
        "0:00.008",
        "lb:oz",
        "0.002 oz",
        220);
    return view(
        List.of(scale("12.3", "live", "unstable", 40)),
        bench("ADD_PART", say("now.add", "part", "Harbour Fig oil"))
            .cue(Cue.POUR)
            .weighing(weighing)
            .parts(parts(1))
            .build());
  }

  private static WeighingView oilWeighing(String net, String toGo, int fill, Trust trust) {
    return new WeighingView(
        "Harbour Fig oil",
        "Bench scale",
        trust,
        net,
        toGo,
        "56.0",
        "56.032",
        "0.5",
        "0.2",
        "g",
        "",
        fill);
  }

  private static List<PartView> parts(int done) {
    List<PartView> all = List.of(
        new PartView("Soya wax A", PartState.TO_COME, "700.0", "700.4", "g", "within", false),
        new PartView("Harbour Fig oil", PartState.TO_COME, "56.0", "56.1", "g", "within", false),
        new PartView("Amber dye", PartState.TO_COME, "1.4", "1.4", "g", "within", true));
    return standing(all, done);
  }

  private static List<PartView> vessels(int done) {
    List<PartView> all = new java.util.ArrayList<>();
    for (int at = 1; at <= 12; at++)
      all.add(new PartView(
          "Vessel " + at,
          PartState.TO_COME,
          "227.0",
          at == 2 ? "229.4" : "227.6",
          "g",
          at == 2 ? "over" : "within",
          false));
    return standing(all, done);
  }

  private static List<PartView> standing(List<PartView> all, int done) {
    List<PartView> stand = new java.util.ArrayList<>();
    for (int at = 0; at < all.size(); at++) {
      PartView part = all.get(at);
      boolean isDone = at < done;
      PartState state = isDone ? PartState.DONE : at == done ? PartState.NOW : PartState.TO_COME;
      stand.add(new PartView(
          part.name(),
          state,
          part.target(),
          isDone ? part.actual() : "",
          part.unit(),
          isDone ? part.verdict() : "",
          isDone && part.byHand()));
    }
    return stand;
  }

  static StationView view(List<Scale> scales, BenchView bench) {
    return new StationView(
        REVISION.incrementAndGet(),
        FRESH,
        false,
        scales.stream().map(Scale::view).toList(),
        bench,
        new RecordView(
            37,
            "9f2c".repeat(16),
            Optional.of(say("record.last", "part", "Soya wax A", "amount", "700.4 g")),
            Optional.empty()));
  }

  static Scale scale(String shown, String link, String stability, long age) {
    return new Scale(shown, link, stability, age, Optional.empty());
  }

  static Say say(String key, String... with) {
    Map<String, String> values = new LinkedHashMap<>();
    for (int at = 0; at < with.length; at += 2) values.put(with[at], with[at + 1]);
    return new Say(key, values);
  }

  /** A scale of a scene. */
  record Scale(String shown, String link, String stability, long age, Optional<Say> trouble) {
    Scale with(String troubleKey) {
      return new Scale(shown, link, stability, age, Optional.of(Say.of(troubleKey)));
    }

    ScaleView view() {
      return new ScaleView(
          "Bench scale",
          link,
          "and",
          shown,
          shown.isEmpty() ? "" : "g",
          stability,
          age,
          false,
          4211,
          0,
          trouble);
    }
  }

  static Building bench(String step, Say now) {
    return new Building(step, now);
  }

  /** A bench of a scene, named part by part. */
  static final class Building {
    private final String step;
    private final Say now;
    private Optional<Say> detail = Optional.empty();
    private Cue cue = Cue.NONE;
    private Optional<Long> stopIn = Optional.empty();
    private Optional<Integer> drops = Optional.empty();
    private Optional<WeighingView> weighing = Optional.empty();
    private Optional<Say> trouble = Optional.empty();
    private Optional<Countdown> countIn = Optional.empty();
    private Optional<Countdown> undo = Optional.empty();
    private Optional<Key> confirm = Optional.empty();
    private Optional<Countdown> timer = Optional.empty();
    private List<Choice> choices = List.of();
    private List<PartView> parts = List.of();
    private boolean byHand;
    private List<PotView> pots = List.of();
    private Optional<BatchView> batch =
        Optional.of(new BatchView("HL-1125-02", "Harbour Fig", 12, "8", "of_wax", "7.41"));

    private Building(String step, Say now) {
      this.step = step;
      this.now = now;
    }

    Building detail(Say say) {
      detail = Optional.of(say);
      return this;
    }

    Building cue(Cue which) {
      cue = which;
      return this;
    }

    Building stopIn(long millis) {
      stopIn = Optional.of(millis);
      return this;
    }

    Building dropsToGo(int count) {
      drops = Optional.of(count);
      return this;
    }

    Building weighing(WeighingView which) {
      weighing = Optional.of(which);
      return this;
    }

    Building trouble(Say say) {
      trouble = Optional.of(say);
      return this;
    }

    Building countIn(Countdown which) {
      countIn = Optional.of(which);
      return this;
    }

    Building undo(Countdown which) {
      undo = Optional.of(which);
      return this;
    }

    Building confirm(Key key) {
      confirm = Optional.of(key);
      return this;
    }

    Building timer(Countdown which) {
      timer = Optional.of(which);
      return this;
    }

    Building choices(List<Choice> which) {
      choices = which;
      return this;
    }

    Building parts(List<PartView> which) {
      parts = which;
      return this;
    }

    Building pots(List<PotView> which) {
      pots = which;
      return this;
    }

    Building byHand() {
      byHand = true;
      return this;
    }

    Building batch(Optional<BatchView> which) {
      batch = which;
      return this;
    }

    BenchView build() {
      return new BenchView(
          step, now, detail, cue, stopIn, drops, weighing, trouble, countIn, undo, confirm, timer,
          choices, parts, batch, byHand, pots);
    }
  }
}
