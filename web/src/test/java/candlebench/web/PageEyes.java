package candlebench.web;

import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A maker's eyes on the page: finds things by role and name, reads their text, and knows nothing else of the program. */
final class PageEyes {
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?");
  private static final Pattern STOP_IN = Pattern.compile("Stop in (\\d+(?:\\.\\d+)?).*");
  private static final Pattern DROPS = Pattern.compile("(\\d+) drops?");

  private final Page page;

  PageEyes(Page page) {
    this.page = page;
  }

  /** What the page tells the maker now. */
  Perceived look() {
    String now = heading();
    String signal = words("Signal");
    OptionalDouble toGo = toGo();
    Matcher countdown = STOP_IN.matcher(signal);
    if (countdown.matches()) {
      Duration stopIn =
          Duration.ofMillis(Math.round(Double.parseDouble(countdown.group(1)) * 1000));
      return new Perceived(Told.NOTHING, Optional.of(stopIn), 0, toGo);
    }
    Matcher drops = DROPS.matcher(signal);
    if (drops.matches())
      return new Perceived(Told.DROPS, Optional.empty(), Integer.parseInt(drops.group(1)), toGo);
    return new Perceived(told(now, signal), Optional.empty(), 0, toGo);
  }

  /** The heading that says what to do. */
  String heading() {
    return first(region("What to do now").getByRole(AriaRole.HEADING));
  }

  /** All words of a region, empty where it is not shown. */
  String words(String region) {
    return first(region(region));
  }

  Locator region(String name) {
    return page.getByRole(
        AriaRole.REGION, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static Told told(String now, String signal) {
    return switch (signal) {
      case "Pour" -> Told.POUR;
      case "Slow down" -> Told.SLOW;
      case "Stop" -> Told.STOP;
      case "By drops" -> Told.DROPS;
      case "Piece by piece" -> Told.PIECES;
      case "Hold still" -> Told.HOLD_STILL;
      case "Too much" -> Told.OVER;
      default -> {
        if (now.startsWith("Put in")) yield Told.PIECES;
        if (now.startsWith("Put ")) yield Told.PLACE;
        if (now.startsWith("Lift ") || now.startsWith("Take the pot off")) yield Told.LIFT;
        if (now.startsWith("Too much")) yield Told.OVER;
        yield Told.WAIT;
      }
    };
  }

  private OptionalDouble toGo() {
    Matcher number = NUMBER.matcher(words("Weight"));
    return number.find()
        ? OptionalDouble.of(Double.parseDouble(number.group()))
        : OptionalDouble.empty();
  }

  private static String first(Locator shown) {
    List<String> texts = shown.allInnerTexts();
    return texts.isEmpty() ? "" : texts.get(0).strip();
  }
}
