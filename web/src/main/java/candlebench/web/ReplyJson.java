package candlebench.web;

import candlebench.station.Bench.Answer;
import candlebench.station.batch.Part;
import candlebench.station.batch.Product;
import candlebench.station.batch.Recipe;
import candlebench.station.link.FoundPort;
import candlebench.station.record.BatchRecord;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.Views;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;

/**
 * An answer to a request that is no view.
 *
 * @param status of HTTP
 * @param json the body
 */
record ReplyJson(int status, byte[] json) {
  private static final JsonFactory JSON = new JsonFactory();

  /** A refusal, in words for whoever wrote the request. */
  static ReplyJson refused(int status, String words) {
    return of(status, out -> out.writeStringField("error", words));
  }

  /** What became of a command: 409 where the bench refused it. */
  static ReplyJson answered(Answer answer, ShownUnit unit) {
    return of(answer.done() ? 200 : 409, out -> {
      out.writeBooleanField("done", answer.done());
      out.writeFieldName("words");
      say(Views.say(answer.words(), unit), out);
    });
  }

  static ReplyJson done() {
    return of(200, out -> out.writeBooleanField("done", true));
  }

  /** What a page asks once: the recipes that can be started, and whether there are hands to practise with or scales to be found. */
  static ReplyJson setup(Site site) {
    return of(200, out -> {
      out.writeArrayFieldStart("recipes");
      for (Product product : site.products()) {
        Recipe recipe = product.forVessels(1);
        out.writeStartObject();
        out.writeStringField("id", product.id());
        out.writeStringField("name", product.name());
        out.writeArrayFieldStart("materials");
        for (Part part : recipe.parts()) out.writeString(part.name());
        if (recipe.fillsVessels()) {
          out.writeString(recipe.vessel().name());
          out.writeString(BatchRecord.WICK);
        }
        out.writeEndArray();
        out.writeEndObject();
      }
      out.writeEndArray();
      out.writeStringField("unit", site.bench().unit().symbol());
      out.writeBooleanField("hands", site.hands().isPresent());
      out.writeBooleanField("search", site.search().isPresent());
    });
  }

  static ReplyJson ports(List<FoundPort> ports) {
    return of(200, out -> {
      out.writeArrayFieldStart("ports");
      for (FoundPort port : ports) {
        out.writeStartObject();
        out.writeStringField("device", port.device());
        out.writeStringField("title", port.title());
        out.writeStringField("usb", port.usb());
        out.writeEndObject();
      }
      out.writeEndArray();
    });
  }

  /** A sentence's key and what belongs into it. */
  static void say(Say words, JsonGenerator out) throws IOException {
    out.writeStartObject();
    out.writeStringField("key", words.key());
    out.writeObjectFieldStart("with");
    for (Map.Entry<String, String> each : words.with().entrySet())
      out.writeStringField(each.getKey(), each.getValue());
    out.writeEndObject();
    out.writeEndObject();
  }

  static ReplyJson of(int status, Fields fields) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (JsonGenerator out = JSON.createGenerator(bytes)) {
      out.writeStartObject();
      fields.write(out);
      out.writeEndObject();
    } catch (IOException impossible) {
      throw new UncheckedIOException("writing to memory failed", impossible);
    }
    return new ReplyJson(status, bytes.toByteArray());
  }

  /** Writes the fields of one object. */
  interface Fields {
    void write(JsonGenerator out) throws IOException;
  }
}
