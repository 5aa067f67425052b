package candlebench.station.journal;

import candlebench.shared.Mass;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.BenchProgress.Pourer;
import candlebench.station.guidance.pour.Habits;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What a bench knows between two batches, as one line of JSON. */
public final class CheckpointJson {
  private static final JsonMapper JSON =
      JsonMapper.builder().addModule(new ValuesJson()).build();

  private CheckpointJson() {}

  private record Learnt(Pourer pourer, Habits habits) {}

  /** What was written before pots could be taught names none. */
  private record Knowing(
      int begun, Map<Integer, Mass> zeros, List<Learnt> learnt, Map<String, Mass> taught) {

    Knowing {
      taught = taught == null ? Map.of() : taught;
    }
  }

  public static String text(BenchProgress bench) {
    List<Learnt> learnt = new ArrayList<>();
    bench.habits().forEach((pourer, habits) -> learnt.add(new Learnt(pourer, habits)));
    try {
      return JSON.writeValueAsString(
          new Knowing(bench.begun(), bench.zeros(), learnt, bench.taught()));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a bench that cannot be written down: " + bench, e);
    }
  }

  public static BenchProgress bench(String text) throws IOException {
    Knowing knowing = JSON.readValue(text, Knowing.class);
    Map<Pourer, Habits> habits = new HashMap<>();
    for (Learnt learnt : knowing.learnt()) habits.put(learnt.pourer(), learnt.habits());
    return BenchProgress.betweenBatches(knowing.taught(), knowing.zeros(), habits, knowing.begun());
  }
}
