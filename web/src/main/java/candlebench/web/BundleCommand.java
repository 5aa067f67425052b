package candlebench.web;

import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Takes from the running bench what it can be played again from elsewhere. */
@Command(
    name = "candlebench bundle",
    description =
        "Saves what reached the running bench of late, to be sent and played again elsewhere.")
final class BundleCommand implements Callable<Integer> {
  private static final int PATIENCE_MILLIS = 60_000;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      defaultValue = BundleRoute.NAME,
      description = "the bundle, a file that is not there yet (default: ${DEFAULT-VALUE})")
  private Path out;

  @Mixin
  private Listening listening;

  @Override
  public Integer call() throws WrongUse {
    URI from = listening.place(BundleRoute.PATH);
    try {
      HttpURLConnection asked = (HttpURLConnection) from.toURL().openConnection();
      asked.setReadTimeout(PATIENCE_MILLIS);
      if (asked.getResponseCode() != HttpURLConnection.HTTP_OK)
        throw new WrongUse(from + " gives no bundle: " + words(asked));
      try (InputStream in = asked.getInputStream()) {
        save(in);
      }
    } catch (FileAlreadyExistsException there) {
      throw new WrongUse("'" + out + "' is there already: name a new file with --out");
    } catch (ConnectException nobody) {
      throw new WrongUse(
          "no bench answers at " + from
              + ": name its port with --port. A bench that has ended keeps its record, and nothing to play again");
    } catch (IOException failed) {
      throw new WrongUse("the bundle could not be saved to '" + out + "': " + failed.getMessage());
    }
    System.out.println(
        "saved " + out
            + ": without people, lots and remarks; with recipes, pots, weights and what the scales sent");
    System.out.println("candlebench replay " + out + " plays it again, on any computer");
    return Main.DONE;
  }

  /** What the other end said; whoever answers there need not be a bench. */
  private static String words(HttpURLConnection asked) throws IOException {
    InputStream said = asked.getErrorStream();
    return said == null
        ? "it answered " + asked.getResponseCode()
        : new String(said.readAllBytes(), StandardCharsets.UTF_8).strip();
  }

  /** Leaves no half of a bundle behind. */
  private void save(InputStream in) throws IOException {
    try {
      Files.copy(in, out);
    } catch (FileAlreadyExistsException there) {
      throw there;
    } catch (IOException broken) {
      Files.deleteIfExists(out);
      throw broken;
    }
  }
}
