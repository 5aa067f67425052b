package candlebench.web;

import candlebench.protocol.Candidate;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.MassUnit;
import candlebench.station.link.SystemStamps;
import candlebench.station.link.find.Found;
import candlebench.station.link.find.ScaleFinder;
import candlebench.station.link.find.Search;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** The search for a scale that a page has asked for, one at a time, and what is done with what it found. */
final class ScaleSearch implements AutoCloseable {
  private static final int CHARACTER_DEVICE = 0020000;
  private static final int KIND_OF_FILE = 0170000;

  /** What is done with the scale that was chosen. */
  interface Chosen {
    /** Keeps it, to be used at every start from now on. */
    void keep(String uri) throws IOException;

    /** Opens the bench anew with it; the page's server with it, so its answer must have been sent. */
    void openAnew();
  }

  /** A search on a port. */
  record On(String device, ScaleFinder finder) {
    Search search() {
      return finder.search();
    }
  }

  private final Chosen chosen;
  private Optional<On> on = Optional.empty();

  ScaleSearch(Chosen chosen) {
    this.chosen = chosen;
  }

  /** Begins anew on a port; throws {@link IllegalArgumentException} where that is none. */
  synchronized void begin(String device) {
    if (!isPort(device))
      throw new IllegalArgumentException(
          "'" + device + "' is no serial port: choose one of the list, or type its path,"
              + " such as /dev/ttyUSB0 or COM3");
    close();
    ScaleFinder finder =
        ScaleFinder.on(device, ScaleFormats.all(), new SystemStamps(), search -> {});
    on = Optional.of(new On(device, finder));
    finder.start();
  }

  /** How far the last one has come, if any was begun. */
  synchronized Optional<On> on() {
    return on;
  }

  /** Keeps what was found, as a scale of this format; the unit for a format that names none, or empty text. */
  synchronized void keep(String format, String unit) throws IOException {
    On here = on.orElseThrow(ScaleSearch::nothingFound);
    Found found = here.search().found().orElseThrow(ScaleSearch::nothingFound);
    Candidate known = found.heard().recognition().fitting().stream()
        .filter(each -> each.format().id().equals(format))
        .findFirst()
        .orElseThrow(ScaleSearch::nothingFound);
    String uri = found.uri(here.device(), known.format());
    chosen.keep(Found.needsUnit(known) ? uri + "&unit=" + unit(unit) : uri);
  }

  void openAnew() {
    chosen.openAnew();
  }

  @Override
  public synchronized void close() {
    on.ifPresent(each -> each.finder().close());
    on = Optional.empty();
  }

  private static String unit(String symbol) {
    return Arrays.stream(MassUnit.values())
        .map(MassUnit::symbol)
        .filter(symbol::equals)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(
            "this scale never names its unit: say which one it shows, such as g"));
  }

  private static IllegalArgumentException nothingFound() {
    return new IllegalArgumentException(
        "no such scale was found here: look on its port first, then use what was found");
  }

  /** A name of Windows, or a device of characters: nothing else is opened for a page, whatever it asks for. */
  private static boolean isPort(String device) {
    if (device.matches("COM[0-9]{1,3}")) return true;
    if (!device.startsWith("/") || device.chars().anyMatch(Character::isISOControl)) return false;
    try {
      int mode = (Integer) Files.getAttribute(Path.of(device), "unix:mode");
      return (mode & KIND_OF_FILE) == CHARACTER_DEVICE;
    } catch (IOException | UnsupportedOperationException | IllegalArgumentException none) {
      return false;
    }
  }
}
