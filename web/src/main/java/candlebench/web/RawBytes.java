package candlebench.web;

import candlebench.web.Main.WrongUse;
import java.io.BufferedInputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A scale's raw bytes, from a file or, where none is named, from standard input. */
final class RawBytes {

  private RawBytes() {}

  /** @param file null, as the command line leaves it, where none was named */
  static InputStream of(Path file) throws IOException, WrongUse {
    if (file == null) return new BufferedInputStream(new FileInputStream(FileDescriptor.in));
    if (!Files.exists(file))
      throw new WrongUse("no file '" + file + "': name one with a scale's raw bytes");
    if (Files.isDirectory(file))
      throw new WrongUse("'" + file + "' is a folder: name a file with a scale's raw bytes");
    return Files.newInputStream(file);
  }

  static WrongUse unreadable(Path file, IOException why) {
    return new WrongUse("cannot read " + (file == null ? "standard input" : "'" + file + "'") + ": "
        + why.getMessage());
  }
}
