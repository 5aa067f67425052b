package candlebench.station.journal;

import java.nio.file.Path;

/** What a journal is for. Practice weights are no record: they live in a file of their own and hash to a chain of their own. */
public enum Purpose {
  RECORD("record", "record.db"),
  PRACTICE("practice", "practice/practice.db");

  private final String word;
  private final String file;

  Purpose(String word, String file) {
    this.word = word;
    this.file = file;
  }

  /** The word that marks it inside the file. */
  public String word() {
    return word;
  }

  /** Where the journal of this purpose lies under a bench's data folder. */
  public Path under(Path data) {
    return data.resolve(file);
  }
}
