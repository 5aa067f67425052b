package candlebench.station.link;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The names of serial ports that last. An adapter that is plugged in again may come back under another number, but the link that the system
 * makes to it by its USB identity stays (Linux, udev's rules for serial devices; elsewhere a port keeps the name it has).
 *
 * @param links the folder of such links
 */
record StableNames(Path links) {
  static final StableNames SYSTEM = new StableNames(Path.of("/dev/serial/by-id"));

  /** The link that leads to a device, or the device itself where there is none. */
  String of(String device) {
    if (!Files.isDirectory(links)) return device;
    try (DirectoryStream<Path> all = Files.newDirectoryStream(links)) {
      Path real = Path.of(device).toRealPath();
      for (Path link : all)
        if (Files.exists(link) && link.toRealPath().equals(real)) return link.toString();
    } catch (IOException goneMeanwhile) {
      // A port that is being unplugged keeps the name it was found by.
    }
    return device;
  }
}
