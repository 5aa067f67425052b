package candlebench.station;

import candlebench.shared.Mass;
import candlebench.station.batch.HarbourLane;
import candlebench.station.batch.Product;
import candlebench.station.batch.planning.PlannedProduct;
import candlebench.station.batch.planning.RecipeJson;
import candlebench.station.batch.planning.RecipeWriterJson;
import candlebench.station.batch.planning.UnreadablePlan;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.BenchSetup.Pot;
import candlebench.station.guidance.BenchSetup.Timing;
import candlebench.station.journal.AnonymousJson;
import candlebench.station.journal.Checkpoint;
import candlebench.station.journal.CheckpointJson;
import candlebench.station.journal.EntryText;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.Purpose;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import candlebench.station.view.ShownUnit;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * A diagnosis as a file to be sent: a zip of texts. It holds nobody's name, no lot, no word that a maker typed and no path or address;
 * recipes, weights, times, the zone of the clock and what the scales sent stand in it as they are, since the replay needs them.
 *
 * <pre>
 * about.txt     key = value: what made it, and what the bench was told
 * scales.txt    a scale each line, without where it is plugged in
 * pots.txt      a known pot each line
 * plan-1.json   a recipe each; none where the bench makes the invented ones
 * known.json    what the bench knew before the first entry here
 * entries.txt   number, time, kind and body of each entry, a tab between
 * inputs.txt    what reached the bench, see {@link InputTrace}
 * </pre>
 *
 * More files may lie in it, for people to read.
 */
public final class DiagnosisFile {
  private static final String FORM = "1";
  private static final String NOWHERE = "tcp:127.0.0.1:1?";
  private static final long MOST_BYTES = 128L << 20;
  private static final Pattern SAID = Pattern.compile("(\\d+ -?s \\S+ )(\\{.*)");

  private DiagnosisFile() {}

  /** Writes it, with more that is for people to read: the name of a file and its text. */
  public static void write(Diagnosis diagnosis, Map<String, String> more, OutputStream out)
      throws IOException {
    AnonymousJson anonymous = new AnonymousJson();
    ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
    put(zip, "about.txt", about(diagnosis));
    put(zip, "scales.txt", scales(diagnosis.config(), anonymous));
    put(
        zip,
        "pots.txt",
        diagnosis.config().setup().pots().stream()
            .map(pot -> pot.empty().grams() + "\t" + pot.room().grams() + "\t" + pot.name()));
    int number = 0;
    for (PlannedProduct plan : plans(diagnosis.config()))
      put(
          zip,
          "plan-" + ++number + ".json",
          Stream.of(RecipeWriterJson.text(plan.order().withLots(anonymous::lot))));
    put(
        zip,
        "known.json",
        Stream.of(anonymous.line(CheckpointJson.text(diagnosis.known().bench()))));
    put(zip, "entries.txt", diagnosis.entries().stream().map(entry -> line(entry, anonymous)));
    put(zip, "inputs.txt", diagnosis.inputs().lines().map(line -> hidden(line, anonymous)));
    for (Map.Entry<String, String> file : more.entrySet())
      put(zip, file.getKey(), Stream.of(file.getValue()));
    zip.finish();
  }

  private static Stream<String> about(Diagnosis diagnosis) {
    BenchSetup setup = diagnosis.config().setup();
    return Stream.of(
        "form = " + FORM,
        "purpose = " + diagnosis.config().purpose().name(),
        "zone = " + setup.zone(),
        "unit = " + diagnosis.config().unit().name(),
        "count-in = " + setup.timing().countIn(),
        "undo = " + setup.timing().undo(),
        "known = " + diagnosis.known().entries(),
        "written = " + diagnosis.written());
  }

