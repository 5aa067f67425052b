package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every framer promises, tried with the frames of every format. */
class FormatFramingTest {
  private static final long SEED = 20261125;

  static Stream<ScaleFormat> formats() {
    return CorpusRow.formats();
  }

  static Stream<CorpusRow> rows() {
    return formats().flatMap(format -> CorpusRow.of(format).stream());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void a_frame_is_the_same_wherever_the_bytes_are_cut(CorpusRow row) {
    for (int cut = 0; cut <= row.bytes().length; cut++) {
      byte[] head = Arrays.copyOf(row.bytes(), cut);
      byte[] tail = Arrays.copyOfRange(row.bytes(), cut, row.bytes().length);
      assertThat(frames(row.format(), head, tail)).as("cut at " + cut).containsExactly(row.frame());
    }
  }

  @ParameterizedTest
  @MethodSource("formats")
  void joined_frames_come_apart_again(ScaleFormat format) {
    List<byte[]> rows = CorpusRow.of(format).stream().map(CorpusRow::bytes).toList();
    byte[] stream = joined(rows);
    assertThat(contents(frames(format, stream)))
        .isEqualTo(rows.stream().map(FormatFramingTest::content).toList());
    assertThat(frames(format, byteByByte(stream))).isEqualTo(frames(format, stream));
  }

  @ParameterizedTest
  @MethodSource("formats")
  void rubbish_costs_at_most_the_frame_it_hits(ScaleFormat format) {
    Random random = new Random(SEED);
    List<CorpusRow> rows =
        CorpusRow.of(format).stream().filter(row -> row.bytes().length > 1).toList();
    for (int round = 0; round < 300; round++) {
      CorpusRow hit = rows.get(random.nextInt(rows.size()));
      CorpusRow next = rows.get(random.nextInt(rows.size()));
      CorpusRow afterNext = rows.get(random.nextInt(rows.size()));
      byte[] stream =
          joined(List.of(rubbish(random, hit), hit.bytes(), next.bytes(), afterNext.bytes()));
      List<String> found = contents(frames(format, stream));
      assertThat(found)
          .as("seed %d round %d: %s", SEED, round, EscapedBytes.text(stream))
          .endsWith(content(next.bytes()), content(afterNext.bytes()));
    }
  }

  @ParameterizedTest
  @MethodSource("formats")
  void a_byte_lost_or_doubled_costs_no_frame_after_the_next(ScaleFormat format) {
    Random random = new Random(SEED);
    List<CorpusRow> rows =
        CorpusRow.of(format).stream().filter(row -> row.bytes().length > 1).toList();
    for (int round = 0; round < 300; round++) {
      byte[] hit = rows.get(random.nextInt(rows.size())).bytes();
      byte[] next = rows.get(random.nextInt(rows.size())).bytes();
      byte[] afterNext = rows.get(random.nextInt(rows.size())).bytes();
      int at = random.nextInt(hit.length);
      int from = random.nextBoolean() ? at : at + 1;
      byte[] stream = joined(List.of(
          Arrays.copyOf(hit, from),
          Arrays.copyOfRange(hit, from == at ? at + 1 : at, hit.length),
          next,
          afterNext));
      assertThat(contents(frames(format, stream)))
          .as("seed %d round %d: %s", SEED, round, EscapedBytes.text(stream))
          .endsWith(content(afterNext));
    }
  }

  @ParameterizedTest
  @MethodSource("formats")
  void a_stream_joined_midway_is_read_from_the_next_frame_on(ScaleFormat format) {
    for (CorpusRow row : CorpusRow.of(format)) {
      for (int missed = 1; missed < row.bytes().length; missed++) {
        byte[] tail = Arrays.copyOfRange(row.bytes(), missed, row.bytes().length);
        byte[] stream = joined(List.of(tail, row.bytes(), row.bytes()));
        assertThat(contents(frames(format, stream)))
            .as(EscapedBytes.text(stream))
            .endsWith(content(row.bytes()), content(row.bytes()));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("formats")
  void hostile_bytes_give_bounded_frames_and_no_exception(ScaleFormat format) {
    Random random = new Random(SEED);
    for (int round = 0; round < 60; round++) {
      byte[] stream = hostile(random, CorpusRow.of(format));
      List<Frame> frames = frames(format, stream);
      assertThat(frames(format, cutAnyhow(random, stream)))
          .as("seed %d round %d", SEED, round)
          .isEqualTo(frames);
      assertEveryByteIsInOneFrame(frames, stream);
      for (Frame frame : frames) DecodedText.of(frame, format.decode(frame));
    }
  }

  @ParameterizedTest
  @MethodSource("rows")
  void a_mutated_frame_is_read_or_refused_but_never_thrown(CorpusRow row) {
    Random random = new Random(SEED + row.line());
    for (int round = 0; round < 50; round++) {
      byte[] bytes = mutated(random, row.bytes());
      Decoded decoded = row.format().decode(new Frame(7, bytes, CorpusRow.STAMP));
      assertThat(DecodedText.of(new Frame(7, bytes, CorpusRow.STAMP), decoded).offset())
          .as(EscapedBytes.text(bytes))
          .isBetween(7L, 7L + bytes.length);
    }
  }

  /** Frames are in order, do not overlap, are the stream's bytes, and leave out line ends only. */
  private static void assertEveryByteIsInOneFrame(List<Frame> frames, byte[] stream) {
    int at = 0;
    for (Frame frame : frames) {
      for (; at < frame.offset(); at++) assertThat(stream[at] & 0x7F).isIn(0x0D, 0x0A);
      assertThat(frame.length()).isBetween(1, Framer.LIMIT);
      assertThat(frame.bytes()).isEqualTo(Arrays.copyOfRange(stream, at, at + frame.length()));
      at += frame.length();
    }
    for (; at < stream.length; at++) assertThat(stream[at] & 0x7F).isIn(0x0D, 0x0A);
  }

  private static List<Frame> frames(ScaleFormat format, byte[]... pieces) {
    List<Frame> frames = new ArrayList<>();
    Framer framer = format.newFramer();
    for (byte[] piece : pieces) framer.feed(piece, piece.length, CorpusRow.STAMP, frames::add);
    framer.rest().ifPresent(frames::add);
    return frames;
  }

  private static List<String> contents(List<Frame> frames) {
    return frames.stream().map(frame -> content(frame.bytes())).toList();
  }

  /** What stands before the line end. Whether an LF belongs to its CR, a framer learns from the stream. */
  private static String content(byte[] bytes) {
    int end = bytes.length;
    while (end > 0 && ((bytes[end - 1] & 0x7F) == 0x0D || (bytes[end - 1] & 0x7F) == 0x0A)) end--;
    return EscapedBytes.text(Arrays.copyOf(bytes, end));
  }

  private static byte[] rubbish(Random random, CorpusRow row) {
    byte[] bytes = new byte[random.nextInt(2 * Framer.LIMIT)];
    random.nextBytes(bytes);
    byte[] piece = Arrays.copyOf(row.bytes(), random.nextInt(row.bytes().length));
    return random.nextBoolean() ? bytes : joined(List.of(bytes, piece));
  }

  private static byte[] hostile(Random random, List<CorpusRow> rows) {
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    while (stream.size() < 4096) {
      CorpusRow row = rows.get(random.nextInt(rows.size()));
      byte[] noise = new byte[random.nextInt(40)];
      random.nextBytes(noise);
      byte[] same = new byte[random.nextInt(600)];
      Arrays.fill(same, (byte) random.nextInt(256));
      switch (random.nextInt(4)) {
        case 0 -> stream.writeBytes(noise);
        case 1 -> stream.writeBytes(same);
        case 2 -> stream.writeBytes(row.bytes());
        default -> stream.writeBytes(mutated(random, row.bytes()));
      }
    }
    return stream.toByteArray();
  }

  private static byte[] mutated(Random random, byte[] bytes) {
    byte[] changed = bytes.clone();
    int at = random.nextInt(changed.length);
    return switch (random.nextInt(4)) {
      case 0 -> {
        changed[at] ^= (byte) (1 << random.nextInt(8));
        yield changed;
      }
      case 1 -> {
        changed[at] = (byte) random.nextInt(256);
        yield changed;
      }
      case 2 ->
        joined(List.of(
            Arrays.copyOf(changed, at), Arrays.copyOfRange(changed, at + 1, changed.length)));
      default ->
        joined(List.of(
            Arrays.copyOf(changed, at + 1), Arrays.copyOfRange(changed, at, changed.length)));
    };
  }

  private static byte[][] byteByByte(byte[] stream) {
    byte[][] pieces = new byte[stream.length][];
    for (int at = 0; at < stream.length; at++) pieces[at] = new byte[] {stream[at]};
    return pieces;
  }

  private static byte[][] cutAnyhow(Random random, byte[] stream) {
    List<byte[]> pieces = new ArrayList<>();
    for (int at = 0; at < stream.length; ) {
      int end = Math.min(stream.length, at + 1 + random.nextInt(50));
      pieces.add(Arrays.copyOfRange(stream, at, end));
      at = end;
    }
    return pieces.toArray(byte[][]::new);
  }

  private static byte[] joined(List<byte[]> pieces) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    for (byte[] piece : pieces) joined.writeBytes(piece);
    return joined.toByteArray();
  }
}
