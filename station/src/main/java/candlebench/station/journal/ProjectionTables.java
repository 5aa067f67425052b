package candlebench.station.journal;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.LotReceived;
import candlebench.station.guidance.GuidanceEvent.ScaleChecked;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.LotUse;
import candlebench.station.record.Recorded;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** The tables of projections: their rows written and read. Not safe for more than one thread. */
final class ProjectionTables implements AutoCloseable {

  /** Raised whenever what is folded, or how, changes: a file of another version is thrown away and built anew. */
  private static final int VERSION = 4;

  private static final String SCHEMA = "projections/tables.sql";
  private static final String BATCH_COLUMNS =
      "b.first, b.last, b.code, b.recipe, b.person, b.started, b.ended, b.ending, b.vessels, b.filled, b.deviations";

  private final Connection connection;

  private ProjectionTables(Connection connection) {
    this.connection = connection;
  }

  /** Opens the tables, empty ones where there are none of this version. */
  static ProjectionTables open(Path file) throws SQLException {
    Connection connection = JournalDatabase.connect(file, false);
    try {
      execute(connection, "PRAGMA journal_mode = WAL");
      execute(connection, "PRAGMA synchronous = NORMAL");
      if (JournalDatabase.number(connection, "PRAGMA user_version") == VERSION)
        return new ProjectionTables(connection);
    } catch (SQLException unusable) {
      connection.close();
      throw unusable;
    }
    connection.close();
    return fresh(file);
  }

  /** Throws away what is there and begins with empty tables. */
  static ProjectionTables fresh(Path file) throws SQLException {
    for (String part : List.of("", "-wal", "-shm")) {
      try {
        Files.deleteIfExists(file.resolveSibling(file.getFileName() + part));
      } catch (IOException kept) {
        throw new SQLException(file + part + " cannot be built anew: " + kept.getMessage(), kept);
      }
    }
    Connection connection = JournalDatabase.connect(file, false);
    try {
      execute(connection, "PRAGMA journal_mode = WAL");
      execute(connection, "PRAGMA synchronous = NORMAL");
      execute(connection, resource());
      execute(connection, "PRAGMA user_version = " + VERSION);
      return new ProjectionTables(connection);
    } catch (SQLException refused) {
      connection.close();
      throw refused;
    }
  }

  void begin() throws SQLException {
    execute(connection, "BEGIN IMMEDIATE");
  }

  void commit() throws SQLException {
    execute(connection, "COMMIT");
  }

  void rollback() throws SQLException {
    execute(connection, "ROLLBACK");
  }

