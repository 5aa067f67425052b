package candlebench.station.link;

import java.util.Map;

/**
 * How the line to a scale is, with what belongs into the sentence that says so.
 *
 * @param with values for the words, such as {@code device}, {@code group}, {@code host}
 */
public record LinkReport(LinkState state, Map<String, String> with) {

  public static LinkReport of(LinkState state) {
    return new LinkReport(state, Map.of());
  }
}
