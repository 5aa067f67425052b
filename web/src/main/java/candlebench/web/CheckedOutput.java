package candlebench.web;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Standard output that remembers what could not be written, since a print stream only keeps silent about it. */
final class CheckedOutput extends OutputStream {
  private final OutputStream out;
  private Optional<String> trouble = Optional.empty();

  private CheckedOutput(OutputStream out) {
    this.out = out;
  }

  /** Puts it in the place of {@link System#out}. */
  static CheckedOutput install() {
    CheckedOutput checked = new CheckedOutput(new FileOutputStream(FileDescriptor.out));
    System.setOut(new PrintStream(checked, true, StandardCharsets.UTF_8));
    return checked;
  }

  /** Why not all could be written; a reader that has seen enough and closed its end is no fault. */
  Optional<String> trouble() {
    System.out.flush();
    return trouble;
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int count) throws IOException {
    try {
      out.write(bytes, from, count);
    } catch (IOException failed) {
      if (!DecodedJson.isReaderGone(failed)) trouble = Optional.of(failed.getMessage());
      throw failed;
    }
  }
}
