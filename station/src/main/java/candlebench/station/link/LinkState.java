package candlebench.station.link;

/** How the line to a scale is. */
public enum LinkState {
  /** Being opened for the first time. */
  CONNECTING,
  /** Frames arrive and are understood. */
  LIVE,
  /** Open, but nothing arrives. */
  SILENT,
  /** Bytes arrive, but no frame among them is understood. */
  GARBLED,
  /** Gone: unplugged, or the far end closed; opened again with growing pauses. */
  LOST,
  /** The port is there but another program holds it. */
  HELD,
  /** The port is there but this user may not open it. */
  DENIED,
  /** The far end speaks telnet where raw bytes are expected. */
  TELNET
}
