package candlebench.station.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.util.Optional;

/**
 * Whether this user may open a serial device, where the system tells that by its files.
 *
 * @param there whether there is such a device now
 * @param allowed whether this user may read and write it
 * @param group the group that may: {@code dialout} on most systems, {@code uucp} on some; empty where the system has none
 */
public record PortAccess(boolean there, boolean allowed, Optional<String> group) {

  public static PortAccess of(String device) {
    Path path = Path.of(device);
    return new PortAccess(
        Files.exists(path), Files.isReadable(path) && Files.isWritable(path), group(path));
  }

  private static Optional<String> group(Path device) {
    try {
      return Optional.of(
          Files.readAttributes(device, PosixFileAttributes.class).group().getName());
    } catch (IOException | UnsupportedOperationException unknown) {
      return Optional.empty();
    }
  }
}
