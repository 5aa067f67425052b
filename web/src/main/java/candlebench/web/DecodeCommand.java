package candlebench.web;

import candlebench.protocol.DecodedText;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.web.Main.WrongUse;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads raw bytes of a scale and prints one JSON object per message. */
@Command(
    name = "candlebench decode",
    description = "Says what the bytes of a scale mean, one JSON object per message.")
final class DecodeCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  private static final int CHUNK = 64 * 1024;

  @Option(
      names = "--format",
      required = true,
      paramLabel = "ID",
      description = "the wire format, such as and or sics")
  private String format;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "a file of raw bytes; standard input if none is named")
  private Path file;

  @Override
  public Integer call() throws WrongUse {
    ScaleFormat known;
    try {
      known = ScaleFormats.of(format);
    } catch (IllegalArgumentException unknown) {
      throw new WrongUse(unknown.getMessage());
    }
    try (InputStream in = RawBytes.of(file);
        DecodedJson out = new DecodedJson(
            new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), CHUNK))) {
      decode(known, in, out);
    } catch (DecodedJson.NobodyReads enough) {
      return Main.DONE;
    } catch (DecodedJson.CannotWrite full) {
      throw new WrongUse("cannot write what was decoded: " + full.getMessage()
          + ". Make room, or write elsewhere");
    } catch (IOException unreadable) {
      throw RawBytes.unreadable(file, unreadable);
    }
    return Main.DONE;
  }

  private static void decode(ScaleFormat format, InputStream in, DecodedJson out)
      throws IOException {
    Framer framer = format.newFramer();
    byte[] chunk = new byte[CHUNK];
    for (int length = in.read(chunk); length >= 0; length = in.read(chunk)) {
      framer.feed(chunk, length, Framer.NEVER, frame -> print(format, frame, out));
      if (in.available() == 0) out.flush();
    }
    framer.rest().ifPresent(frame -> print(format, frame, out));
  }

  private static void print(ScaleFormat format, Frame frame, DecodedJson out) {
    out.write(DecodedText.of(frame, format.decode(frame)));
  }
}
