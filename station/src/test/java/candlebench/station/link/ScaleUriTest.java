package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.protocol.LineSettings;
import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScaleUriTest {

  @Test
  void a_serial_scale_with_all_that_can_be_said() {
    ScaleSettings scale = ScaleUri.of(
        "serial:/dev/ttyUSB0?format=and&line=2400-7E1&name=Fine%20scale%20+&d=0.1g&max=3kg&unit=oz&ask=200ms");
    assertThat(scale.line()).isEqualTo(new SerialLine("/dev/ttyUSB0", LineSettings.of("2400-7E1")));
    assertThat(scale.format().id()).isEqualTo("and");
    assertThat(scale.name()).contains("Fine scale +");
    assertThat(scale.division()).contains(new Division(Mass.ofGrams("0.1")));
    assertThat(scale.capacity()).contains(Mass.ofGrams("3000"));
    assertThat(scale.unit()).contains(MassUnit.OUNCE);
    assertThat(scale.ask()).contains(Duration.ofMillis(200));
  }

  @Test
  void line_settings_left_out_are_the_format_s_most_usual() {
    ScaleSettings scale = ScaleUri.of("serial:COM3?format=and");
    assertThat(scale.line())
        .isEqualTo(new SerialLine("COM3", scale.format().lines().get(0)));
    assertThat(scale.name()).isEmpty();
    assertThat(scale.ask()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "tcp:bench.local:4001?format=and, bench.local, 4001",
    "tcp:127.0.0.1:65535?format=and, 127.0.0.1, 65535",
    "tcp:[::1]:23?format=and, [::1], 23"
  })
  void a_scale_over_tcp(String text, String host, int port) {
    assertThat(ScaleUri.of(text).line()).isEqualTo(new TcpLine(host, port));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "serial:/dev/x | which format",
        "serial:?format=and | serial:DEVICE",
        "usb:/dev/x?format=and | serial:DEVICE",
        "serial:/dev/x?format=andd | nearest is 'and'",
        "serial:/dev/x?fromat=and | nearest is 'format'",
        "serial:/dev/x?format=and&nmae=a | nearest is 'name'",
        "serial:/dev/x?format=and&line=9600 | like 9600-8N1",
        "serial:/dev/x?format=and&format=and | twice",
        "serial:/dev/x?format=and&name= | KEY=VALUE",
        "serial:/dev/x?format=and& | KEY=VALUE",
        "serial:/dev/x?format=and&name=50% | %25",
        "serial:/dev/x?format=and&d=0g | above zero",
        "serial:/dev/x?format=and&d=0.1 | with its unit",
        "serial:/dev/x?format=and&max=5stone | no unit 'stone'",
        "serial:/dev/x?format=and&unit=fl | no unit 'fl'",
        "serial:/dev/x?format=and&ask=0.2s | such as 200ms",
        "serial:/dev/x?format=and&ask=1ms | 20ms to 60000ms",
        "tcp:host?format=and | HOST:PORT",
        "tcp:host:70000?format=and | 1 to 65535",
        "tcp:host:4001?format=and&line=9600-8N1 | for serial: only"
      })
  void what_cannot_be_read_is_refused_with_what_to_write(String text, String words) {
    assertThatThrownBy(() -> ScaleUri.of(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("scale '" + text + "': ")
        .hasMessageContaining(words);
  }
}
