package candlebench.station.link;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.shared.Stamp;

/** Hears what a link has to say, in the link's own thread. A listener that waits makes the link wait; nothing is dropped. */
public interface LinkListener {

  /** A frame arrived, with what it says. */
  void heard(int scale, Frame frame, Decoded decoded);

  /** Someone pressed PRINT on the scale, as the frame says that was heard just before. */
  void printKeyPressed(int scale, Stamp stamp);

  /** The line changed. */
  void changed(int scale, LinkReport report, Stamp stamp);
}
