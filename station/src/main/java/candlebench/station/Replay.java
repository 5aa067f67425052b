package candlebench.station;

import candlebench.protocol.EscapedBytes;
import candlebench.protocol.Frame;
import candlebench.protocol.ScaleFormat;
import candlebench.shared.Stamp;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceStep;
import candlebench.station.journal.CommandJson;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.EntryText;
import candlebench.station.link.LinkReport;
import candlebench.station.link.LinkState;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;

/** Plays a dump of {@link InputTrace} again: the same inputs give the same entries, byte for byte. */
final class Replay {
  private static final String START = "# from entry ";

  private final StationConfig config;
  private final LongFunction<BenchProgress> known;
  private final List<Piece> pieces = new ArrayList<>();
  private Optional<Guide> guide = Optional.empty();
  private Instant wall = Instant.EPOCH;
  private long wallNanos;
  private long nanos;
  private Optional<Instant> set = Optional.empty();

  /**
   * A piece of the trace that was played.
   *
   * @param from how many entries the journal held where it begins
   * @param entries those that it leads to, in order
   */
  record Piece(long from, List<EntryText> entries) {
    long end() {
      return from + entries.size();
    }
  }

  private Replay(StationConfig config, LongFunction<BenchProgress> known) {
    this.config = config;
    this.known = known;
  }

  /**
   * Plays what can be played of a dump; a piece that lost its beginning is passed over.
   *
   * @param config of the bench that made it
   * @param known what the first so many entries of its journal fold into
   * @throws IllegalArgumentException naming the line that cannot be played
   */
  static List<Piece> of(String dump, StationConfig config, LongFunction<BenchProgress> known) {
    Replay replay = new Replay(config, known);
    int number = 0;
    boolean lost = false;
    for (String line : (Iterable<String>) dump.lines()::iterator) {
      number++;
      if (line.startsWith("#")) lost = !line.startsWith(START);
      if (lost) continue;
      try {
        replay.line(line);
      } catch (RuntimeException unreadable) {
        throw new IllegalArgumentException(
            "line " + number + " of the trace cannot be played: " + line, unreadable);
      }
    }
    return List.copyOf(replay.pieces);
  }

  /** How many entries the journal held where the oldest piece begins that can be played; empty where none can. */
  static Optional<Long> oldest(String dump) {
    return dump.lines()
        .filter(line -> line.startsWith(START))
        .findFirst()
        .map(line -> Long.parseLong(line.substring(START.length()).split(" ")[0]));
  }

  private void line(String line) {
    if (line.startsWith(START)) begin(line.substring(START.length()).split(" "));
    else if (line.startsWith("w ")) set = Optional.of(Instant.parse(line.substring(2)));
    else intake(line);
  }

  /** {@code 12 at 2026-11-25T08:00:00Z 1764057600000000000}. */
  private void begin(String[] words) {
    long from = Long.parseLong(words[0]);
    guide = Optional.of(new Guide(config, known.apply(from)));
    pieces.add(new Piece(from, new ArrayList<>()));
    wall = Instant.parse(words[2]);
    wallNanos = Long.parseLong(words[3]);
    nanos = wallNanos;
  }

  private void intake(String line) {
    String[] words = line.split(" ", 3);
    nanos += Long.parseLong(words[0]);
    if (set.isPresent()) {
      wall = set.get();
      wallNanos = nanos;
      set = Optional.empty();
    }
    Stamp stamp = new Stamp(wall.plusNanos(nanos - wallNanos), nanos);
    boolean done = !words[1].startsWith("-");
    String what = done ? words[1] : words[1].substring(1);
    String rest = words.length > 2 ? words[2] : "";
    play(read(what, rest, stamp), done);
  }

  private void play(Intake intake, boolean done) {
    Guide playing =
        guide.orElseThrow(() -> new IllegalArgumentException("the trace's beginning is missing"));
    Optional<GuidanceStep> step = playing.step(intake);
    if (!done || step.isEmpty()) return;
    List<EntryText> entries = pieces.get(pieces.size() - 1).entries();
    for (GuidanceEvent event : step.get().events()) entries.add(EntryJson.text(event));
    playing.take(step.get());
  }

  private Intake read(String what, String rest, Stamp stamp) {
    if (what.equals("t")) return new Intake.Ticked(stamp);
    if (what.equals("p")) return new Intake.PrintKeyPressed(Integer.parseInt(rest), stamp);
    int space = rest.indexOf(' ');
    String first = rest.substring(0, space);
    String second = rest.substring(space + 1);
    return switch (what) {
      case "h" -> heard(Integer.parseInt(first), new Frame(0, EscapedBytes.bytes(second), stamp));
      case "l" ->
        new Intake.LineChanged(
            Integer.parseInt(first), LinkReport.of(LinkState.valueOf(second)), stamp);
      case "s" -> new Intake.Said(first, CommandJson.command(second), stamp);
      default -> throw new IllegalArgumentException("no such kind of line: " + what);
    };
  }

  private Intake heard(int scale, Frame frame) {
    ScaleFormat format = config.scales().get(scale).format();
    return new Intake.Heard(scale, frame, format.decode(frame));
  }
}
