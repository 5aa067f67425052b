package candlebench.web;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.NearestWord;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.MakerCommand;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * One command of a page: {@code {"id":"k3f9","command":"choose","choice":"add-wax","reason":"slipped"}}. All values are text but
 * {@code lots}, an object of texts. What a command does not know is refused by name, and so is what it lacks.
 */
final class CommandRequest {
  private static final Pattern ID = Pattern.compile("[A-Za-z0-9_-]{1,64}");
  private static final Pattern AMOUNT = Pattern.compile("-?\\d{1,9}(\\.\\d{1,9})?");

  private static final Mass MOST = Mass.of("1000", MassUnit.KILOGRAM);

  /** What each command takes beside {@code id} and {@code command}. */
  private static final Map<String, Set<String>> KNOWN = new TreeMap<>(Map.ofEntries(
      Map.entry("start-batch", Set.of("recipe", "vessels", "person", "lots")),
      Map.entry("go-on", Set.of()),
      Map.entry("undo", Set.of()),
      Map.entry("choose", Set.of("choice", "reason")),
      Map.entry("enter-by-hand", Set.of("net", "unit", "reason")),
      Map.entry("note-temperature", Set.of("celsius")),
      Map.entry("note-spill", Set.of("amount", "unit")),
      Map.entry("abandon", Set.of("reason")),
      Map.entry("receive-lot", Set.of("material", "lot", "amount", "unit", "note", "person")),
      Map.entry("change-lot", Set.of("material", "lot")),
      Map.entry("check-scale", Set.of("scale", "known", "unit", "person")),
      Map.entry("teach-pot", Set.of("pot", "scale", "person")),
      Map.entry("note", Set.of("batch", "text", "person")),
      Map.entry(
          "correct",
          Set.of("batch", "entry", "what", "material", "was", "now", "reason", "person"))));

  private final String name;
  private final Map<String, String> texts;
  private final Map<String, String> lots;

  /** Throws {@link IllegalArgumentException} that says what to send instead. */
  CommandRequest(RequestJson body) {
    texts = body.texts();
    lots = body.lots();
    name = texts.getOrDefault("command", "");
    Set<String> takes = KNOWN.get(name);
    if (takes == null)
      throw new IllegalArgumentException(
          "no command '" + name + "'; nearest is '" + NearestWord.to(name, KNOWN.keySet())
              + "'. Commands: " + String.join(", ", KNOWN.keySet()));
    List<String> unknown = new ArrayList<>(texts.keySet());
    if (!lots.isEmpty()) unknown.add("lots");
    unknown.removeAll(takes);
    unknown.removeAll(List.of("id", "command"));
    if (!unknown.isEmpty())
      throw new IllegalArgumentException(
          "'" + name + "' knows no '" + unknown.get(0) + "': it takes id, command"
              + takes.stream().sorted().map(", "::concat).reduce("", String::concat));
  }

  String id() {
    String id = texts.getOrDefault("id", "");
    if (!ID.matcher(id).matches())
      throw new IllegalArgumentException(
          "a command needs an id of 1 to 64 letters, digits, - or _, made anew for each press");
    return id;
  }

  MakerCommand command() {
    return switch (name) {
      case "start-batch" ->
        new MakerCommand.StartBatch(
            needed("recipe"), (int) whole("vessels", 9999), optional("person"), lots);
      case "go-on" -> new MakerCommand.GoOn();
      case "undo" -> new MakerCommand.Undo();
      case "choose" -> new MakerCommand.Choose(needed("choice"), optional("reason"));
      case "enter-by-hand" -> new MakerCommand.EnterByHand(mass("net"), needed("reason"));
      case "note-temperature" -> new MakerCommand.NoteTemperature(tenths("celsius"));
      case "note-spill" -> new MakerCommand.NoteSpill(received());
      case "abandon" -> new MakerCommand.Abandon(needed("reason"));
      case "receive-lot" ->
        new MakerCommand.ReceiveLot(
            needed("material"), needed("lot"), received(), optional("note"), optional("person"));
      case "change-lot" -> new MakerCommand.ChangeLot(needed("material"), needed("lot"));
      case "check-scale" ->
        new MakerCommand.CheckScale(needed("scale"), mass("known"), optional("person"));
      case "teach-pot" ->
        new MakerCommand.TeachPot(needed("pot"), needed("scale"), optional("person"));
      case "note" -> new MakerCommand.Note(needed("batch"), needed("text"), optional("person"));
      case "correct" ->
        new MakerCommand.Correct(
            needed("batch"),
            whole("entry", 999_999_999),
            what(),
            optional("material"),
            optional("was"),
            needed("now"),
            needed("reason"),
            optional("person"));
      default -> throw new AssertionError("a known command without its meaning: " + name);
    };
  }

  private String needed(String field) {
    String text = optional(field);
    if (text.isEmpty())
      throw new IllegalArgumentException("'" + name + "' needs '" + field + "': fill it in");
    return text;
  }

  private String optional(String field) {
    return texts.getOrDefault(field, "").strip();
  }

  private long whole(String field, long most) {
    String text = needed(field);
    if (!text.matches("[1-9]\\d{0,8}") || Long.parseLong(text) > most)
      throw new IllegalArgumentException(
          "'" + field + "' is a whole number from 1 to " + most + ", not '" + text + "'");
    return Long.parseLong(text);
  }

  /** A delivery's amount; zero where it is not known. */
  private Mass received() {
    return optional("amount").isEmpty() ? Mass.ZERO : mass("amount");
  }

  /** No more than a pallet, so that what is typed in the wrong unit is told at once, and no sum of deliveries outgrows a mass. */
  private Mass mass(String field) {
    BigDecimal amount = amount(field);
    MassUnit unit = unit();
    try {
      Mass mass = Mass.of(amount, unit);
      if (!mass.abs().isMoreThan(MOST)) return mass;
    } catch (ArithmeticException beyond) {
      // More than a mass can hold is refused as what it is: far too much.
    }
    throw new IllegalArgumentException("'" + field + "' is at most a tonne, not "
        + amount.toPlainString() + " " + unit.symbol() + ": look at number and unit");
  }

  private Correctable what() {
    String what = needed("what");
    for (Correctable each : Correctable.values())
      if (each.name().toLowerCase(Locale.ROOT).equals(what)) return each;
    throw new IllegalArgumentException("'what' is lot, weight or note, not '" + what + "'");
  }

  private BigDecimal amount(String field) {
    String text = needed(field);
    if (!AMOUNT.matcher(text).matches())
      throw new IllegalArgumentException(
          "'" + field + "' is written like 56.1, not '" + text + "'");
    return new BigDecimal(text);
  }

  private int tenths(String field) {
    BigDecimal celsius = amount(field);
    if (celsius.abs().compareTo(BigDecimal.valueOf(300)) > 0 || celsius.scale() > 1)
      throw new IllegalArgumentException(
          "'" + field + "' is in degrees Celsius to a tenth, like 68.5, not '" + celsius + "'");
    return celsius.movePointRight(1).intValueExact();
  }

  private MassUnit unit() {
    String symbol = needed("unit");
    for (MassUnit unit : MassUnit.values()) if (unit.symbol().equals(symbol)) return unit;
    throw new IllegalArgumentException("no unit '" + symbol + "': use g, kg, mg, oz or lb");
  }
}
