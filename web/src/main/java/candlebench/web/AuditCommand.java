package candlebench.web;

import candlebench.station.journal.JournalAudit;
import candlebench.station.journal.JournalAudit.Finding;
import candlebench.station.journal.JournalAudit.Report;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.ProjectionsAudit;
import candlebench.station.journal.Purpose;
import candlebench.web.Main.WrongUse;
import java.io.PrintStream;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Goes through the record and tells whether it is as it was written. */
@Command(
    name = "candlebench audit",
    description = "Tells whether the record is as it was written, entry by entry.")
final class AuditCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Mixin
  private JournalOption of;

  @Option(
      names = "--against",
      paramLabel = "HEAD",
      description =
          "a head noted earlier, as printed on a sheet or an export; without it a cut tail cannot be seen")
  private String against;

  @Override
  public Integer call() throws WrongUse {
    JournalAudit audit = audit(of.purpose());
    try (JournalFile journal = of.open()) {
      journal.scan(1, audit);
    } catch (JournalFailed damaged) {
      print(audit.report(), System.out);
      System.out.println("DAMAGED  " + damaged.getMessage());
      return Main.NO;
    }
    print(audit.report(), System.out);
    return audit.report().sound() && listsAgree() ? Main.DONE : Main.NO;
  }

  /** Whether what is folded from the record, to find things fast, says the same. */
  private boolean listsAgree() {
    try {
      Optional<String> wrong = ProjectionsAudit.of(of.file());
      wrong.ifPresent(words -> System.out.println("DIFFERS  " + words));
      return wrong.isEmpty();
    } catch (JournalFailed unreadable) {
      System.out.println("DIFFERS  " + unreadable.getMessage());
      return false;
    }
  }

  private JournalAudit audit(Purpose purpose) throws WrongUse {
    if (against == null) return JournalAudit.of(purpose);
    try {
      return JournalAudit.against(purpose, against);
    } catch (IllegalArgumentException malformed) {
      throw new WrongUse(malformed.getMessage());
    }
  }

  /** Prints what an audit found, and the head to be noted. */
  static void print(Report report, PrintStream out) {
    for (Finding finding : report.findings()) out.println(finding.kind() + "  " + finding.words());
    if (report.unnamed() > 0) out.println("and " + report.unnamed() + " more");
    report
        .noted()
        .ifPresent(
            noted -> out.println((noted.found() ? "FOUND" : "NOT FOUND") + "  " + noted.words()));
    out.println(report.entries()
        + (report.entries() == 1 ? " entry, " : " entries, ")
        + (report.sound() ? "sound" : "not as written"));
    out.println("head " + report.head());
  }
}
