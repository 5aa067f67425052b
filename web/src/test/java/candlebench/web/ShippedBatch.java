package candlebench.web;

import candlebench.simulator.TcpOutlet;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * Makes a batch of one vessel on a program that runs already, wherever it was installed: a virtual scale that it reaches over TCP, a
 * browser, and hands that know the page alone. Ends with an error unless the record says what was truly there.
 *
 * <p>{@code mvn -q -Pbrowser -pl web -am test-compile exec:java -Dexec.classpathScope=test -Dexec.mainClass=candlebench.web.ShippedBatch
 * -Dexec.args="PORT SCALEPORT DATA"}, where the program's page is at PORT, its scale is {@code tcp:127.0.0.1:SCALEPORT?format=and}, and DATA
 * is its data folder as seen from here.
 */
final class ShippedBatch {
  private static final long PATIENCE_NANOS = TimeUnit.MINUTES.toNanos(10);
  private static final int VESSELS = 1;

  private ShippedBatch() {}

  public static void main(String[] args) throws Exception {
    BatchHands hands = BatchHands.slow();
    PageBrowser browser = new PageBrowser();
    try (RealBench real = new RealBench(
        Path.of(args[2]), new TcpOutlet(Integer.parseInt(args[1])), "and", 10, hands)) {
      real.joins(Integer.parseInt(args[0]));
      PageEyes eyes = real.open(browser);
      RealBench.start(eyes, "harbour-lane-quick", VESSELS);
      real.until(
          eyes,
          () -> {
            hands.read(eyes.heading());
            return eyes.heading().startsWith("Done");
          },
          PATIENCE_NANOS);
      BatchTruth.check(real, hands, VESSELS);
      System.out.println("the batch is done, and its record is true");
    } finally {
      browser.close();
    }
  }
}
