package candlebench.web;

import candlebench.station.view.StationView;
import candlebench.station.view.StationView.BatchView;
import candlebench.station.view.StationView.BenchView;
import candlebench.station.view.StationView.Choice;
import candlebench.station.view.StationView.Countdown;
import candlebench.station.view.StationView.Key;
import candlebench.station.view.StationView.PartView;
import candlebench.station.view.StationView.PotView;
import candlebench.station.view.StationView.RecordView;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.StationView.ScaleView;
import candlebench.station.view.StationView.WeighingView;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A view as JSON: every component under its own name, masses as text, what is absent as null, cases of an enum in lower case with
 * hyphens. Times that run (the age of a number, a countdown) are given as of the moment of writing, not of making.
 */
final class ViewJson {
  private static final JsonFactory JSON = new JsonFactory();
  private static final int USUAL_SIZE = 4096;

  private ViewJson() {}

  /** The whole view as UTF-8 text in one line. */
  static byte[] bytes(StationView view, long nowNanos) {
    return written(view, nowNanos, "", "");
  }

  /** The same as one server-sent event. */
  static byte[] event(StationView view, long nowNanos) {
    return written(view, nowNanos, "data: ", "\n\n");
  }

  private static byte[] written(StationView view, long nowNanos, String before, String after) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(USUAL_SIZE);
    long elapsedMillis = Math.max(0, (nowNanos - view.madeAtNanos()) / 1_000_000);
    try (JsonGenerator out = JSON.createGenerator(bytes)) {
      out.writeRaw(before);
      new Writing(out, elapsedMillis).view(view);
      out.writeRaw(after);
    } catch (IOException impossible) {
      throw new UncheckedIOException("writing to memory failed", impossible);
    }
    return bytes.toByteArray();
  }

  private record Writing(JsonGenerator out, long elapsedMillis) {

    void view(StationView view) throws IOException {
      out.writeStartObject();
      out.writeNumberField("revision", view.revision());
      out.writeBooleanField("practice", view.practice());
      list("scales", view.scales(), this::scale);
      out.writeFieldName("bench");
      bench(view.bench());
      out.writeFieldName("record");
      record(view.record());
      out.writeEndObject();
    }

    private void scale(ScaleView scale) throws IOException {
      out.writeStartObject();
      out.writeStringField("name", scale.name());
      out.writeStringField("link", scale.link());
      out.writeStringField("format", scale.format());
      out.writeStringField("shown", scale.shown());
      out.writeStringField("unit", scale.unit());
      out.writeStringField("stability", scale.stability());
      long age = scale.ageMillis();
      out.writeNumberField("ageMillis", age < 0 ? -1 : age + elapsedMillis);
      out.writeBooleanField("unitAssumed", scale.unitAssumed());
      out.writeNumberField("framesRead", scale.framesRead());
      out.writeNumberField("framesRefused", scale.framesRefused());
      optional("trouble", scale.trouble(), this::say);
      out.writeEndObject();
    }

    private void bench(BenchView bench) throws IOException {
      out.writeStartObject();
      out.writeStringField("step", bench.step());
      out.writeFieldName("now");
      say(bench.now());
      optional("detail", bench.detail(), this::say);
      out.writeStringField("cue", word(bench.cue()));
      optional("stopInMillis", bench.stopInMillis(), left -> out.writeNumber(remaining(left)));
      optional("dropsToGo", bench.dropsToGo(), out::writeNumber);
      optional("weighing", bench.weighing(), this::weighing);
      optional("trouble", bench.trouble(), this::say);
      optional("countIn", bench.countIn(), this::countdown);
      optional("undo", bench.undo(), this::countdown);
      optional("confirm", bench.confirm(), this::key);
      optional("timer", bench.timer(), this::countdown);
      list("choices", bench.choices(), this::choice);
      list("parts", bench.parts(), this::part);
      optional("batch", bench.batch(), this::batch);
      out.writeBooleanField("byHand", bench.byHand());
      list("pots", bench.pots(), this::pot);
      out.writeEndObject();
    }

    private void pot(PotView pot) throws IOException {
      out.writeStartObject();
      out.writeStringField("pot", pot.pot());
      out.writeStringField("batch", pot.batch());
      out.writeStringField("state", word(pot.state()));
      out.writeNumberField("vessels", pot.vessels());
      out.writeNumberField("filled", pot.filled());
      optional("timer", pot.timer(), this::countdown);
      out.writeEndObject();
    }

    private void weighing(WeighingView weighing) throws IOException {
      out.writeStartObject();
      out.writeStringField("part", weighing.part());
      out.writeStringField("scale", weighing.scale());
      out.writeStringField("trust", word(weighing.trust()));
      out.writeStringField("net", weighing.net());
      out.writeStringField("toGo", weighing.toGo());
      out.writeStringField("target", weighing.target());
      out.writeStringField("exactTarget", weighing.exactTarget());
      out.writeStringField("under", weighing.under());
      out.writeStringField("over", weighing.over());
      out.writeStringField("unit", weighing.unit());
      out.writeStringField("roundedTo", weighing.roundedTo());
      out.writeNumberField("fillPermille", weighing.fillPermille());
      out.writeEndObject();
    }

    private void countdown(Countdown countdown) throws IOException {
      out.writeStartObject();
      out.writeFieldName("what");
      say(countdown.what());
      out.writeNumberField("remainingMillis", remaining(countdown.remainingMillis()));
      out.writeNumberField("totalMillis", countdown.totalMillis());
      out.writeEndObject();
    }

    private void key(Key key) throws IOException {
      out.writeStartObject();
      out.writeStringField("command", key.command());
      out.writeFieldName("label");
      say(key.label());
      out.writeEndObject();
    }

    private void choice(Choice choice) throws IOException {
      out.writeStartObject();
      out.writeStringField("id", choice.id());
      out.writeFieldName("label");
      say(choice.label());
      optional("cost", choice.cost(), this::say);
      out.writeBooleanField("possible", choice.possible());
      optional("whyNot", choice.whyNot(), this::say);
      out.writeBooleanField("needsReason", choice.needsReason());
      out.writeEndObject();
    }

    private void part(PartView part) throws IOException {
      out.writeStartObject();
      out.writeStringField("name", part.name());
      out.writeStringField("state", word(part.state()));
      out.writeStringField("target", part.target());
      out.writeStringField("actual", part.actual());
      out.writeStringField("unit", part.unit());
      out.writeStringField("verdict", part.verdict());
      out.writeBooleanField("byHand", part.byHand());
      out.writeEndObject();
    }

    private void batch(BatchView batch) throws IOException {
      out.writeStartObject();
      out.writeStringField("code", batch.code());
      out.writeStringField("recipe", batch.recipe());
      out.writeNumberField("vessels", batch.vessels());
      out.writeStringField("load", batch.load());
      out.writeStringField("loadBasis", batch.loadBasis());
      out.writeStringField("otherLoad", batch.otherLoad());
      out.writeEndObject();
    }

    private void record(RecordView record) throws IOException {
      out.writeStartObject();
      out.writeNumberField("entries", record.entries());
      out.writeStringField("head", record.head());
      optional("last", record.last(), this::say);
      optional("trouble", record.trouble(), this::say);
      out.writeEndObject();
    }

    private void say(Say say) throws IOException {
      out.writeStartObject();
      out.writeStringField("key", say.key());
      out.writeObjectFieldStart("with");
      for (Map.Entry<String, String> each : say.with().entrySet())
        out.writeStringField(each.getKey(), each.getValue());
      out.writeEndObject();
      out.writeEndObject();
    }

    private long remaining(long millis) {
      return Math.max(0, millis - elapsedMillis);
    }

    private <T> void list(String name, List<T> items, Item<T> item) throws IOException {
      out.writeArrayFieldStart(name);
      for (T each : items) item.write(each);
      out.writeEndArray();
    }

    private <T> void optional(String name, Optional<T> value, Item<T> item) throws IOException {
      out.writeFieldName(name);
      if (value.isPresent()) item.write(value.get());
      else out.writeNull();
    }
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Writes one value of its kind. */
  private interface Item<T> {
    void write(T value) throws IOException;
  }
}
