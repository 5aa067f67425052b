package candlebench.station.link.find;

import candlebench.protocol.LineSettings;
import java.util.Optional;

/** One part of a search. */
interface Stage {

  /** What is to be done next. */
  sealed interface Next {}

  /** Go on at these settings. */
  record Stay() implements Next {}

  /** Open the line anew, at the settings that hold now. */
  record Reopen() implements Next {}

  /** This part of the search has come to its end without a scale. */
  record Over() implements Next {}

  /** There is something at every setting, but nothing that makes sense. */
  record GiveUp() implements Next {}

  /** The search is over. */
  record Done(Found found) implements Next {}

  Next STAY = new Stay();

  Next REOPEN = new Reopen();

  Next OVER = new Over();

  Next GIVE_UP = new GiveUp();

  /** What someone who waits is told. */
  Search.Doing doing();

  /** How the line is to be set now. */
  LineSettings line();

  /** What to send now, if anything. */
  default Optional<byte[]> ask(Visit visit, long nanos) {
    return Optional.empty();
  }

  /** What follows from what was heard by now. */
  Next next(Visit visit, long nanos);
}