  private static Stream<String> scales(StationConfig config, AnonymousJson anonymous) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < config.scales().size(); i++) {
      ScaleSettings scale = config.scales().get(i);
      List<String> said = new ArrayList<>(List.of("format=" + scale.format().id()));
      String name = config.setup().scales().get(i).name();
      said.add("name=" + anonymous.scale(name).replace(" ", "%20"));
      scale.division().ifPresent(division -> said.add("d=" + division.step().grams() + "g"));
      scale.capacity().ifPresent(most -> said.add("max=" + most.grams() + "g"));
      scale.unit().ifPresent(unit -> said.add("unit=" + unit.symbol()));
      scale.ask().ifPresent(ask -> said.add("ask=" + ask.toMillis() + "ms"));
      lines.add(NOWHERE + String.join("&", said));
    }
    return lines.stream();
  }

  private static List<PlannedProduct> plans(StationConfig config) {
    List<? extends Product> products = config.setup().products();
    if (products.equals(HarbourLane.all())) return List.of();
    return products.stream().map(PlannedProduct.class::cast).toList();
  }

  private static String line(JournalEntry entry, AnonymousJson anonymous) {
    EntryText hidden = anonymous.entry(new EntryText(entry.kind(), entry.body()));
    return String.join(
        "\t", Long.toString(entry.sequence()), entry.wall(), hidden.kind(), hidden.body());
  }

  private static String hidden(String line, AnonymousJson anonymous) {
    Matcher said = SAID.matcher(line);
    return said.matches() ? said.group(1) + anonymous.line(said.group(2)) : line;
  }

  private static void put(ZipOutputStream zip, String name, Stream<String> lines)
      throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    for (String line : (Iterable<String>) lines::iterator)
      zip.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }

  /**
   * Reads it back.
   *
   * @throws IllegalArgumentException where it is none, in words for whoever was sent it
   */
  public static Diagnosis read(InputStream in) throws IOException {
    Map<String, String> files = files(in);
    Map<String, String> about = lines(files, "about.txt")
        .map(line -> line.split(" = ", 2))
        .collect(Collectors.toMap(
            words -> words[0], words -> words[words.length - 1], (first, again) -> again));
    if (!FORM.equals(about.get("form")))
      throw new IllegalArgumentException(
          "it is no bundle that this program can read: take one made by 'bundle' of the same "
              + "version, or run the program that made it");
    try {
      return new Diagnosis(
          config(about, files),
          new Checkpoint(
              Long.parseLong(about.get("known")),
              "",
              CheckpointJson.bench(file(files, "known.json"))),
          lines(files, "entries.txt").map(DiagnosisFile::entry).toList(),
          Long.parseLong(about.get("written")),
          file(files, "inputs.txt"));
    } catch (IOException | RuntimeException damaged) {
      throw new IllegalArgumentException(
          "the bundle is damaged: " + damaged.getMessage() + ". Have it sent again", damaged);
    }
  }

  private static StationConfig config(Map<String, String> about, Map<String, String> files) {
    List<ScaleSettings> scales = lines(files, "scales.txt").map(ScaleUri::of).toList();
    List<PlannedProduct> plans = new ArrayList<>();
    for (int i = 1; files.containsKey("plan-" + i + ".json"); i++)
      plans.add(plan(files.get("plan-" + i + ".json")));
    return new StationConfig(
        Purpose.valueOf(about.get("purpose")),
        scales,
        new BenchSetup(
            StationConfig.named(scales),
            lines(files, "pots.txt").map(DiagnosisFile::pot).toList(),
            plans.isEmpty() ? HarbourLane.all() : plans,
            new Timing(Duration.parse(about.get("count-in")), Duration.parse(about.get("undo"))),
            ZoneId.of(about.get("zone"))),
        ShownUnit.valueOf(about.get("unit")));
  }

  private static PlannedProduct plan(String text) {
    try {
      return new PlannedProduct(RecipeJson.read(text));
    } catch (UnreadablePlan wrong) {
      throw new IllegalArgumentException(wrong.getMessage(), wrong);
    }
  }

  private static Pot pot(String line) {
    String[] words = line.split("\t", 3);
    return new Pot(words[2], Mass.ofGrams(words[0]), Mass.ofGrams(words[1]));
  }

  private static JournalEntry entry(String line) {
    String[] words = line.split("\t", 4);
    return new JournalEntry(Long.parseLong(words[0]), words[1], words[2], words[3], "", "");
  }

  private static Stream<String> lines(Map<String, String> files, String name) {
    return file(files, name).lines();
  }

  private static String file(Map<String, String> files, String name) {
    return Optional.ofNullable(files.get(name))
        .orElseThrow(() -> new IllegalArgumentException(
            "it is no bundle: " + name + " is not in it. Take a file made by 'bundle'"));
  }

  private static Map<String, String> files(InputStream in) throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    long left = MOST_BYTES;
    ZipInputStream zip = new ZipInputStream(in, StandardCharsets.UTF_8);
    for (ZipEntry next = zip.getNextEntry(); next != null; next = zip.getNextEntry()) {
      byte[] bytes = zip.readNBytes(Math.toIntExact(Math.min(left + 1, Integer.MAX_VALUE - 8)));
      left -= bytes.length;
      if (left < 0)
        throw new IllegalArgumentException(
            "it unpacks to more than " + (MOST_BYTES >> 20) + " MB, which is no bundle");
      files.put(next.getName(), new String(bytes, StandardCharsets.UTF_8));
    }
    return files;
  }
}
