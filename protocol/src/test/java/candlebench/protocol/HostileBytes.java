package candlebench.protocol;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What holds whatever a wire brings, for a fuzzer to break: nothing throws; a frame is bounded and there are no more frames than bytes;
 * every byte is in one frame, however the bytes are cut; after rubbish, the second good frame and all that follow are found.
 *
 * <p>Of an input, the first byte chooses the format, the second how the bytes are cut, and all others are what the wire brings.
 */
public final class HostileBytes {
  private static final List<ScaleFormat> FORMATS = CorpusRow.formats().toList();
  private static final List<byte[]> GOOD =
      FORMATS.stream().map(HostileBytes::good).toList();
  private static final int LONGEST_PIECE = 32;
  private static final int RECOGNISED_UP_TO = 400;
  private static final int GOOD_FRAMES = 3;

  private HostileBytes() {}

  /** Called by the fuzzer with each input it makes. */
  public static void fuzzerTestOneInput(byte[] input) {
    if (input.length < 2) return;
    int which = (input[0] & 0xFF) % FORMATS.size();
    byte[] wire = Arrays.copyOfRange(input, 2, input.length);
    ScaleFormat format = FORMATS.get(which);
    List<Frame> frames = frames(format, wire, wire.length + 1);
    expect(
        frames.equals(frames(format, wire, 1 + (input[1] & 0xFF) % LONGEST_PIECE)),
        format,
        "frames depend on how the bytes are cut");
    expectEveryByteInOneFrame(format, frames, wire);
    for (Frame frame : frames) DecodedText.of(frame, format.decode(frame));
    expectGoodFramesAfter(format, wire, GOOD.get(which));
    if (wire.length <= RECOGNISED_UP_TO) Recognition.of(wire, List.of(format));
  }

  /** Inputs to begin with: each row of each format's corpus. */
  static List<byte[]> seeds() {
    List<byte[]> seeds = new ArrayList<>();
    for (int which = 0; which < FORMATS.size(); which++)
      for (CorpusRow row : CorpusRow.of(FORMATS.get(which))) {
        byte[] seed = new byte[row.bytes().length + 2];
        seed[0] = (byte) which;
        seed[1] = (byte) row.line();
        System.arraycopy(row.bytes(), 0, seed, 2, row.bytes().length);
        seeds.add(seed);
      }
    return seeds;
  }

  private static void expectGoodFramesAfter(ScaleFormat format, byte[] wire, byte[] good) {
    byte[] stream = Arrays.copyOf(wire, wire.length + GOOD_FRAMES * good.length);
    for (int at = 0; at < GOOD_FRAMES; at++)
      System.arraycopy(good, 0, stream, wire.length + at * good.length, good.length);
    List<Frame> frames = frames(format, stream, stream.length);
    String said = said(format, new Frame(0, good, CorpusRow.STAMP));
    for (int back = 1; back < GOOD_FRAMES; back++)
      expect(
          frames.size() >= back
              && said(format, frames.get(frames.size() - back)).equals(said),
          format,
          "a good frame after rubbish is not found");
  }

  private static void expectEveryByteInOneFrame(
      ScaleFormat format, List<Frame> frames, byte[] wire) {
    int at = 0;
    for (Frame frame : frames) {
      for (; at < frame.offset(); at++) expectLineEnd(format, wire[at]);
      expect(frame.length() >= 1 && frame.length() <= Framer.LIMIT, format, "a frame has no bound");
      byte[] there = Arrays.copyOfRange(wire, at, at + frame.length());
      expect(
          Arrays.equals(frame.bytes(), there), format, "a frame holds what the wire did not bring");
      at += frame.length();
    }
    for (; at < wire.length; at++) expectLineEnd(format, wire[at]);
  }

  private static void expectLineEnd(ScaleFormat format, byte passedOver) {
    int c = passedOver & 0x7F;
    expect(c == '\r' || c == '\n', format, "a byte is in no frame");
  }

  private static List<Frame> frames(ScaleFormat format, byte[] wire, int piece) {
    List<Frame> frames = new ArrayList<>();
    Framer framer = format.newFramer();
    for (int at = 0; at < wire.length; at += piece) {
      byte[] bytes = Arrays.copyOfRange(wire, at, Math.min(wire.length, at + piece));
      framer.feed(bytes, bytes.length, CorpusRow.STAMP, frames::add);
    }
    framer.rest().ifPresent(frames::add);
    return frames;
  }

  private static String said(ScaleFormat format, Frame frame) {
    return format.decode(frame).toString();
  }

  /** A frame that says a weight, as the corpus has it. */
  private static byte[] good(ScaleFormat format) {
    return CorpusRow.of(format).stream()
        .filter(row -> row.decoded() instanceof Decoded.Weighed)
        .filter(CorpusRow::isWritten)
        .findFirst()
        .orElseGet(() -> CorpusRow.of(format).get(0))
        .bytes();
  }

  private static void expect(boolean so, ScaleFormat format, String otherwise) {
    if (!so) throw new AssertionError(format.id() + ": " + otherwise);
  }
}
