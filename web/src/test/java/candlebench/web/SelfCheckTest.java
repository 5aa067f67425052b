package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.journal.EntryText;
import candlebench.station.journal.Projections;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.link.FoundPort;
import candlebench.station.link.PortAccess;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each thing that can be wrong with a computer or a data folder is found, with what to do next; and what is fine is called so. */
class SelfCheckTest {
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");
  private static final PortAccess OPEN = new PortAccess(true, true, Optional.of("dialout"));
  private static final String ADAPTER = "serial:/dev/ttyUSB0?format=and";

  @TempDir
  private Path data;

  @Test
  void an_old_java_is_told_apart_from_a_good_one() {
    assertFine(check(17, 1L << 40).java());
    assertTrouble(check(11, 1L << 40).java(), "version 11", "install Java 17");
  }

  @Test
  void a_data_folder_is_made_where_it_can_be_and_left_empty() throws IOException {
    assertFine(new SelfCheck(computer(17, 1L << 40), data.resolve("new/one")).dataFolder());
    assertThat(data.resolve("new/one")).isEmptyDirectory();
    Path file = Files.writeString(data.resolve("file"), "");
    assertTrouble(
        new SelfCheck(computer(17, 1L << 40), file.resolve("below")).dataFolder(),
        "cannot be written to",
        "--data");
  }

  @Test
  void a_disk_that_is_nearly_full_is_found_and_one_that_cannot_be_asked() {
    assertFine(check(17, 200L << 20).room());
    assertTrouble(check(17, (200L << 20) - 1).room(), "199 MB are free", "make room");
    SelfCheck.Computer broken = new SelfCheck.Computer(
        17,
        folder -> {
          throw new IOException("Input/output error");
        },
        List.of(),
        device -> OPEN);
    assertTrouble(new SelfCheck(broken, data).room(), "Input/output error", "in order");
  }

  @Test
  void what_a_person_wrote_wrong_is_repeated_with_its_fix() throws Exception {
    assertFine(SelfCheck.readable("Recipes", () -> "3"));
    Path folder = Files.createDirectories(data.resolve("recipes"));
    Files.writeString(folder.resolve("evening.json"), "{");
    assertTrouble(
        SelfCheck.readable("Recipes", () -> Products.of(List.of(), data).toString()),
        "cannot be read",
        "evening.json");
    Files.writeString(data.resolve("scales.txt"), "serial:/dev/ttyUSB0?format=amd\n");
    assertTrouble(
        SelfCheck.readable("Scales", () -> new SavedScales(data).all().toString()),
        "cannot be read",
        "nearest is 'and'");
    Files.writeString(data.resolve(Settings.FILE), "prot = 1\n");
    assertTrouble(
        SelfCheck.readable("Settings", () -> {
          Main.settings(Map.of()).check(data);
          return "";
        }),
        "cannot be read",
        "nearest is 'port'");
  }

  @Test
  void a_port_that_this_user_may_not_open_names_its_group() {
    SelfCheck.Computer computer = new SelfCheck.Computer(
        17,
        folder -> 1L << 40,
        List.of(port("/dev/ttyUSB0"), port("/dev/ttyUSB1")),
        device -> device.endsWith("0") ? OPEN : new PortAccess(true, false, Optional.of("uucp")));
    List<Finding> findings = new SelfCheck(computer, data).serialPorts(List.of());
    assertFine(findings.get(0));
    assertTrouble(
        findings.get(1), "belongs to the group uucp, and this user may not", "usermod -aG uucp");
    assertThat(findings).hasSize(2);
  }

  @Test
  void a_scale_whose_device_is_gone_is_named_and_no_port_at_all_too() {
    SelfCheck.Computer none = new SelfCheck.Computer(
        17,
        folder -> 1L << 40,
        List.of(),
        device -> new PortAccess(false, false, Optional.empty()));
    SelfCheck check = new SelfCheck(none, data);
    assertTrouble(
        check.serialPorts(List.of(ADAPTER)).get(0),
        "Scale at /dev/ttyUSB0: is not there",
        "plug it in");
    assertTrouble(check.serialPorts(List.of()).get(0), "none is seen", "plug the scale's cable");
    assertFine(check.serialPorts(List.of("tcp:localhost:4001?format=and")).get(0));
  }

