package candlebench.station.journal;

import candlebench.shared.Mass;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.BenchProgress.Pourer;
import candlebench.station.guidance.pour.StopDelay;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a bench knows between two batches, as one line of JSON. */
final class CheckpointJson {
  private static final JsonMapper JSON =
      JsonMapper.builder().addModule(new ValuesJson()).build();

  private CheckpointJson() {}

  private record Learnt(Pourer pourer, StopDelay delay) {}

  private record Knowing(int begun, Map<Integer, Mass> zeros, List<Learnt> delays) {}

  static String text(BenchProgress bench) {
    List<Learnt> delays = new ArrayList<>();
    bench.delays().forEach((pourer, delay) -> delays.add(new Learnt(pourer, delay)));
    try {
      return JSON.writeValueAsString(new Knowing(bench.begun(), bench.zeros(), delays));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a bench that cannot be written down: " + bench, e);
    }
  }

  static BenchProgress bench(String text) throws IOException {
    Knowing knowing = JSON.readValue(text, Knowing.class);
    Map<Pourer, StopDelay> delays = new HashMap<>();
    for (Learnt learnt : knowing.delays()) delays.put(learnt.pourer(), learnt.delay());
    return new BenchProgress(Optional.empty(), knowing.zeros(), delays, knowing.begun());
  }
}
