package candlebench.web;

import candlebench.station.journal.Purpose;
import candlebench.web.Main.WrongUse;
import java.net.URI;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says of this computer and its data folder what is fine for a bench and what is not. */
@Command(
    name = "candlebench self-check",
    description = "Tells what is fine on this computer for a bench, and what to do about the rest.")
final class SelfCheckCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Spec
  private CommandSpec spec;

  @Mixin
  private Listening listening;

  /** What serve would be told, as far as it can be read. */
  private record Told(List<String> scales, List<Path> recipes, URI page) {}

  @Override
  public Integer call() throws WrongUse {
    List<Finding> findings = findings(SelfCheck.Computer.thisOne(), Instant.now());
    findings.forEach(System.out::println);
    return findings.stream().allMatch(Finding::isFine) ? Main.DONE : Main.NO;
  }

  private List<Finding> findings(SelfCheck.Computer computer, Instant now) throws WrongUse {
    Path data = listening.data();
    SelfCheck check = new SelfCheck(computer, data);
    List<Finding> findings =
        new ArrayList<>(List.of(check.java(), check.dataFolder(), check.room()));
    Told told = told(data, findings);
    List<String> scales = new ArrayList<>(told.scales());
    findings.add(SelfCheck.readable("The page's list of scales", () -> {
      List<String> saved = new SavedScales(data).uris();
      new SavedScales(data).all();
      if (scales.isEmpty()) scales.addAll(saved);
      return saved.size() + " in it";
    }));
    findings.add(SelfCheck.readable("Recipes", () -> {
      Products products = Products.of(told.recipes(), data);
      return products.all().size() + ", the first is " + products.all().get(0).name();
    }));
    findings.addAll(JournalCheck.of(data, Purpose.RECORD, now));
    findings.addAll(check.serialPorts(scales));
    findings.add(SelfCheck.page(told.page()));
    return findings;
  }

  private Told told(Path data, List<Finding> findings) throws WrongUse {
    ServeCommand bench = new ServeCommand();
    CommandLine serve = new CommandLine(bench);
    List<String> typed = new ArrayList<>(List.of("--data", data.toString()));
    for (String where : List.of("--port", "--listen"))
      if (spec.commandLine().getParseResult().hasMatchedOption(where))
        typed.addAll(List.of(where, spec.findOption(where).getValue().toString()));
    findings.add(SelfCheck.readable("Settings", () -> {
      List<String> all = Main.settings().with(serve, typed);
      serve.parseArgs(all.toArray(String[]::new));
      return (all.size() - typed.size()) + " given by " + Settings.FILE + " and the environment";
    }));
    return new Told(
        serve.getCommandSpec().findOption("--scale").getValue(),
        serve.getCommandSpec().findOption("--recipe").getValue(),
        (serve.getParseResult() == null ? listening : bench.listening()).place("/"));
  }
}