  @Test
  void a_port_of_the_page_is_free_or_ours_or_anothers() throws Exception {
    URI page;
    // It takes the connection and never answers, as many programs do.
    try (ServerSocket other = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
      page = page(other.getLocalPort());
      assertTrouble(SelfCheck.page(page), "the port cannot be had", "--port");
    }
    assertFine(SelfCheck.page(page));
    try (ServedRecord served = new ServedRecord(data)) {
      Finding found = SelfCheck.page(page(served.server().port()));
      assertFine(found);
      assertThat(found.words()).contains("a bench is at work there");
    }
  }

  @Test
  void a_sound_record_is_fine_and_so_is_none() throws Exception {
    assertThat(JournalCheck.of(data, Purpose.RECORD, NOON))
        .allMatch(Finding::isFine)
        .hasSize(2);
    write("2026-11-25T12:00:30Z");
    List<Finding> findings = JournalCheck.of(data, Purpose.RECORD, NOON);
    assertThat(findings).allMatch(Finding::isFine).hasSize(3);
    assertThat(findings.get(0).words()).contains("2 entries, the newest 2 of them as written");
  }

  @Test
  void a_clock_that_stands_before_the_last_entry_is_found() throws Exception {
    write("2026-11-25T14:00:00+01:00");
    assertTrouble(
        JournalCheck.of(data, Purpose.RECORD, NOON).get(2),
        "the last entry was written at 2026-11-25T14:00:00+01:00",
        "set the computer's clock");
  }

  @Test
  void a_changed_record_is_found_and_one_that_is_none() throws Exception {
    write("2026-11-25T11:00:00Z");
    change(
        Purpose.RECORD.under(data),
        "DROP TRIGGER entry_is_never_changed",
        "UPDATE entry SET body = '{\"a\":2}' WHERE sequence = 2");
    assertTrouble(
        JournalCheck.of(data, Purpose.RECORD, NOON).get(0),
        "entry 2 was changed",
        "run candlebench audit");
    Files.writeString(Purpose.RECORD.under(data), "no database at all, but longer than a header");
    assertTrouble(
        JournalCheck.of(data, Purpose.RECORD, NOON).get(0), "The record", "candlebench restore");
  }

  @Test
  void lists_that_say_another_thing_are_found() throws Exception {
    Path file = Purpose.RECORD.under(data);
    try (ServedRecord served = new ServedRecord(data)) {
      served.lists().catchUp();
    }
    assertThat(JournalCheck.of(data, Purpose.RECORD, Instant.parse("2030-01-01T00:00:00Z")))
        .allMatch(Finding::isFine);
    change(Projections.beside(file), "UPDATE batch SET person = 'Nobody'");
    assertTrouble(JournalCheck.of(data, Purpose.RECORD, NOON).get(1), "Its lists", "-projections");
  }

  private void write(String wall) throws Exception {
    try (SqliteJournal journal = SqliteJournal.open(Purpose.RECORD.under(data), Purpose.RECORD)) {
      journal.append(
          wall, List.of(new EntryText("note", "{}"), new EntryText("note", "{\"a\":1}")));
    }
  }

  private static void change(Path file, String... how) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String each : how) statement.executeUpdate(each);
    }
  }

  private static void assertFine(Finding finding) {
    assertThat(finding.toString()).startsWith("fine ").doesNotContain("Next");
  }

  private static void assertTrouble(Finding finding, String words, String next) {
    assertThat(finding.toString()).startsWith("TROUBLE ").contains(words);
    assertThat(finding.next()).hasValueSatisfying(todo -> assertThat(todo).contains(next));
  }

  private SelfCheck check(int java, long room) {
    return new SelfCheck(computer(java, room), data);
  }

  private static SelfCheck.Computer computer(int java, long room) {
    return new SelfCheck.Computer(java, folder -> room, List.of(), device -> OPEN);
  }

  private static FoundPort port(String device) {
    return new FoundPort(device, device, "");
  }

  private static URI page(int port) {
    return URI.create("http://127.0.0.1:" + port + "/");
  }
}
