package candlebench.station.view;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.station.batch.Part;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.Place;
import candlebench.station.guidance.PotStanding;
import candlebench.station.guidance.Prompt;
import candlebench.station.guidance.Trust;
import candlebench.station.guidance.Words;
import candlebench.station.view.StationView.BatchView;
import candlebench.station.view.StationView.BenchView;
import candlebench.station.view.StationView.Choice;
import candlebench.station.view.StationView.Countdown;
import candlebench.station.view.StationView.Key;
import candlebench.station.view.StationView.PartState;
import candlebench.station.view.StationView.PartView;
import candlebench.station.view.StationView.PotState;
import candlebench.station.view.StationView.PotView;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.StationView.WeighingView;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** From guidance's values to what a page may show: every mass made text in the maker's unit, every sentence a key. */
public final class Views {
  private static final long NANOS_PER_MILLI = 1_000_000L;

  /** What a mass in a sentence is rounded to where nothing is being weighed. */
  private static final Division USUAL = Division.ofDecimals(1, MassUnit.GRAM);

  private final ShownUnit unit;
  private final Figures figures;

  private Views(ShownUnit unit, Division division) {
    this.unit = unit;
    this.figures = Figures.of(unit, division);
  }

  /** What is being done on the bench, in grams, at a moment at or after the newest input. */
  public static BenchView of(GuidanceState state, Stamp now) {
    return of(state, now, ShownUnit.GRAM);
  }

  /** What is being done on the bench, in the maker's unit, at a moment at or after the newest input. */
  public static BenchView of(GuidanceState state, Stamp now, ShownUnit unit) {
    Prompt prompt = state.prompt(now);
    Division division = prompt.weighing().map(Prompt.Amounts::division).orElse(USUAL);
    return new Views(unit, division).bench(state, prompt, now);
  }

  /** Guidance's words as words for the page; a mass in them is shown to a tenth of a gram. */
  public static Say say(Words words, ShownUnit unit) {
    return new Views(unit, USUAL).say(words);
  }

  private BenchView bench(GuidanceState state, Prompt prompt, Stamp now) {
    Optional<BatchProgress> batch = state.progress().batch();
    return new BenchView(
        prompt.step().name(),
        say(prompt.now()),
        prompt.detail().map(this::say),
        cue(prompt.cue()),
        prompt.stopInNanos().map(nanos -> nanos / NANOS_PER_MILLI),
        prompt.drops(),
        prompt.weighing().map(amounts -> weighing(amounts, state.setup())),
        prompt.trouble().map(this::say),
        prompt.countIn().map(this::countdown),
        state.undoTime(now).map(this::countdown),
        prompt.confirm().map(label -> new Key("go-on", say(label))),
        prompt.timer().map(this::countdown),
        prompt.choices().stream().map(this::choice).toList(),
        batch.map(this::parts).orElse(List.of()),
        batch.map(this::batch),
        prompt.byHand(),
        state.pots(now).stream().map(this::pot).toList());
  }

  private WeighingView weighing(Prompt.Amounts amounts, BenchSetup setup) {
    Mass target = amounts.target();
    return new WeighingView(
        amounts.name(),
        setup.scales().get(amounts.scale()).name(),
        trust(amounts.trust()),
        amounts.net().map(figures::text).orElse(""),
        amounts.net().map(net -> figures.text(target.minus(net))).orElse(""),
        figures.text(target),
        figures.exact(target),
        figures.exact(amounts.under()),
        figures.exact(amounts.over()),
        unit.symbol(),
        figures.scalesOwn() ? "" : figures.stepText() + " " + unit.counted().symbol(),
        amounts.net().map(net -> permille(net, target)).orElse(0));
  }

  private static int permille(Mass net, Mass target) {
    if (target.isZero()) return 0;
    return (int) Math.round(1000 * net.roughGrams() / target.roughGrams());
  }

  private List<PartView> parts(BatchProgress batch) {
    List<PartView> parts = new ArrayList<>();
    List<Part> recipe = batch.started().recipe().parts();
    for (int i = 0; i < recipe.size(); i++) {
      Place place = new Place(Place.Kind.PART, i);
      parts.add(part(
          batch,
          place,
          recipe.get(i).name(),
          batch.plan().target(i, batch.charge().inPot())));
    }
    if (batch.started().recipe().fillsVessels())
      for (int i = 0; i < batch.started().vessels(); i++)
        parts.add(part(
            batch,
            new Place(Place.Kind.VESSEL, i),
            batch.started().recipe().vessel().name(),
            batch.started().recipe().vessel().fill()));
    return parts;
  }

