package candlebench.web;

import candlebench.shared.NearestWord;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * What a bench is told besides its flags. A flag goes before the environment, the environment before the file in the data folder, and
 * that before what is built in. A key is the name of an option, so whatever option {@code serve} or {@code demo} has is a key too.
 *
 * <pre>
 * # candlebench.properties: whole lines of this kind are passed over
 * port = 7400
 * scale = serial:/dev/ttyUSB0?format=and
 * scale = tcp:192.168.1.20:4001?format=sics
 * </pre>
 */
final class Settings {
  static final String FILE = "candlebench.properties";
  static final String PREFIX = "CANDLEBENCH_";

  /** What stands between several values in the environment; in the file each has its own line. */
  static final String SEVERAL = ";";

  static final String HELP = "%nEach of these may also stand in " + FILE
      + " of the data folder, as port = 7373, or in the environment, as " + PREFIX
      + "PORT=7373; only the data folder itself cannot stand in the file. A flag goes before the environment, and that before the file.";

  private static final String DATA = "data";
  private static final int MOST_BYTES = 1 << 16;

  private final Map<String, Supplier<Callable<Integer>>> commands;
  private final Map<String, String> environment;

  /** One value, and where it stands, for whoever has to mend it. */
  private record Setting(String key, String value, String where) {}

  /**
   * @param commands those that are told so, by name
   * @param environment of the program
   */
  Settings(Map<String, Supplier<Callable<Integer>>> commands, Map<String, String> environment) {
    this.commands = commands;
    this.environment = environment;
  }

  /** The keys, in the order of the alphabet, each with its option. */
  Map<String, OptionSpec> keys() {
    Map<String, OptionSpec> keys = new TreeMap<>();
    for (Supplier<Callable<Integer>> command : commands.values())
      for (OptionSpec option : new CommandLine(command.get()).getCommandSpec().options())
        if (!option.usageHelp()) keys.put(option.longestName().substring(2), option);
    return keys;
  }

  static String variable(String key) {
    return PREFIX + key.toUpperCase(Locale.ROOT).replace('-', '_');
  }

  /** A command's arguments with those from the environment and the file before them that it was not given. */
  List<String> with(CommandLine line, List<String> typed) throws WrongUse {
    ParseResult given;
    try {
      given = line.parseArgs(typed.toArray(String[]::new));
    } catch (ParameterException wrong) {
      // The call itself says what is wrong with what was typed.
      return typed;
    }
    if (given.isUsageHelpRequested()) return typed;
    Path data = line.getCommandSpec().findOption("--" + DATA).getValue();
    List<String> all = new ArrayList<>();
    told(data).forEach((key, settings) -> {
      OptionSpec option = line.getCommandSpec().findOption("--" + key);
      if (option == null || given.hasMatchedOption(option)) return;
      for (Setting setting : settings) all.add("--" + key + "=" + setting.value());
    });
    all.addAll(typed);
    return all;
  }

  /** Reads all that a bench with this data folder would be told; throws in words for whoever wrote it. */
  void check(Path data) throws WrongUse {
    told(data);
  }

  private Map<String, List<Setting>> told(Path data) throws WrongUse {
    boolean anyVariable = environment.keySet().stream().anyMatch(name -> name.startsWith(PREFIX));
    if (!anyVariable && !Files.exists(data.resolve(FILE))) return Map.of();
    Map<String, OptionSpec> keys = keys();
    Map<String, List<Setting>> told = byKey(inFile(data.resolve(FILE), keys.keySet()), keys);
    told.putAll(byKey(inEnvironment(keys), keys));
    return told;
  }

  private Map<String, List<Setting>> byKey(List<Setting> settings, Map<String, OptionSpec> keys)
      throws WrongUse {
    Map<String, List<Setting>> byKey = new LinkedHashMap<>();
    for (Setting setting : settings) {
      List<Setting> same = byKey.computeIfAbsent(setting.key(), key -> new ArrayList<>());
      if (!same.isEmpty() && !keys.get(setting.key()).isMultiValue())
        throw new WrongUse(setting.where() + ": '" + setting.key() + "' stands there already, "
            + same.get(0).where() + ": keep one of them");
      same.add(setting);
      tryOut(setting);
    }
    return byKey;
  }

