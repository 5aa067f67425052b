package candlebench.web;

import candlebench.protocol.Candidate;
import candlebench.protocol.LineSettings;
import candlebench.station.link.LinkReport;
import candlebench.station.link.find.Found;
import candlebench.station.link.find.Search;
import candlebench.station.view.StationView.Say;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** How far the search for a scale has come, as a page is told. */
final class SearchJson {

  private SearchJson() {}

  static ReplyJson of(Optional<ScaleSearch.On> on) {
    return ReplyJson.of(200, out -> {
      out.writeStringField("device", on.map(ScaleSearch.On::device).orElse(""));
      Optional<Search> search = on.map(ScaleSearch.On::search);
      out.writeBooleanField("over", search.map(Search::isOver).orElse(true));
      if (search.isPresent()) write(search.get(), out);
    });
  }

  private static void write(Search search, JsonGenerator out) throws IOException {
    out.writeFieldName("words");
    ReplyJson.say(words(search), out);
    out.writeArrayFieldStart("scales");
    if (search.found().isPresent())
      for (Candidate each : search.found().get().heard().recognition().fitting()) {
        out.writeStartObject();
        out.writeStringField("format", each.format().id());
        out.writeStringField("title", each.format().title());
        out.writeBooleanField("needsUnit", Found.needsUnit(each));
        out.writeEndObject();
      }
    out.writeEndArray();
    if (search.found().isEmpty()) return;
    Found found = search.found().get();
    out.writeStringField("why", found.heard().recognition().words());
    if (found.sending() == Found.Sending.NEVER) return;
    out.writeFieldName("sending");
    ReplyJson.say(Say.of("find." + word(found.sending())), out);
  }

  private static Say words(Search search) {
    if (search.trouble().isPresent()) {
      LinkReport trouble = search.trouble().get();
      return new Say("scale." + word(trouble.state()), trouble.with());
    }
    return search
        .found()
        .map(found -> new Say(
            "find." + word(found.heard().recognition().finding()), with(found.line(), found)))
        .orElseGet(() -> new Say("find." + word(search.doing()), with(search.line())));
  }

  private static Map<String, String> with(LineSettings line) {
    String text = line.toString();
    return Map.of(
        "baud", Integer.toString(line.baud()), "bits", text.substring(text.indexOf('-') + 1));
  }

  private static Map<String, String> with(LineSettings line, Found found) {
    Map<String, String> with = new HashMap<>(with(line));
    with.put(
        "title",
        found.heard().recognition().fitting().stream()
            .map(each -> each.format().title())
            .findFirst()
            .orElse(""));
    return with;
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
