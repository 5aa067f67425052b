package candlebench.web;

import candlebench.station.journal.JournalAudit;
import candlebench.station.journal.JournalAudit.Report;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Puts a copy of the record back where a bench finds it. A record that is there already is never written over. */
@Command(
    name = "candlebench restore",
    description = "Puts a copy of the record back into a data folder that has none.")
final class RestoreCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Mixin
  private JournalOption to;

  @Option(
      names = "--against",
      paramLabel = "HEAD",
      description = "a head noted earlier, which the copy has to hold")
  private String against;

  @Parameters(paramLabel = "FILE", description = "the copy, as backup made it")
  private Path copy;

  @Override
  public Integer call() throws WrongUse {
    if (Files.exists(to.file()))
      throw new WrongUse("there is a " + to.purpose().word() + " at '" + to.file()
          + "', and it is left as it is: move it away, or name another data folder with --data");
    if (!Files.isRegularFile(copy))
      throw new WrongUse("no file '" + copy + "': name a copy that backup made");
    try (JournalFile journal = JournalFile.open(copy)) {
      if (journal.purpose() != to.purpose())
        throw new WrongUse("'" + copy + "' is a copy of the "
            + journal.purpose().word() + ", not of the " + to.purpose().word()
            + ": leave --practice out, or put it in");
      Report report = BackupCommand.audited(copy, audit());
      AuditCommand.print(report, System.out);
      if (!report.sound()) {
        System.out.println("nothing was restored: take another copy");
        return Main.NO;
      }
      Files.createDirectories(to.file().toAbsolutePath().getParent());
      journal.copyTo(to.file());
    } catch (JournalFailed refused) {
      throw new WrongUse(refused.getMessage());
    } catch (IOException unwritable) {
      throw new WrongUse("the data folder cannot be made: " + unwritable.getMessage());
    }
    System.out.println("restored to " + to.file());
    return Main.DONE;
  }

  private JournalAudit audit() throws WrongUse {
    if (against == null) return JournalAudit.of(to.purpose());
    try {
      return JournalAudit.against(to.purpose(), against);
    } catch (IllegalArgumentException malformed) {
      throw new WrongUse(malformed.getMessage());
    }
  }
}
