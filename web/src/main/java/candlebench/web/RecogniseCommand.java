package candlebench.web;

import candlebench.protocol.Candidate;
import candlebench.protocol.Recognition;
import candlebench.protocol.Recognition.Finding;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tells which format the bytes of an unknown scale are in. */
@Command(
    name = "candlebench recognise",
    description =
        "Tells which format an unknown scale speaks, the likeliest first, and how to tell two apart.")
final class RecogniseCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "a file of raw bytes; standard input if none is named")
  private Path file;

  @Override
  public Integer call() throws WrongUse {
    Recognition recognition;
    try (InputStream in = RawBytes.of(file)) {
      recognition = Recognition.of(in.readNBytes(Recognition.MOST_BYTES), ScaleFormats.all());
    } catch (IOException unreadable) {
      throw RawBytes.unreadable(file, unreadable);
    }
    for (Candidate each : recognition.ranked())
      if (each.understoodBytes() > 0)
        System.out.println(each.format().id() + "\t" + each.weights() + " weights\t"
            + each.leftOverBytes() + " bytes left over");
    System.out.println("# " + recognition.words());
    return known(recognition.finding()) ? Main.DONE : Main.NO;
  }

  private static boolean known(Finding finding) {
    return switch (finding) {
      case RECOGNISED, SEVERAL_REMAIN -> true;
      case UNKNOWN_FORMAT, WRONG_SPEED, TOO_LITTLE -> false;
    };
  }
}
