package candlebench.station.journal;

import static com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES;
import static com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES;
import static com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES;
import static com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_TRAILING_TOKENS;
import static com.fasterxml.jackson.databind.SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS;

import candlebench.station.guidance.GuidanceEvent;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Events as the journal keeps them: a kind, and one line of strict JSON. Masses are decimal text in grams, exact; shares are
 * {@code "2/25"}; times are ISO 8601.
 */
public final class EntryJson {
  static final JsonMapper JSON = JsonMapper.builder()
      .addModule(new ValuesJson())
      .enable(
          FAIL_ON_NULL_FOR_PRIMITIVES,
          FAIL_ON_MISSING_CREATOR_PROPERTIES,
          FAIL_ON_NULL_CREATOR_PROPERTIES,
          FAIL_ON_TRAILING_TOKENS)
      // The order of a map's keys differs from one start of Java to the next; the same event is the
      // same bytes.
      .enable(ORDER_MAP_ENTRIES_BY_KEYS)
      .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS, MapperFeature.AUTO_DETECT_IS_GETTERS)
      .build();

  /** Every event that can be written down. */
  private static final List<Class<? extends GuidanceEvent>> EVENTS = List.of(
      GuidanceEvent.CommandTaken.class,
      GuidanceEvent.BatchStarted.class,
      GuidanceEvent.WorkDivided.class,
      GuidanceEvent.ShareBegun.class,
      GuidanceEvent.PotTaken.class,
      GuidanceEvent.WorkEnded.class,
      GuidanceEvent.Prepared.class,
      GuidanceEvent.ZeroFound.class,
      GuidanceEvent.PotTared.class,
      GuidanceEvent.PotReweighed.class,
      GuidanceEvent.ReweighSkipped.class,
      GuidanceEvent.CupTared.class,
      GuidanceEvent.CupTipped.class,
      GuidanceEvent.WeightAccepted.class,
      GuidanceEvent.PanNoted.class,
      GuidanceEvent.HabitsLearnt.class,
      GuidanceEvent.WaitStarted.class,
      GuidanceEvent.WaitEnded.class,
      GuidanceEvent.BottleWeighed.class,
      GuidanceEvent.VesselTared.class,
      GuidanceEvent.VesselLifted.class,
      GuidanceEvent.MixCompared.class,
      GuidanceEvent.MixSpilt.class,
      GuidanceEvent.VesselsLeftOut.class,
      GuidanceEvent.OverPoured.class,
      GuidanceEvent.OverGone.class,
      GuidanceEvent.RemedyChosen.class,
      GuidanceEvent.CureChecked.class,
      GuidanceEvent.Asked.class,
      GuidanceEvent.Answered.class,
      GuidanceEvent.TemperatureNoted.class,
      GuidanceEvent.TemperatureOutside.class,
      GuidanceEvent.Undone.class,
      GuidanceEvent.AcceptanceReopened.class,
      GuidanceEvent.BatchDone.class,
      GuidanceEvent.BatchScrapped.class,
      GuidanceEvent.BatchAbandoned.class,
      GuidanceEvent.LotReceived.class,
      GuidanceEvent.LotChanged.class,
      GuidanceEvent.ScaleChecked.class,
      GuidanceEvent.PotTaught.class,
      GuidanceEvent.Noted.class,
      GuidanceEvent.Corrected.class);

  private static final Map<String, Class<? extends GuidanceEvent>> BY_KIND = byKind();

  private EntryJson() {}

  /** The kind of an event: {@code weight-accepted}. */
  public static String kind(GuidanceEvent event) {
    return kind(event.getClass());
  }

  public static EntryText text(GuidanceEvent event) {
    try {
      return new EntryText(kind(event.getClass()), JSON.writeValueAsString(event));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an event that cannot be written down: " + event, e);
    }
  }

  /**
   * Reads an entry back.
   *
   * @throws JournalFailed if it is no event of this program, naming its number
   */
  public static GuidanceEvent event(JournalEntry entry) throws JournalFailed {
    Class<? extends GuidanceEvent> type = BY_KIND.get(entry.kind());
    if (type == null)
      throw new JournalFailed(
          JournalFailed.Trouble.NEWER,
          "Entry " + entry.sequence() + " is of a kind this program does not know: '" + entry.kind()
              + "'. Open the record with the program that wrote it, or a newer one.");
    try {
      return JSON.readValue(entry.body(), type);
    } catch (JsonProcessingException | RuntimeException e) {
      throw new JournalFailed(
          JournalFailed.Trouble.DAMAGED,
          "Entry " + entry.sequence() + " (" + entry.kind()
              + ") cannot be read. Nothing was changed; run 'audit' on this record.",
          e);
    }
  }

  /** {@code WeightAccepted} is {@code weight-accepted}. */
  static String kind(Class<?> type) {
    return type.getSimpleName().replaceAll("(?<!^)([A-Z])", "-$1").toLowerCase(Locale.ROOT);
  }

  private static Map<String, Class<? extends GuidanceEvent>> byKind() {
    Map<String, Class<? extends GuidanceEvent>> kinds = new HashMap<>();
    for (Class<? extends GuidanceEvent> event : EVENTS) kinds.put(kind(event), event);
    return Map.copyOf(kinds);
  }
}
