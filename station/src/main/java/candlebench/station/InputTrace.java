package candlebench.station;

import candlebench.protocol.EscapedBytes;
import candlebench.shared.Stamp;
import candlebench.station.journal.CommandJson;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;

/**
 * All that reached the bench of late, as text, in the order in which it was dealt with, so that any weighing can be played again
 * exactly. Every byte is in it, since a framer leaves none out. Kept within bounds; written by the station's thread, dumped from any.
 *
 * <p>It comes in pieces. Each begins where all that is known stands in the journal, and names the entry; a piece that grew too long
 * while a batch ran lost its beginning and says so.
 *
 * <pre>
 * # from entry 12 at 2026-11-25T08:00:00Z 1764057600000000000
 * 100000000 t                          nanoseconds since the line before; t: time passed
 * 31415926 h 0 ST,+00012.34  g\r\n     h: scale 0 was heard
 * 1000 p 0                             p: PRINT was pressed on it
 * 1000 l 0 LOST                        l: its line changed
 * 2000 s k3f9 {"command":"go-on"}      s: the maker said
 * w 2026-11-25T09:00:00Z               the wall clock was set: the next line's time
 * 100 -h 0 …                           a minus: the disk refused to record what this led to, so it led to nothing
 * </pre>
 */
final class InputTrace {

  /** As long as this a piece may grow before a new one begins at the next quiet moment: an hour or so at ten readings a second. */
  static final int LONG_PIECE = 2 << 20;

  /** As long as this a piece may grow at all. */
  static final int LONGEST_PIECE = 8 << 20;

  private Optional<String> before = Optional.empty();
  private StringBuilder piece = new StringBuilder();
  private Instant wall = Instant.EPOCH;
  private long wallNanos;
  private long nanos;
  private long ticks;

  /** Begins a piece at a moment when all that is known stands in so many entries of the journal. */
  synchronized void begin(long entries, Stamp at) {
    if (piece.length() > 0) before = Optional.of(piece.toString());
    piece = new StringBuilder();
    startAt("# from entry " + entries, at);
  }

  /** Whether the piece is long enough to begin another at the next quiet moment. */
  synchronized boolean isLong() {
    return piece.length() > LONG_PIECE;
  }

  /** How many ticks have been dealt with: what was brought before one has been dealt with too. */
  synchronized long ticks() {
    return ticks;
  }

  /** Waits for a tick after so many, or some time; whether it came. */
  synchronized boolean awaitTickAfter(long many, long millis) throws InterruptedException {
    if (ticks <= many) wait(millis);
    return ticks > many;
  }

  /**
   * Keeps an intake that has been dealt with.
   *
   * @param done whether what it led to was done; not so where the disk refused
   */
  synchronized void keep(Intake intake, boolean done) {
    Stamp stamp = intake.stamp();
    if (piece.length() > LONGEST_PIECE) {
      piece = new StringBuilder();
      startAt("# its beginning is no longer kept, so this piece cannot be played again", stamp);
    }
    if (!wall.plusNanos(stamp.nanos() - wallNanos).equals(stamp.wall())) {
      piece.append("w ").append(stamp.wall()).append('\n');
      wall = stamp.wall();
      wallNanos = stamp.nanos();
    }
    piece.append(stamp.nanos() - nanos).append(done ? " " : " -");
    nanos = stamp.nanos();
    append(intake);
    piece.append('\n');
  }

  /** Writes what is kept, the older piece first. */
  void dump(Appendable out) throws IOException {
    Optional<String> older;
    String newer;
    synchronized (this) {
      older = before;
      newer = piece.toString();
    }
    if (older.isPresent()) out.append(older.get());
    out.append(newer);
  }

  private void startAt(String words, Stamp at) {
    wall = at.wall();
    wallNanos = at.nanos();
    nanos = at.nanos();
    piece.append(words).append(" at ").append(wall).append(' ').append(nanos).append('\n');
  }

  private void append(Intake intake) {
    if (intake instanceof Intake.Ticked) {
      piece.append('t');
      ticks++;
      notifyAll();
    } else if (intake instanceof Intake.Heard heard) {
      piece.append("h ").append(heard.scale()).append(' ');
      piece.append(EscapedBytes.text(heard.frame().bytes()));
    } else if (intake instanceof Intake.PrintKeyPressed print) {
      piece.append("p ").append(print.scale());
    } else if (intake instanceof Intake.LineChanged line) {
      piece.append("l ").append(line.scale()).append(' ').append(line.report().state());
    } else if (intake instanceof Intake.Said said) {
      piece.append("s ").append(said.commandId()).append(' ');
      piece.append(CommandJson.text(said.command()));
    } else {
      throw new AssertionError(intake);
    }
  }
}
