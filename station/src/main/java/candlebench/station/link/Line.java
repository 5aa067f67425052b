package candlebench.station.link;

/** A place where a scale may be reached. Each attempt begins anew, since what lies behind a name may have changed. */
@FunctionalInterface
public interface Line {

  Opening open();

  /** What came of an attempt. */
  sealed interface Opening {}

  record Opened(BytePort port) implements Opening {}

  record NotOpened(LinkReport why) implements Opening {}
}
