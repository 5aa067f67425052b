package candlebench.web;

import candlebench.station.Diagnosis.Outcome;
import candlebench.station.DiagnosisFile;
import candlebench.station.journal.JournalFailed;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plays a bundle again and says whether the same comes of it. */
@Command(
    name = "candlebench replay",
    description = "Plays a bundle again and tells whether the same entries come of it.")
final class ReplayCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Parameters(paramLabel = "BUNDLE", description = "a file that bundle saved")
  private Path bundle;

  @Override
  public Integer call() throws WrongUse {
    Outcome outcome = outcome();
    if (outcome.pieces() == 0)
      throw new WrongUse(
          "'" + bundle
              + "' holds nothing that can be played: the batch ran so long that its beginning is not kept");
    outcome.difference().ifPresent(words -> System.out.println("DIFFERS  " + words));
    if (outcome.difference().isPresent()) return Main.NO;
    System.out.println("SAME  " + outcome.entries()
        + " entries come of its inputs as they were recorded, byte for byte");
    return Main.DONE;
  }

  private Outcome outcome() throws WrongUse {
    try (InputStream in = Files.newInputStream(bundle)) {
      return DiagnosisFile.read(in).replayed();
    } catch (NoSuchFileException missing) {
      throw new WrongUse("no file '" + bundle + "': name one that 'bundle' saved");
    } catch (IOException unreadable) {
      throw new WrongUse("cannot read '" + bundle + "': " + unreadable.getMessage());
    } catch (IllegalArgumentException | JournalFailed wrong) {
      throw new WrongUse("'" + bundle + "': " + wrong.getMessage());
    }
  }
}
