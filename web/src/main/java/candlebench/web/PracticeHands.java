package candlebench.web;

import candlebench.shared.Mass;
import candlebench.shared.NearestWord;
import candlebench.simulator.Pan;
import candlebench.station.Bench;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongConsumer;

/**
 * A person's hands at the practice pan, by the keys of the page: put what is asked for on, lift it off, pour for as long as a key is
 * held. How fast a stream starts and ends is a usual wrist's: common practice, no source.
 */
final class PracticeHands implements Site.Hands, LongConsumer {
  private static final String POT = "pot";
  private static final Mass EMPTY_POT = Mass.ofGrams("412.6");
  private static final Mass EMPTY_VESSEL = Mass.ofGrams("198.3");
  private static final Mass PIECE = Mass.ofGrams("12");
  private static final Mass DROP = Mass.ofGrams("0.033");
  private static final Mass SPOONFUL = Mass.ofGrams("2");
  private static final double PIECE_FALL_METRES = 0.05;

  /** Grams a second while the key is held. */
  private static final double POUR = 8;

  private static final double TRICKLE = 1;

  /** How fast a wrist changes the stream, in grams a second, each second. */
  private static final double WRIST = 20;

  private final PracticeBench practice;
  private final Bench station;
  private final Map<String, Mass> aside = new HashMap<>(Map.of(POT, EMPTY_POT));
  private final Map<String, Runnable> moves = Map.of(
      "place",
      this::place,
      "lift",
      this::lift,
      "piece",
      this::piece,
      "drop",
      this::drop,
      "spoon",
      this::spoon);
  private final Map<String, Double> streams = Map.of("pour", POUR, "trickle", TRICKLE);
  private double wanted;
  private double flowing;
  private long nanos;
  private int vessels;

  PracticeHands(PracticeBench practice, Bench station) {
    this.practice = practice;
    this.station = station;
    practice.play(this);
  }

  @Override
  public void move(String hand, boolean down) {
    Double stream = streams.get(hand);
    Runnable move = moves.get(hand);
    if (stream != null) practice.act(() -> wanted = down ? stream : 0);
    else if (move == null)
      throw new IllegalArgumentException(
          "no hand '" + hand + "'; nearest is '" + NearestWord.to(hand, moves.keySet()) + "'");
    else if (down) practice.act(move);
  }

  /** Lets the stream follow the wrist. */
  @Override
  public void accept(long moment) {
    double step = WRIST * (moment - nanos) / 1e9;
    nanos = moment;
    if (flowing == wanted) return;
    flowing =
        flowing < wanted ? Math.min(wanted, flowing + step) : Math.max(wanted, flowing - step);
    pan().flow(flowing, 0);
  }

  private Pan pan() {
    return practice.pan();
  }

  private void place() {
    if (pan().receiver().isPresent()) return;
    String thing = thingAskedFor();
    pan().putOn(thing, Optional.ofNullable(aside.remove(thing)).orElse(EMPTY_VESSEL));
  }

  private void lift() {
    pan().receiver().ifPresent(thing -> aside.put(thing, pan().liftOff(thing)));
  }

  private void piece() {
    if (pan().receiver().isPresent()) pan().drop(PIECE, PIECE_FALL_METRES);
  }

  private void drop() {
    if (pan().receiver().isPresent()) pan().add(DROP);
  }

  private void spoon() {
    if (pan().receiver().isPresent()) pan().add(SPOONFUL.negated());
  }

  /** A new vessel where one is asked for, else the thing last lifted that belongs back; at the start the pot. */
  private String thingAskedFor() {
    String step = station.view().bench().step();
    if (step.equals("PLACE_VESSEL")) return "vessel " + ++vessels;
    String vessel = "vessel " + vessels;
    boolean back = step.equals("AWAY") && aside.containsKey(vessel);
    return back ? vessel : POT;
  }
}