  private PartView part(BatchProgress batch, Place place, String name, Mass target) {
    Optional<WeightAccepted> weight = batch.charge().weights().stream()
        .filter(taken -> taken.place().equals(place))
        .findFirst();
    if (weight.isPresent()) {
      WeightAccepted taken = weight.get();
      return new PartView(
          name,
          PartState.DONE,
          figures.text(taken.target()),
          figures.text(taken.net()),
          unit.symbol(),
          taken.verdict().name().toLowerCase(java.util.Locale.ROOT),
          taken.how() == candlebench.station.guidance.GuidanceEvent.How.BY_HAND);
    }
    boolean now = batch.goal().filter(goal -> goal.place().equals(place)).isPresent();
    boolean leftOut =
        place.kind() == Place.Kind.VESSEL && batch.isLeftOut(place.number()) || !batch.runs();
    PartState state = now ? PartState.NOW : leftOut ? PartState.DROPPED : PartState.TO_COME;
    return new PartView(name, state, figures.text(target), "", unit.symbol(), "", false);
  }

  private BatchView batch(BatchProgress batch) {
    Optional<Part> oil =
        batch.started().recipe().parts().stream().filter(part -> !part.isWax()).findFirst();
    return new BatchView(
        batch.started().code(),
        batch.started().recipe().name(),
        batch.started().vessels(),
        oil.map(part -> part.load().share().percentText(2)).orElse(""),
        oil.map(part -> part.load().basis().name().toLowerCase(java.util.Locale.ROOT))
            .orElse(""),
        oil.filter(
                part -> part.load().share().compareTo(candlebench.station.batch.Fraction.ONE) < 0)
            .map(part -> part.load().otherWay().share().percentText(2))
            .orElse(""));
  }

  private PotView pot(PotStanding pot) {
    return new PotView(
        pot.pot(),
        pot.batch(),
        switch (pot.doing()) {
          case IN_HAND -> PotState.IN_HAND;
          case WAITING -> PotState.WAITING;
          case CALLS -> PotState.CALLS;
          case LEFT -> PotState.LEFT;
          case TO_COME -> PotState.TO_COME;
        },
        pot.vessels(),
        pot.filled(),
        pot.timer().map(this::countdown));
  }

  private Countdown countdown(Prompt.Running running) {
    return new Countdown(
        say(running.what()),
        running.remainingNanos() / NANOS_PER_MILLI,
        running.totalNanos() / NANOS_PER_MILLI);
  }

  private Choice choice(Prompt.Option option) {
    return new Choice(
        option.id(),
        say(option.label()),
        option.cost().map(this::say),
        option.whyNot().isEmpty(),
        option.whyNot().map(this::say),
        option.needsReason());
  }

  private Say say(Words words) {
    Map<String, String> with = new LinkedHashMap<>();
    words.with().forEach((name, term) -> with.put(name, text(term)));
    return new Say(words.key(), with);
  }

  private String text(Words.Term term) {
    if (term instanceof Words.Amount amount) return figures.sentence(amount.mass());
    if (term instanceof Words.Text text) return text.text();
    if (term instanceof Words.Percent percent) return percent.share().percentText(2) + " %";
    throw new AssertionError(term);
  }

  private static StationView.Cue cue(Cue cue) {
    return switch (cue) {
      case NONE -> StationView.Cue.NONE;
      case POUR -> StationView.Cue.POUR;
      case SLOW -> StationView.Cue.SLOW;
      case STOP -> StationView.Cue.STOP;
      case DROPS -> StationView.Cue.DROPS;
      case PIECES -> StationView.Cue.PIECES;
      case HOLD_STILL -> StationView.Cue.HOLD_STILL;
      case OVER -> StationView.Cue.OVER;
      case WAITING -> StationView.Cue.WAITING;
    };
  }

  private static StationView.Trust trust(Trust trust) {
    return switch (trust) {
      case LIVE -> StationView.Trust.LIVE;
      case MOVING -> StationView.Trust.MOVING;
      case ASSUMED -> StationView.Trust.ASSUMED;
      case STALE -> StationView.Trust.STALE;
      case NONE -> StationView.Trust.NONE;
    };
  }
}
