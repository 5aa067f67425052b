package candlebench.station.link;

/** The line to a scale, or to a serial port server with a scale behind it, over raw TCP. */
public record TcpLine(String host, int port) implements Line {
  @Override
  public Opening open() {
    return SocketBytePort.open(host, port);
  }
}
