package candlebench.web;

import candlebench.station.link.FoundPort;
import java.io.PrintStream;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the serial ports. */
@Command(
    name = "candlebench ports",
    description = "Lists the serial ports that this computer names.")
final class PortsCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Override
  public Integer call() {
    print(FoundPort.all(), System.out);
    return Main.DONE;
  }

  static void print(List<FoundPort> ports, PrintStream out) {
    for (FoundPort port : ports)
      out.println(port.device() + "  " + port.title()
          + (port.usb().isEmpty() ? "" : "  USB " + port.usb()));
    if (ports.isEmpty())
      out.println("No serial port is named. Plug the scale's cable in and look again.");
    out.println(
        "Any other path works too, such as /dev/serial/by-id/…, which stays the same when the cable is moved:");
    out.println("  candlebench serve --scale 'serial:PATH?format=ID'");
  }
}
