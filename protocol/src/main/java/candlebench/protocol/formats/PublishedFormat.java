package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.EndedFramer;
import candlebench.protocol.Ending;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.TerminatedFramer;
import candlebench.protocol.WireLayout;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * A format made of its parts, for families whose formats differ in a table or two.
 *
 * @param framer makes the framer of one stream
 * @param decoder what a frame says
 * @param unit how far frames name the unit
 */
record PublishedFormat(
    String id,
    String title,
    String source,
    List<LineSettings> lines,
    Supplier<Framer> framer,
    Function<Frame, Decoded> decoder,
    List<WireLayout> layouts,
    Commands commands,
    UnitNamed unit)
    implements ScaleFormat {

  /** How far frames name the unit. */
  enum UnitNamed {
    IN_EVERY_FRAME,
    /** Left out while the weight moves. */
    AT_REST,
    NEVER
  }

  /** A format of lines of 7-bit text that name their units. */
  static PublishedFormat ofLines(
      String id,
      String title,
      String source,
      List<LineSettings> lines,
      Function<Frame, Decoded> decoder,
      List<WireLayout> layouts) {
    return new PublishedFormat(
        id,
        title,
        source,
        lines,
        TerminatedFramer::ofSevenBits,
        decoder,
        layouts,
        Commands.NONE,
        UnitNamed.IN_EVERY_FRAME);
  }

  PublishedFormat framedBy(Supplier<Framer> other) {
    return new PublishedFormat(id, title, source, lines, other, decoder, layouts, commands, unit);
  }

  PublishedFormat endedBy(Ending ending) {
    return framedBy(() -> new EndedFramer(ending));
  }

  PublishedFormat asked(Commands others) {
    return new PublishedFormat(id, title, source, lines, framer, decoder, layouts, others, unit);
  }

  PublishedFormat unitNamed(UnitNamed other) {
    return new PublishedFormat(id, title, source, lines, framer, decoder, layouts, commands, other);
  }

  @Override
  public Framer newFramer() {
    return framer.get();
  }

  @Override
  public Decoded decode(Frame frame) {
    return decoder.apply(frame);
  }

  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return commands.bytes(command);
  }

  @Override
  public boolean unitMayBeBorrowed() {
    return unit == UnitNamed.AT_REST;
  }

  @Override
  public boolean unitIsASetting() {
    return unit == UnitNamed.NEVER;
  }
}
