package candlebench.station.journal;

import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.batch.Fraction;
import candlebench.station.guidance.Place;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Function;

/** The values of the bench as JSON text. */
final class ValuesJson extends SimpleModule {
  private static final long serialVersionUID = 1L;

  ValuesJson() {
    asText(Mass.class, Mass::grams, Mass::ofGrams);
    asText(Fraction.class, Fraction::toString, Fraction::parse);
    asText(Instant.class, Instant::toString, Instant::parse);
    asText(Duration.class, Duration::toString, Duration::parse);
    asText(Indication.class, Indication::toString, ValuesJson::indication);
    asText(Place.class, Place::toString, Place::parse);
  }

  private static Indication indication(String text) {
    String[] words = text.split(" ");
    if (words.length == 1) return Indication.withoutUnit(words[0]);
    for (MassUnit unit : MassUnit.values())
      if (words.length == 2 && unit.symbol().equals(words[1])) return Indication.of(words[0], unit);
    throw new IllegalArgumentException("not an indication: '" + text + "'");
  }

  private <T> void asText(Class<T> type, Function<T, String> write, Function<String, T> read) {
    addSerializer(type, new Writer<>(type, write));
    addDeserializer(type, new Reader<>(type, read));
  }

  private static final class Writer<T> extends StdSerializer<T> {
    private static final long serialVersionUID = 1L;
    private final transient Function<T, String> write;

    Writer(Class<T> type, Function<T, String> write) {
      super(type);
      this.write = write;
    }

    @Override
    public void serialize(T value, JsonGenerator json, SerializerProvider provider)
        throws IOException {
      json.writeString(write.apply(value));
    }
  }

  private static final class Reader<T> extends StdDeserializer<T> {
    private static final long serialVersionUID = 1L;
    private final transient Function<String, T> read;

    Reader(Class<T> type, Function<String, T> read) {
      super(type);
      this.read = read;
    }

    @Override
    public T deserialize(JsonParser json, DeserializationContext context) throws IOException {
      if (!json.hasToken(JsonToken.VALUE_STRING))
        context.reportInputMismatch(handledType(), "text is expected");
      return read.apply(json.getText());
    }
  }
}
