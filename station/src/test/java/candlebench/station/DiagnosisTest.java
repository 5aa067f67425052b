package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Mass;
import candlebench.station.batch.planning.PlanFile;
import candlebench.station.batch.planning.PlannedProduct;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.journal.Checkpoint;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.MemoryJournal;
import candlebench.station.journal.Purpose;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import candlebench.station.view.ShownUnit;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/** What is sent after trouble: it plays the same elsewhere, notices what does not, and tells nobody's name. */
class DiagnosisTest {
  private final MemoryJournal journal = new MemoryJournal(Purpose.RECORD);

  @Test
  void what_is_sent_plays_the_same_entries_byte_for_byte_and_names_nobody() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.say(new MakerCommand.ReceiveLot(
          "Quay Cedar (invented)", "QC-77", Mass.ofGrams("500"), "from Marlow's", "Robin"));
      rig.say(new MakerCommand.StartBatch(
          "harbour-lane-oil", 1, "Robin", Map.of("Quay Cedar (invented)", "QC-77")));
      pourOil(rig);
      rig.say(new MakerCommand.StartBatch("harbour-lane-oil", 1, "Kit", Map.of()));
      rig.show("0.0", 15);
      rig.send("ST,+0A012.30  g\r\n");
      rig.show("350.2", 30);
      rig.say(new MakerCommand.Abandon("Robin was called away"));
      byte[] sent = sent(diagnosis(rig, Checkpoint.START));
      Diagnosis read = DiagnosisFile.read(new ByteArrayInputStream(sent));
      Diagnosis.Outcome outcome = read.replayed();
      assertThat(outcome.difference()).isEmpty();
      assertThat(outcome.pieces()).isEqualTo(1);
      assertThat(outcome.entries()).isEqualTo((int) journal.length()).isGreaterThan(10);
      assertThat(texts(sent))
          .contains("\"person\":\"person 1\"", "\"person\":\"person 2\"", "\"lot\":\"lot 1\"")
          .doesNotContain("Robin", "Kit", "QC-77", "Marlow", "called away", "Scale 1");
    }
  }

  @Test
  void after_a_restart_only_the_running_batch_is_sent_with_it() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      pourOil(rig);
      rig.startOil();
      rig.show("0.0", 15);
      rig.show("350.2", 50);
    }
    MemoryJournal found = journal.reopened();
    try (StationRig rig = StationRig.on(found)) {
      rig.show("350.2", 20);
      rig.pour(350.2, 406.2, 0.5);
      rig.show("406.2", 60);
      Diagnosis taken = diagnosis(rig, Checkpoint.START);
      assertThat(taken.known().bench().begun()).isEqualTo(1);
      assertThat(taken.entries().get(0).kind()).isEqualTo("batch-started");
      Diagnosis.Outcome outcome =
          DiagnosisFile.read(new ByteArrayInputStream(sent(taken))).replayed();
      assertThat(outcome.difference()).isEmpty();
      assertThat(outcome.entries()).isPositive();
    }
  }

  @Test
  void what_the_bench_was_told_is_the_same_on_the_other_computer_but_for_places_and_names()
      throws Exception {
    PlannedProduct product = new PlannedProduct(PlanFile.order());
    List<ScaleSettings> scales = List.of(
        ScaleUri.of("serial:/dev/serial/by-id/usb-7?format=cas/10&unit=g&d=0.1g&max=3kg&ask=200ms"),
        ScaleUri.of("tcp:192.168.1.20:4001?format=and&name=Robin's%20scale"));
    StationConfig told = new StationConfig(
        Purpose.RECORD,
        scales,
        new BenchSetup(
            StationConfig.named(scales),
            List.of(new BenchSetup.Pot("tall", Mass.ofGrams("412.6"), Mass.ZERO)),
            List.of(product),
            new BenchSetup.Timing(Duration.ofSeconds(3), Duration.ZERO),
            ZoneId.of("Europe/Paris")),
        ShownUnit.POUND_OUNCE);
    byte[] sent = sent(new Diagnosis(told, Checkpoint.START, List.of(), 0, ""));
    StationConfig read = DiagnosisFile.read(new ByteArrayInputStream(sent)).config();
    assertThat(read.setup().pots()).isEqualTo(told.setup().pots());
    assertThat(read.setup().products().toString())
        .isEqualTo(told.setup().products().toString());
    assertThat(read.unit()).isEqualTo(ShownUnit.POUND_OUNCE);
    assertThat(read.setup().timing()).isEqualTo(told.setup().timing());
    assertThat(read.setup().zone()).isEqualTo(told.setup().zone());
    assertThat(read.scales()).hasSize(2);
    for (int i = 0; i < 2; i++) {
      assertThat(read.scales().get(i))
          .usingRecursiveComparison()
          .ignoringFields("line", "name")
          .isEqualTo(scales.get(i));
    }
    assertThat(read.setup().scales())
        .extracting(BenchSetup.Scale::name)
        .containsExactly("scale 1", "scale 2");
    assertThat(texts(sent)).doesNotContain("Robin", "192.168", "by-id");
  }

  @Test
  void an_entry_that_says_another_thing_than_the_inputs_is_named() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      pourOil(rig);
      Diagnosis taken = diagnosis(rig, Checkpoint.START);
      List<JournalEntry> other = new ArrayList<>(taken.entries());
      other.replaceAll(entry -> new JournalEntry(
          entry.sequence(),
          entry.wall(),
          entry.kind(),
          entry.body().replace("\"verdict\":\"WITHIN\"", "\"verdict\":\"OVER\""),
          "",
          ""));
      assertThat(with(taken, other, taken.inputs()).replayed().difference())
          .hasValueSatisfying(words -> assertThat(words)
              .contains("was recorded as weight-accepted", "\"verdict\":\"WITHIN\""));
      assertThat(with(taken, other.subList(0, other.size() - 1), taken.inputs())
              .replayed()
              .difference())
          .isPresent();
    }
  }

  @Test
  void an_input_that_is_missing_is_noticed() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      pourOil(rig);
      Diagnosis taken = diagnosis(rig, Checkpoint.START);
      String withoutStart = taken.inputs().replaceFirst("(?m)^(\\d+) s .*$", "$1 t");
      assertThat(with(taken, taken.entries(), withoutStart).replayed().difference())
          .hasValueSatisfying(words -> assertThat(words).startsWith("the replay ends at entry 0"));
    }
  }

  @Test
  void what_is_no_bundle_is_told_with_a_way_on() throws Exception {
    assertThatThrownBy(() -> DiagnosisFile.read(new ByteArrayInputStream(new byte[] {1, 2})))
        .hasMessageContaining("it is no bundle: about.txt is not in it");
    ByteArrayOutputStream other = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(other)) {
      zip.putNextEntry(new ZipEntry("about.txt"));
      zip.write("form = 2\n".getBytes(StandardCharsets.UTF_8));
    }
    assertThatThrownBy(() -> DiagnosisFile.read(new ByteArrayInputStream(other.toByteArray())))
        .hasMessageContaining("no bundle that this program can read");
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      Diagnosis taken = diagnosis(rig, Checkpoint.START);
      byte[] damaged = sent(with(taken, taken.entries(), taken.inputs()), "known.json", "{");
      assertThatThrownBy(() -> DiagnosisFile.read(new ByteArrayInputStream(damaged)))
          .hasMessageContaining("the bundle is damaged: ");
    }
  }

  /** Taken while the bench's clock goes on, as it does. */
  private static Diagnosis diagnosis(StationRig rig, Checkpoint near) throws Exception {
    rig.tick();
    return Diagnosis.of(rig.station(), near);
  }

  private static Diagnosis with(Diagnosis taken, List<JournalEntry> entries, String inputs) {
    return new Diagnosis(taken.config(), taken.known(), entries, taken.written(), inputs);
  }

  private static byte[] sent(Diagnosis diagnosis) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DiagnosisFile.write(diagnosis, Map.of(), out);
    return out.toByteArray();
  }

  private static byte[] sent(Diagnosis diagnosis, String spoilt, String text) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(sent(diagnosis)));
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (ZipEntry next = in.getNextEntry(); next != null; next = in.getNextEntry()) {
        zip.putNextEntry(new ZipEntry(next.getName()));
        zip.write(
            next.getName().equals(spoilt)
                ? text.getBytes(StandardCharsets.UTF_8)
                : in.readAllBytes());
      }
    }
    return out.toByteArray();
  }

  private static String texts(byte[] sent) throws IOException {
    StringBuilder all = new StringBuilder();
    ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(sent));
    for (ZipEntry next = in.getNextEntry(); next != null; next = in.getNextEntry())
      all.append(next.getName())
          .append('\n')
          .append(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    return all.toString();
  }

  private static void pourOil(StationRig rig) {
    rig.show("0.0", 15);
    rig.show("350.2", 50);
    rig.pour(350.2, 406.2, 0.5);
    rig.show("406.2", 60);
    rig.show("0.0", 30);
  }
}
