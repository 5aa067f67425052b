package candlebench.protocol;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A coverage-guided fuzzer on every framer and decoder, bounded so that every build runs it. For as long as you like:
 *
 * <pre>
 * mvn -B -ntp -pl protocol -am -Prun process-test-classes -Drun.main=com.code_intelligence.jazzer.Jazzer \
 *     "-Drun.args=--target_class=candlebench.protocol.HostileBytes -max_total_time=3600"
 * </pre>
 */
@Tag("fuzz")
class HostileBytesTest {

  static List<byte[]> seeds() {
    return HostileBytes.seeds();
  }

  @MethodSource("seeds")
  @FuzzTest(maxExecutions = 8000)
  void whatever_a_wire_brings_is_framed_read_or_refused(byte[] wire) {
    HostileBytes.fuzzerTestOneInput(wire);
  }
}
