package candlebench.web;

import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/**
 * The scales that a page was told to use: one a line in {@code scales.txt} of the data folder, as {@code --scale} takes them. A person may
 * edit it; what stands behind {@code #} is passed over.
 */
final class SavedScales {
  private final Path file;

  SavedScales(Path data) {
    this.file = data.resolve("scales.txt");
  }

  /** What is named there; throws {@link IllegalArgumentException} that names the file and what is wrong in it. */
  List<ScaleSettings> all() throws IOException {
    List<ScaleSettings> scales = new ArrayList<>();
    for (String uri : uris()) {
      try {
        scales.add(ScaleUri.of(uri));
      } catch (IllegalArgumentException malformed) {
        throw new IllegalArgumentException(
            "in " + file + ": " + malformed.getMessage() + ". Mend that line or remove it");
      }
    }
    return scales;
  }

  /** Names one more, in the place of whatever was named at the same port. */
  void add(String uri) throws IOException {
    List<String> uris = new ArrayList<>(uris());
    uris.removeIf(other -> place(other).equals(place(uri)));
    uris.add(uri);
    Files.createDirectories(file.getParent());
    Path written = file.resolveSibling("scales.txt.new");
    Files.write(written, uris, StandardCharsets.UTF_8);
    Files.move(written, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** As they are written there. */
  List<String> uris() throws IOException {
    if (!Files.exists(file)) return List.of();
    return lines().stream()
        .map(line -> line.replaceFirst("#.*", "").strip())
        .filter(line -> !line.isEmpty())
        .toList();
  }

  private List<String> lines() throws IOException {
    try {
      return Files.readAllLines(file, StandardCharsets.UTF_8);
    } catch (CharacterCodingException noText) {
      throw new IllegalArgumentException(
          file + " is no text any more: move it away, and find the scale anew on the page");
    }
  }

  /** Where a scale is plugged in, without how it speaks. */
  static String place(String uri) {
    return uri.replaceFirst("\\?.*", "");
  }
}
