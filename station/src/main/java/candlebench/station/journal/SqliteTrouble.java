package candlebench.station.journal;

import candlebench.station.journal.JournalFailed.Trouble;
import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteException;

/** What the database refused, in the maker's words: what happened, what is safe, what to do next. */
final class SqliteTrouble {

  private SqliteTrouble() {}

  static JournalFailed of(Path file, SQLException failure) {
    Trouble trouble = trouble(failure);
    return new JournalFailed(
        trouble, words(trouble, file) + " (" + failure.getMessage() + ")", failure);
  }

  static JournalFailed of(Path file, Trouble trouble) {
    return new JournalFailed(trouble, words(trouble, file));
  }

  private static Trouble trouble(SQLException failure) {
    if (!(failure instanceof SQLiteException refusal)) return Trouble.DISK;
    // The low byte is the kind, the rest says more precisely what of that kind.
    return switch (refusal.getResultCode().code & 0xFF) {
      case 13 -> Trouble.FULL; // SQLITE_FULL
      case 5, 6 -> Trouble.HELD; // SQLITE_BUSY, SQLITE_LOCKED
      case 3, 8, 14, 23 -> Trouble.DENIED; // SQLITE_PERM, _READONLY, _CANTOPEN, _AUTH
      case 11, 19 ->
        Trouble.DAMAGED; // SQLITE_CORRUPT; SQLITE_CONSTRAINT: the last entry is not ours
      case 26 -> Trouble.NOT_A_RECORD; // SQLITE_NOTADB
      default -> Trouble.DISK;
    };
  }

  private static String words(Trouble trouble, Path file) {
    return switch (trouble) {
      case FULL ->
        "the disk is full: nothing new was written to " + file
            + ", and all that was recorded before is safe; make room on the disk, then go on: it is tried again";
      case HELD ->
        file
            + " is in use by another program that writes to it: nothing was changed; close that program, or"
            + " name another data folder";
      case DENIED ->
        file
            + " cannot be opened for writing: nothing was changed; let this user write to the file and its"
            + " folder, or name another data folder";
      case DAMAGED ->
        file
            + " is not as it was written; nothing was erased and nothing is added to it: keep the file, run an"
            + " audit to see which entries are sound, then go on from a copy or in a new data folder";
      case NOT_A_RECORD ->
        file + " is no record of this program, and was left as it is: name another data folder";
      case OTHER_PURPOSE ->
        file
            + " holds practice where the record is wanted, or the record where practice is wanted, and was left"
            + " as it is: name another data folder";
      case NEWER ->
        file + " was written by a newer program, and was left as it is: open it with that one";
      case DISK ->
        "the disk refused: nothing new was written to " + file
            + ", and all that was recorded before is safe; see that the disk is there and sound, then go on: it is"
            + " tried again";
    };
  }
}
