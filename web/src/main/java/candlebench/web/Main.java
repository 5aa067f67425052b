package candlebench.web;

import candlebench.shared.NearestWord;
import java.io.PrintWriter;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/**
 * The command line. A command is made only when it is called, so that none waits for the classes of another.
 *
 * <p>Exit codes: 0 done, 1 the answer is no, 2 wrong use or unreadable input, with one line on standard error that says what to do.
 */
public final class Main {
  static final int DONE = 0;
  static final int NO = 1;
  static final int WRONG_USE = 2;

  /** The words that begin a command, each with what it does. */
  private static final Map<String, Supplier<Callable<Integer>>> COMMANDS = new LinkedHashMap<>();

  static {
    COMMANDS.put("serve", ServeCommand::new);
    COMMANDS.put("demo", DemoCommand::new);
    COMMANDS.put("ports", PortsCommand::new);
    COMMANDS.put("decode", DecodeCommand::new);
    COMMANDS.put("recognise", RecogniseCommand::new);
    COMMANDS.put("export", ExportCommand::new);
    COMMANDS.put("audit", AuditCommand::new);
    COMMANDS.put("backup", BackupCommand::new);
    COMMANDS.put("restore", RestoreCommand::new);
    COMMANDS.put("plan", PlanCommand::new);
    COMMANDS.put("self-check", SelfCheckCommand::new);
    COMMANDS.put("bundle", BundleCommand::new);
    COMMANDS.put("replay", ReplayCommand::new);
  }

  private static final Set<String> RUN_ALL_DAY = Set.of("serve", "demo");

  /** Those that are told where the bench is as the bench itself is. */
  private static final Set<String> TOLD_BY_SETTINGS = Set.of("serve", "demo", "bundle");

  private Main() {}

  public static void main(String[] args) {
    if (args.length > 0 && RUN_ALL_DAY.contains(args[0])) LeanStart.once();
    CheckedOutput out = CheckedOutput.install();
    int code = run(args);
    if (out.trouble().isPresent())
      code = wrongUse(
          "not all could be written: " + out.trouble().get() + ". Make room, or send it elsewhere");
    if (code != DONE) System.exit(code);
  }

  /** Runs one command and returns its exit code; {@code serve} and {@code demo} go on until they are told to end. */
  static int run(String... args) {
    String name = args.length == 0 ? "--help" : args[0];
    if (List.of("--help", "-h", "help").contains(name)) return help();
    Supplier<Callable<Integer>> command = COMMANDS.get(name);
    if (command == null)
      return wrongUse("no command '" + name + "'; nearest is '"
          + NearestWord.to(name, COMMANDS.keySet()) + "'. candlebench --help lists them");
    List<String> typed = Arrays.asList(args).subList(1, args.length);
    CommandLine line = new CommandLine(command.get());
    if (TOLD_BY_SETTINGS.contains(name)) {
      line.getCommandSpec().usageMessage().footer(Settings.HELP);
      try {
        typed = settings().with(line, typed);
      } catch (WrongUse wrong) {
        return wrongUse(wrong.getMessage());
      }
    }
    return line.setParameterExceptionHandler((wrong, given) -> wrongUse(words(name, wrong)))
        .setExecutionExceptionHandler((failed, called, parsed) -> {
          if (failed instanceof WrongUse wrong) return wrongUse(wrong.getMessage());
          throw failed;
        })
        .execute(typed.toArray(String[]::new));
  }

  /** What a bench is told besides its flags, by this program's environment and the file in its data folder. */
  static Settings settings() {
    return settings(System.getenv());
  }

  static Settings settings(Map<String, String> environment) {
    Map<String, Supplier<Callable<Integer>>> benches = new LinkedHashMap<>(COMMANDS);
    benches.keySet().retainAll(RUN_ALL_DAY);
    return new Settings(benches, environment);
  }

  static Set<String> commands() {
    return COMMANDS.keySet();
  }

  private static int help() {
    PrintWriter out = new PrintWriter(System.out, true);
    out.println("Candlebench: a weighing station for a workshop that hand-pours candles.");
    out.println();
    COMMANDS.forEach((name, command) -> out.printf(
        "  candlebench %-10s %s%n",
        name, new CommandLine(command.get()).getCommandSpec().usageMessage().description()[0]));
    out.println();
    out.println("candlebench COMMAND --help tells more of each.");
    return DONE;
  }

  private static int wrongUse(String words) {
    System.err.println("candlebench: " + words);
    return WRONG_USE;
  }

  private static String words(String name, ParameterException wrong) {
    String how = ". candlebench " + name + " --help tells how";
    for (String typed : wrong.getCommandLine().getUnmatchedArguments())
      if (typed.startsWith("-")) return unknownOption(typed, wrong.getCommandLine()) + how;
    return wrong.getMessage().lines().findFirst().orElse("wrong use") + how;
  }

  private static String unknownOption(String typed, CommandLine line) {
    Set<String> known = line.getCommandSpec().optionsMap().keySet();
    return "no option '" + typed + "'; nearest is '"
        + NearestWord.to(typed.replaceFirst("=.*", ""), known) + "'";
  }

  /** A command was called in a way that cannot work; the message says what to do. */
  static final class WrongUse extends Exception {
    private static final long serialVersionUID = 1L;

    WrongUse(String words) {
      super(words);
    }
  }
}
