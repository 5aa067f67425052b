package candlebench.station.link;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * Where the libraries of the system's own code are unpacked: a folder that only this user can write to, so that nobody else can put
 * code of theirs in its place. Left to themselves they use the folder for temporary files that all users share.
 */
public final class NativeLibraries {

  private NativeLibraries() {}

  /** Makes the folder private and has the serial and the database library unpack there; before either is first used. */
  public static void unpackInto(Path folder) throws IOException {
    Files.createDirectories(folder);
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix"))
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
    System.setProperty("org.sqlite.tmpdir", folder.toString());
    unpackSerial(folder);
  }

  /** The serial library has no setting for its folder: it reads that of temporary files, once, when it is first used. */
  private static void unpackSerial(Path folder) {
    String shared = System.getProperty("java.io.tmpdir");
    System.setProperty("java.io.tmpdir", folder.toString());
    try {
      SerialPort.getVersion();
    } finally {
      System.setProperty("java.io.tmpdir", shared);
    }
  }
}
