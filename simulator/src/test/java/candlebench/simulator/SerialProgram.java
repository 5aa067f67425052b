package candlebench.simulator;

import candlebench.protocol.LineSettings;
import com.fazecast.jSerialComm.SerialPort;
import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** A program that reads a serial device as ours does: a thread of its own, blocking reads, -1 when the device has gone. */
final class SerialProgram implements AutoCloseable {
  private static final long DEADLINE_SECONDS = 20;

  private final SerialPort port;
  private final Thread reader;
  private final ByteArrayOutputStream read = new ByteArrayOutputStream();
  private final CountDownLatch gone = new CountDownLatch(1);

  SerialProgram(String path, LineSettings settings) {
    port = SerialPort.getCommPort(path);
    int parity = switch (settings.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case MARK -> SerialPort.MARK_PARITY;
      case SPACE -> SerialPort.SPACE_PARITY;
    };
    int stop = settings.stopBits() == 1 ? SerialPort.ONE_STOP_BIT : SerialPort.TWO_STOP_BITS;
    port.setComPortParameters(settings.baud(), settings.dataBits(), stop, parity);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 100, 0);
    if (!port.openPort()) throw new IllegalStateException("cannot open " + path);
    reader = new Thread(this::readOn, "serial-program");
    reader.setDaemon(true);
    reader.start();
  }

  void send(byte[] bytes) {
    port.writeBytes(bytes, bytes.length);
  }

  /** Waits until so many bytes were read, and gives all that were. */
  synchronized byte[] awaitBytes(int count) throws InterruptedException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(DEADLINE_SECONDS);
    while (read.size() < count) {
      long left = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
      if (left <= 0)
        throw new AssertionError("only " + read.size() + " of " + count + " bytes came");
      wait(left);
    }
    return read.toByteArray();
  }

  synchronized byte[] soFar() {
    return read.toByteArray();
  }

  boolean awaitGone() throws InterruptedException {
    return gone.await(DEADLINE_SECONDS, TimeUnit.SECONDS);
  }

  /** Closes the device; it counts as closed only when the reader is out of it too. */
  @Override
  public void close() {
    port.closePort();
    try {
      if (!awaitGone()) throw new AssertionError("the reader did not end");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void readOn() {
    byte[] buffer = new byte[1024];
    for (int n; (n = port.readBytes(buffer, buffer.length)) >= 0; ) keep(Arrays.copyOf(buffer, n));
    gone.countDown();
  }

  private synchronized void keep(byte[] bytes) {
    read.writeBytes(bytes);
    notifyAll();
  }
}
