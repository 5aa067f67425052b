package candlebench.web;

import candlebench.station.journal.JournalAudit;
import candlebench.station.journal.JournalAudit.Report;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.web.Main.WrongUse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Copies the record to another place, while a bench may be writing to it, and goes through the copy. */
@Command(
    name = "candlebench backup",
    description = "Copies the whole record to a new file, and audits the copy.")
final class BackupCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Mixin
  private JournalOption of;

  @Parameters(
      paramLabel = "FILE",
      description = "the copy, a file that is not there yet; best on another disk")
  private Path copy;

  @Override
  public Integer call() throws WrongUse {
    if (Files.exists(copy)) throw new WrongUse("'" + copy + "' is there already: name a new file");
    try (JournalFile journal = of.open()) {
      journal.copyTo(copy);
    } catch (JournalFailed refused) {
      throw new WrongUse(refused.getMessage());
    }
    Report report = audited(copy, JournalAudit.of(of.purpose()));
    AuditCommand.print(report, System.out);
    return report.sound() ? Main.DONE : Main.NO;
  }

  /** Goes through a copy of the record. */
  static Report audited(Path copy, JournalAudit audit) throws WrongUse {
    try (JournalFile reading = JournalFile.open(copy)) {
      reading.scan(1, audit);
    } catch (JournalFailed unreadable) {
      throw new WrongUse(unreadable.getMessage());
    }
    return audit.report();
  }
}
