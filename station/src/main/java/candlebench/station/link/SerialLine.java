package candlebench.station.link;

import candlebench.protocol.LineSettings;

/** The line to a serial device such as {@code /dev/serial/by-id/…} or {@code COM3}. */
public record SerialLine(String device, LineSettings settings) implements Line {
  @Override
  public Opening open() {
    return SerialBytePort.open(device, settings);
  }
}
