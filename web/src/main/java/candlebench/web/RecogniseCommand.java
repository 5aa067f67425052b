package candlebench.web;

import candlebench.protocol.Candidate;
import candlebench.protocol.Recognition;
import candlebench.protocol.Recognition.Finding;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * Tells which format the bytes of an unknown scale are in: its id, or those that remain, or {@code unknown}, each on a line of its own;
 * then, behind {@code #}, in words how sure that is, what speaks against it and what to do next.
 */
@Command(
    name = "candlebench recognise",
    description =
        "Tells which format an unknown scale speaks, the likeliest first, and how to tell two apart.",
    footer = {
      "",
      "Exit code: 0 one format is named; 1 it is unknown, or more than one remain; 2 wrong use."
    })
final class RecogniseCommand implements Callable<Integer> {
  private static final int MOST_OTHERS = 3;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Option(names = "--json", description = "prints one JSON object, with every format tried")
  private boolean json;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description =
          "a file of raw bytes, of which the first 16384 count; standard input if none is named")
  private Path file;

  @Override
  public Integer call() throws WrongUse {
    Recognition recognition;
    try (InputStream in = RawBytes.of(file)) {
      recognition = Recognition.of(in.readNBytes(Recognition.MOST_BYTES), ScaleFormats.all());
    } catch (IOException unreadable) {
      throw RawBytes.unreadable(file, unreadable);
    }
    if (json) System.out.println(RecognitionJson.text(recognition));
    else print(recognition, System.out);
    return recognition.finding() == Finding.RECOGNISED ? Main.DONE : Main.NO;
  }

  private static void print(Recognition recognition, PrintStream out) {
    if (recognition.fitting().isEmpty()) out.println("unknown");
    for (Candidate fitting : recognition.fitting()) out.println(fitting.format().id());
    out.println("# " + recognition.words());
    recognition.ranked().stream()
        .filter(each -> each.understoodBytes() > 0 && !recognition.fitting().contains(each))
        .limit(MOST_OTHERS)
        .forEach(other -> out.println("# not " + other.format().id() + ": " + against(other)));
  }

  private static String against(Candidate other) {
    return "leaves " + other.leftOverBytes() + " bytes not understood, and writes "
        + other.written() + " of " + other.weights() + " weights as they came";
  }
}
