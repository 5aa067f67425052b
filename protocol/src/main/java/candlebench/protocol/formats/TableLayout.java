package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.protocol.WireLayout;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A layout that writes by tables; what is said in words, such as an acknowledgement, is written as it was sent.
 *
 * @param tables tried in their order
 * @param terminator what stands behind the table
 * @param decoder what a frame says in the format
 */
record TableLayout(
    String name, List<LineTable> tables, String terminator, Function<Frame, Decoded> decoder)
    implements WireLayout {

  /** A line of this table that ends in CR LF. */
  static WireLayout line(String name, LineTable table, Function<Frame, Decoded> decoder) {
    return new TableLayout(name, List.of(table), "\r\n", decoder);
  }

  /** A frame of this table, which holds its own end. */
  static WireLayout frame(String name, LineTable table, Function<Frame, Decoded> decoder) {
    return new TableLayout(name, List.of(table), "", decoder);
  }

  @Override
  public Optional<byte[]> encode(Decoded said, Shown shown) {
    Optional<Statement> statement = Statement.of(said, shown);
    if (statement.isPresent())
      for (LineTable table : tables) {
        Optional<String> text = table.write(statement.get());
        if (text.isPresent()) return text.map(this::bytes);
      }
    return AsSent.bytes(said, terminator, decoder);
  }

  private byte[] bytes(String text) {
    return (text + terminator).getBytes(StandardCharsets.ISO_8859_1);
  }
}
