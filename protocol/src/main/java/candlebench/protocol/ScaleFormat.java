package candlebench.protocol;

import java.util.List;
import java.util.Optional;

/** One wire format of scales: how it is framed, read, written and asked. Stateless; a framer holds what a stream needs. */
public interface ScaleFormat {

  /** The id used in settings and on the command line: {@code and}, {@code cas/22}. */
  String id();

  /** The format's name for a person: its published protocol. */
  String title();

  /** The documents it was read from. */
  String source();

  /** Line settings to try, the most usual first. */
  List<LineSettings> lines();

  Framer newFramer();

  /** What a frame says; never throws, whatever the bytes. */
  Decoded decode(Frame frame);

  /** The ways this format lays out its frames, the most usual first; at least one. */
  List<WireLayout> layouts();

  /** The bytes that ask for this, or empty where the format has no such command. */
  Optional<byte[]> command(ScaleCommand command);

  /**
   * Whether a frame that names no unit may borrow the last one stated on the same line, for showing but never for acceptance: true
   * where moving frames leave the unit out.
   */
  default boolean unitMayBeBorrowed() {
    return false;
  }

  /**
   * Whether a frame that was understood says that a print was asked for. Few formats have such a mark; most send by PRINT what they send
   * anyway.
   */
  default boolean marksPrint(Frame frame) {
    return false;
  }

  /** Whether no frame ever names a unit, so that it must come from the scale's settings. */
  default boolean unitIsASetting() {
    return false;
  }
}
