package candlebench.protocol.speed;

import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import java.util.concurrent.TimeUnit;
import java.util.function.IntConsumer;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * From the bytes of a stream to what its frames say, ours against a regular expression; frames a second and bytes allocated for each.
 *
 * <pre>
 * mvn -q -B -ntp -pl protocol -am -Prun process-test-classes -Drun.main=org.openjdk.jmh.Main \
 *     "-Drun.args=DecodeBenchmark -prof gc"
 * </pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class DecodeBenchmark {
  private static final int PIECE = 64;

  /** The formats compared. */
  @Param({"and", "sics", "ohaus", "sbi", "cas/18", "kern/comma"})
  public String id;

  private byte[] stream;
  private byte[] piece;
  private ScaleFormat format;
  private RegexDecoder regex;

  /** Makes the stream. */
  @Setup
  public void pour() {
    stream = PourBytes.of(id);
    piece = new byte[PIECE];
    format = ScaleFormats.of(id);
    regex = RegexDecoder.of(id);
  }

  /** Framed and read as the station does it. */
  @Benchmark
  @OperationsPerInvocation(PourBytes.FRAMES)
  public void ours(Blackhole sink) {
    Framer framer = format.newFramer();
    inPieces(length ->
        framer.feed(piece, length, Framer.NEVER, frame -> sink.consume(format.decode(frame))));
  }

  /** Gathered as text, cut at line ends, read by a regular expression. */
  @Benchmark
  @OperationsPerInvocation(PourBytes.FRAMES)
  public void regex(Blackhole sink) {
    inPieces(length -> regex.feed(piece, length, sink::consume));
  }

  /** As bytes come off a wire. */
  private void inPieces(IntConsumer feed) {
    for (int at = 0; at < stream.length; at += PIECE) {
      int length = Math.min(PIECE, stream.length - at);
      System.arraycopy(stream, at, piece, 0, length);
      feed.accept(length);
    }
  }
}
