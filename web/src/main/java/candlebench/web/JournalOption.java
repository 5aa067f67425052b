package candlebench.web;

import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.Purpose;
import candlebench.web.Main.WrongUse;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** The options that name a journal to be read. */
final class JournalOption {

  @Option(
      names = "--data",
      paramLabel = "DIR",
      defaultValue = DataFolder.UNLESS_SAID,
      description = "the bench's data folder (default: ${DEFAULT-VALUE})")
  private Path data;

  @Option(names = "--practice", description = "the practice bench's journal instead of the record")
  private boolean practice;

  Purpose purpose() {
    return practice ? Purpose.PRACTICE : Purpose.RECORD;
  }

  /** Where it lies. */
  Path file() {
    return purpose().under(data);
  }

  /** Opens it for reading. */
  JournalFile open() throws WrongUse, JournalFailed {
    Path file = file();
    if (!Files.isRegularFile(file))
      throw new WrongUse("no " + purpose().word() + " at '" + file
          + "': name the bench's data folder with --data");
    return JournalFile.open(file);
  }
}