  /** Whether a value can be one of its kind is said with the place where it stands. */
  private void tryOut(Setting setting) throws WrongUse {
    for (Supplier<Callable<Integer>> command : commands.values()) {
      CommandLine line = new CommandLine(command.get());
      if (line.getCommandSpec().findOption("--" + setting.key()) == null) continue;
      try {
        line.parseArgs("--" + setting.key() + "=" + setting.value());
        return;
      } catch (ParameterException wrong) {
        throw new WrongUse(setting.where() + ": "
            + wrong.getMessage().lines().findFirst().orElse("wrong value")
            + ". candlebench serve --help tells what it takes");
      }
    }
  }

  private List<Setting> inEnvironment(Map<String, OptionSpec> keys) throws WrongUse {
    Map<String, String> keyOf = new TreeMap<>();
    keys.keySet().forEach(key -> keyOf.put(variable(key), key));
    List<Setting> settings = new ArrayList<>();
    for (Map.Entry<String, String> variable : new TreeMap<>(environment).entrySet()) {
      String name = variable.getKey();
      if (!name.startsWith(PREFIX)) continue;
      String where = "in the environment, " + name;
      if (!keyOf.containsKey(name))
        throw new WrongUse(where + ": there is no such setting; nearest is '"
            + NearestWord.to(name, keyOf.keySet()) + "'. Rename it, or take it away");
      String key = keyOf.get(name);
      String[] values = keys.get(key).isMultiValue()
          ? variable.getValue().split(SEVERAL)
          : new String[] {variable.getValue()};
      for (String value : values) settings.add(setting(key, value, where));
    }
    settings.removeIf(setting -> setting.key().equals(DATA));
    return settings;
  }

  private static List<Setting> inFile(Path file, Set<String> known) throws WrongUse {
    if (!Files.exists(file)) return List.of();
    Set<String> keys = new TreeSet<>(known);
    keys.remove(DATA);
    List<Setting> settings = new ArrayList<>();
    int number = 0;
    for (String line : lines(file)) {
      String where = "in " + file + ", line " + ++number;
      String text = line.strip();
      if (text.isEmpty() || text.startsWith("#")) continue;
      int equals = text.indexOf('=');
      if (equals < 1) throw new WrongUse(where + ": a line is key = value, such as port = 7373");
      String key = text.substring(0, equals).strip();
      if (key.equals(DATA))
        throw new WrongUse(where + ": the file lies in the data folder and cannot name it. Use --"
            + DATA + " or " + variable(DATA));
      if (!keys.contains(key))
        throw new WrongUse(where + ": no key '" + key + "'; nearest is '"
            + NearestWord.to(key, keys)
            + "'. Mend that line or remove it");
      settings.add(setting(key, text.substring(equals + 1), where));
    }
    return settings;
  }

  private static Setting setting(String key, String value, String where) throws WrongUse {
    if (value.isBlank())
      throw new WrongUse(where + ": " + key + " is given no value: give it one, or take it away");
    return new Setting(key, value.strip(), where);
  }

  private static List<String> lines(Path file) throws WrongUse {
    try {
      if (Files.size(file) > MOST_BYTES)
        throw new WrongUse(file + " is over 64 kB, which is no file of settings: move it away");
      List<String> lines = new ArrayList<>(Files.readAllLines(file, StandardCharsets.UTF_8));
      // Some editors put a mark at the start of a file in UTF-8.
      if (!lines.isEmpty()) lines.set(0, lines.get(0).replaceFirst("^\uFEFF", ""));
      return lines;
    } catch (CharacterCodingException foreign) {
      throw new WrongUse(file + " is not in UTF-8: save it as UTF-8, or move it away");
    } catch (IOException unreadable) {
      throw new WrongUse("cannot read " + file + ": " + unreadable.getMessage()
          + ". Make it readable for whoever runs the bench, or move it away");
    }
  }
}
