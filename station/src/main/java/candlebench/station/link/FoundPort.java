package candlebench.station.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.List;

/**
 * A serial port that the system names. Pseudo-terminals and links to ports are not named by it, and open all the same.
 *
 * @param device what to put after {@code serial:}, a name that stays when the port is plugged in again where the system has one
 * @param title what the device calls itself, such as the name of its USB adapter; may be no more than the port's own name
 * @param usb vendor and product as the USB standard writes them, {@code 0403:6001}; empty where it is no USB device
 */
public record FoundPort(String device, String title, String usb) {

  /** The ports there are now. */
  public static List<FoundPort> all() {
    return Arrays.stream(SerialPort.getCommPorts()).map(FoundPort::of).toList();
  }

  private static FoundPort of(SerialPort port) {
    boolean isUsb = port.getVendorID() >= 0 && port.getProductID() >= 0;
    return new FoundPort(
        StableNames.SYSTEM.of(port.getSystemPortPath()),
        port.getDescriptivePortName(),
        isUsb ? String.format("%04x:%04x", port.getVendorID(), port.getProductID()) : "");
  }
}