  /** The checkpoint of an age: 0 the newest, 1 the one before. */
  Checkpoint checkpoint(int age) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("SELECT entry, hash, knowing FROM checkpoint WHERE age = ?")) {
      select.setInt(1, age);
      try (ResultSet row = select.executeQuery()) {
        if (!row.next()) return Checkpoint.START;
        return new Checkpoint(
            row.getLong(1), row.getString(2), CheckpointJson.bench(row.getString(3)));
      }
    } catch (IOException unreadable) {
      throw new SQLException("a checkpoint that cannot be read", unreadable);
    }
  }

  void checkpoint(int age, Checkpoint checkpoint) throws SQLException {
    try (PreparedStatement write =
        connection.prepareStatement("INSERT OR REPLACE INTO checkpoint VALUES (?, ?, ?, ?)")) {
      write.setInt(1, age);
      write.setLong(2, checkpoint.entries());
      write.setString(3, checkpoint.hash());
      write.setString(4, CheckpointJson.text(checkpoint.bench()));
      write.executeUpdate();
    }
  }

  /** Writes a batch in place of what was known of it. */
  void write(BatchRecord batch, long last) throws SQLException {
    try (PreparedStatement write = connection.prepareStatement(
        "INSERT OR REPLACE INTO batch VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
      write.setLong(1, batch.firstEntry());
      write.setLong(2, last);
      write.setString(3, batch.code());
      write.setString(4, batch.recipe().name());
      write.setString(5, batch.person());
      write.setString(6, batch.started());
      write.setString(7, batch.end().map(Recorded::wall).orElse(""));
      write.setString(8, batch.batch().end().name().toLowerCase(Locale.ROOT));
      write.setInt(9, batch.vessels());
      write.setInt(10, batch.vesselLines().size());
      write.setInt(11, batch.deviations().size());
      write.executeUpdate();
    }
    write(batch.firstEntry(), batch.lotUses());
  }

  private void write(long batch, List<LotUse> uses) throws SQLException {
    try (PreparedStatement erase =
        connection.prepareStatement("DELETE FROM lot_use WHERE batch = ?")) {
      erase.setLong(1, batch);
      erase.executeUpdate();
    }
    try (PreparedStatement write =
        connection.prepareStatement("INSERT INTO lot_use VALUES (?, ?, ?, ?, ?)")) {
      for (LotUse use : uses) {
        write.setString(1, use.lot());
        write.setString(2, use.material());
        write.setLong(3, batch);
        write.setLong(4, use.amount().picograms());
        write.setString(
            5, use.vessels().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        write.addBatch();
      }
      write.executeBatch();
    }
  }

  void writeLater(long entry, long batch) throws SQLException {
    try (PreparedStatement write =
        connection.prepareStatement("INSERT OR IGNORE INTO later VALUES (?, ?)")) {
      write.setLong(1, entry);
      write.setLong(2, batch);
      write.executeUpdate();
    }
  }

  void write(Recorded at, LotReceived received) throws SQLException {
    try (PreparedStatement write = connection.prepareStatement(
        "INSERT OR IGNORE INTO lot_received VALUES (?, ?, ?, ?, ?, ?, ?)")) {
      write.setLong(1, at.entry());
      write.setString(2, at.wall());
      write.setString(3, received.lot());
      write.setString(4, received.material());
      write.setLong(5, received.amount().picograms());
      write.setString(6, received.note());
      write.setString(7, received.person());
      write.executeUpdate();
    }
  }

  Optional<BatchRow> batch(String code) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(
        "SELECT " + BATCH_COLUMNS + " FROM batch b WHERE code = ? ORDER BY first DESC LIMIT 1")) {
      select.setString(1, code);
      return rows(select).stream().findFirst();
    }
  }

  /** The newest batches before an entry, newest first. */
  List<BatchRow> batches(long before, int most) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(
        "SELECT " + BATCH_COLUMNS + " FROM batch b WHERE first < ? ORDER BY first DESC LIMIT ?")) {
      select.setLong(1, before);
      select.setInt(2, most);
      return rows(select);
    }
  }

  void write(long entry, ScaleChecked checked) throws SQLException {
    try (PreparedStatement write =
        connection.prepareStatement("INSERT OR IGNORE INTO scale_check VALUES (?, ?)")) {
      write.setLong(1, entry);
      write.setString(2, checked.scaleName());
      write.executeUpdate();
    }
  }

  /** The entry of a scale's last check before an entry. */
  Optional<Long> lastCheck(String scale, long before) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(
        "SELECT entry FROM scale_check WHERE scale = ? AND entry < ? ORDER BY entry DESC LIMIT 1")) {
      select.setString(1, scale);
      select.setLong(2, before);
      try (ResultSet row = select.executeQuery()) {
        return row.next() ? Optional.of(row.getLong(1)) : Optional.empty();
      }
    }
  }

  List<Long> later(long batch) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("SELECT entry FROM later WHERE batch = ? ORDER BY entry")) {
      select.setLong(1, batch);
      List<Long> entries = new ArrayList<>();
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) entries.add(row.getLong(1));
      }
      return entries;
    }
  }

  /** The batches that took from a lot, of one material or, where that is empty, of any; newest first. */
  List<LotHit> usesOf(String lot, String material, int most) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(
        "SELECT " + BATCH_COLUMNS
            + ", u.material, u.lot, u.amount, u.vessels FROM lot_use u JOIN batch b ON b.first = u.batch"
            + " WHERE u.lot = ? AND (? = '' OR u.material = ?) ORDER BY b.first DESC, u.material LIMIT ?")) {
      select.setString(1, lot);
      select.setString(2, material);
      select.setString(3, material);
      select.setInt(4, most);
      List<LotHit> hits = new ArrayList<>();
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) hits.add(new LotHit(batch(row), use(row, 12)));
      }
      return hits;
    }
  }

  List<LotUse> usesIn(long batch) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(
        "SELECT material, lot, amount, vessels FROM lot_use WHERE batch = ? ORDER BY material, lot")) {
      select.setLong(1, batch);
      List<LotUse> uses = new ArrayList<>();
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) uses.add(use(row, 1));
      }
      return uses;
    }
  }

  /** How lots stand: the ones whose delivery or use is the newest first. */
  List<LotStock> stock(int most) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement("""
        SELECT material, lot, sum(received), sum(used), sum(batches) FROM (
          SELECT material, lot, sum(amount) AS received, 0 AS used, 0 AS batches, max(entry) AS at
            FROM lot_received GROUP BY material, lot
          UNION ALL
          SELECT material, lot, 0, sum(amount), count(*), max(batch) FROM lot_use
            WHERE lot <> '' GROUP BY material, lot
        ) GROUP BY material, lot ORDER BY max(at) DESC LIMIT ?""")) {
      select.setInt(1, most);
      List<LotStock> stock = new ArrayList<>();
      try (ResultSet row = select.executeQuery()) {
        while (row.next())
          stock.add(new LotStock(
              row.getString(1),
              row.getString(2),
              new Mass(row.getLong(3)),
              new Mass(row.getLong(4)),
              row.getInt(5)));
      }
      return stock;
    }
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException nothingToSave) {
      // Whatever was lost is folded again from the journal.
    }
  }

  private static List<BatchRow> rows(PreparedStatement select) throws SQLException {
    List<BatchRow> rows = new ArrayList<>();
    try (ResultSet row = select.executeQuery()) {
      while (row.next()) rows.add(batch(row));
    }
    return rows;
  }

  private static BatchRow batch(ResultSet row) throws SQLException {
    return new BatchRow(
        row.getLong(1),
        row.getLong(2),
        row.getString(3),
        row.getString(4),
        row.getString(5),
        row.getString(6),
        row.getString(7),
        row.getString(8),
        row.getInt(9),
        row.getInt(10),
        row.getInt(11));
  }

  private static LotUse use(ResultSet row, int from) throws SQLException {
    List<Integer> vessels = new ArrayList<>();
    for (String number : row.getString(from + 3).split(" "))
      if (!number.isEmpty()) vessels.add(Integer.valueOf(number));
    return new LotUse(
        row.getString(from), row.getString(from + 1), new Mass(row.getLong(from + 2)), vessels);
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  private static String resource() {
    try (InputStream in = ProjectionTables.class.getResourceAsStream(SCHEMA)) {
      if (in == null) throw new IllegalStateException("the program lacks its own file " + SCHEMA);
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new IllegalStateException("the program cannot read its own file " + SCHEMA, unreadable);
    }
  }
}
