package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StableNamesTest {
  @TempDir
  Path folder;

  @Test
  void a_port_goes_by_the_link_that_stays_when_its_number_changes() throws Exception {
    Path links = Files.createDirectory(folder.resolve("by-id"));
    Path first = Files.createFile(folder.resolve("ttyUSB0"));
    Path second = Files.createFile(folder.resolve("ttyUSB1"));
    Path link = Files.createSymbolicLink(links.resolve("usb-adapter-7"), first);
    Files.createSymbolicLink(links.resolve("usb-unplugged"), folder.resolve("ttyUSB9"));
    StableNames names = new StableNames(links);
    assertThat(names.of(first.toString())).isEqualTo(link.toString());
    assertThat(names.of(second.toString())).isEqualTo(second.toString());
    Files.delete(link);
    Files.createSymbolicLink(link, second);
    assertThat(names.of(second.toString())).isEqualTo(link.toString());
  }

  @Test
  void where_no_such_links_are_made_a_port_keeps_its_name() {
    StableNames names = new StableNames(folder.resolve("nothing"));
    assertThat(names.of("/dev/ttyS0")).isEqualTo("/dev/ttyS0");
    assertThat(new StableNames(folder).of("COM3")).isEqualTo("COM3");
  }
}
