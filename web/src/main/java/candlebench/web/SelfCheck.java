package candlebench.web;

import candlebench.station.link.FoundPort;
import candlebench.station.link.PortAccess;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.URLConnection;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Looks at all that a bench needs from its computer, and says in words what is fine, what is not, and what to do next. */
final class SelfCheck {

  /** With less room a bench soon cannot record any more: a year of daily batches takes about as much. */
  private static final long LEAST_ROOM = 200L << 20;

  private static final int OLDEST_JAVA = 17;
  private static final int PATIENCE_MILLIS = 2_000;
  private static final int A_VIEWS_BEGINNING = 200;

  /**
   * What is asked of the computer; a test answers in its place.
   *
   * @param java the version of Java
   * @param room bytes free where a folder lies
   * @param ports the serial ports that the system names
   * @param access to a serial device
   */
  record Computer(int java, Room room, List<FoundPort> ports, Function<String, PortAccess> access) {

    /** How much a disk still takes. */
    interface Room {
      long in(Path folder) throws IOException;
    }

    static Computer thisOne() {
      return new Computer(
          Runtime.version().feature(),
          folder -> Files.getFileStore(folder).getUsableSpace(),
          FoundPort.all(),
          PortAccess::of);
    }
  }

  private final Computer computer;
  private final Path data;

  SelfCheck(Computer computer, Path data) {
    this.computer = computer;
    this.data = data;
  }

  Finding java() {
    String words = "version " + computer.java();
    return computer.java() >= OLDEST_JAVA
        ? Finding.fine("Java", words)
        : Finding.trouble(
            "Java", words, "install Java " + OLDEST_JAVA + " or later and start with it");
  }

  /** Tries to write there, and leaves nothing behind but the folder. */
  Finding dataFolder() {
    String what = "Data folder";
    try {
      Files.createDirectories(data);
      Files.delete(Files.createTempFile(data, "self-check", ""));
      return Finding.fine(what, data + " can be written to");
    } catch (IOException refused) {
      return Finding.trouble(
          what,
          data + " cannot be written to: " + refused,
          "give whoever runs the bench the right to write there, or name another folder with --data");
    }
  }

  Finding room() {
    String what = "Room on its disk";
    try {
      Path there = data.toAbsolutePath();
      while (!Files.exists(there)) there = there.getParent();
      long room = computer.room().in(there);
      String words = (room >> 20) + " MB are free";
      return room >= LEAST_ROOM
          ? Finding.fine(what, words)
          : Finding.trouble(
              what, words, "make room: a full disk stops the bench from recording anything");
    } catch (IOException unknown) {
      return Finding.trouble(
          what, "cannot be told: " + unknown, "see whether the disk is in order");
    }
  }

  /** Whatever is read of what a person wrote. */
  interface Reading {
    String words() throws WrongUse, IOException;
  }

  static Finding readable(String what, Reading reading) {
    try {
      return Finding.fine(what, reading.words());
    } catch (WrongUse | IOException | IllegalArgumentException unreadable) {
      return Finding.trouble(what, "cannot be read", unreadable.getMessage());
    }
  }

  /** The ports that the system names, and those that scales are told to be at. */
  List<Finding> serialPorts(List<String> scales) {
    List<Finding> findings = new ArrayList<>();
    for (FoundPort port : computer.ports())
      findings.add(mayOpen("Serial port " + port.device(), port.device()));
    List<String> devices = scales.stream()
        .map(SavedScales::place)
        .filter(place -> place.startsWith("serial:"))
        .map(place -> place.substring("serial:".length()))
        .filter(
            device -> computer.ports().stream().noneMatch(port -> port.device().equals(device)))
        .toList();
    for (String device : devices) findings.add(mayOpen("Scale at " + device, device));
    boolean needsNone = !scales.isEmpty() && devices.isEmpty();
    if (findings.isEmpty())
      findings.add(
          needsNone
              ? Finding.fine("Serial ports", "none, and no scale needs one")
              : Finding.trouble(
                  "Serial ports",
                  "none is seen",
                  "plug the scale's cable or adapter in, then look again; candlebench ports lists them"));
    return findings;
  }

  private Finding mayOpen(String what, String device) {
    PortAccess access = computer.access().apply(device);
    if (!access.there())
      return Finding.trouble(
          what,
          "is not there",
          "plug it in, or look with candlebench ports under which name it is now");
    if (access.allowed()) return Finding.fine(what, "can be opened");
    String group = access.group().orElse("dialout");
    return Finding.trouble(
        what,
        "belongs to the group " + group + ", and this user may not open it",
        "as root: usermod -aG " + group
            + " USER, with the name of whoever runs the bench, who then logs out and in again");
  }

  /** Whether the page can be served there, or is. */
  static Finding page(URI page) {
    String what = "Page at " + page;
    try (ServerSocket free = new ServerSocket()) {
      free.bind(new InetSocketAddress(page.getHost(), page.getPort()));
      return Finding.fine(what, "the port is free");
    } catch (IOException taken) {
      if (isOurs(page)) return Finding.fine(what, "a bench is at work there");
      return Finding.trouble(
          what,
          "the port cannot be had: " + taken.getMessage(),
          "choose another with --port or port = N in " + Settings.FILE
              + ", or end the program that has it");
    }
  }

  private static boolean isOurs(URI page) {
    try {
      URLConnection asked = page.resolve("/api/view").toURL().openConnection();
      asked.setConnectTimeout(PATIENCE_MILLIS);
      asked.setReadTimeout(PATIENCE_MILLIS);
      try (InputStream in = asked.getInputStream()) {
        return new String(in.readNBytes(A_VIEWS_BEGINNING), StandardCharsets.UTF_8)
            .contains("\"practice\":");
      }
    } catch (IOException otherwise) {
      return false;
    }
  }
}
