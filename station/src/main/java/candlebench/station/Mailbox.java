package candlebench.station;

import candlebench.shared.Stamp;
import candlebench.station.Bench.Answer;
import java.time.Instant;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;

/** What waits to be dealt with, in order of arrival. Bounded: whoever brings more waits, and nothing is dropped. */
final class Mailbox {

  /** Half a second of thirty-two scales at twenty readings a second, three times over. */
  static final int MOST_WAITING = 1024;

  private static final CompletableFuture<Answer> NOBODY = new CompletableFuture<>();

  /** The last item of all. */
  static final Item END = new Item(new Intake.Ticked(new Stamp(Instant.EPOCH, 0)), NOBODY);

  /** An intake, and where its answer goes; nobody waits for one but for a command's. */
  record Item(Intake intake, CompletableFuture<Answer> answer) {}

  private final BlockingQueue<Item> items = new ArrayBlockingQueue<>(MOST_WAITING);

  /** Brings an intake, waiting while there is no room. */
  void bring(Intake intake) {
    put(new Item(intake, NOBODY));
  }

  /** Brings what the maker said, waiting while there is no room; the answer comes later. */
  CompletableFuture<Answer> ask(Intake.Said said) {
    CompletableFuture<Answer> answer = new CompletableFuture<>();
    put(new Item(said, answer));
    return answer;
  }

  /** Brings a tick where there is room. One that finds none is not missed: the next one comes in a moment. */
  void tick(Intake.Ticked tick) {
    items.offer(new Item(tick, NOBODY));
  }

  /** Nothing comes after this. */
  void end() {
    put(END);
  }

  /** The next item, waited for. */
  Item next() {
    try {
      return items.take();
    } catch (InterruptedException ended) {
      return END;
    }
  }

  boolean isEmpty() {
    return items.isEmpty();
  }

  /** Answers all that still wait. */
  void answerAll(Answer answer) {
    for (Item left = items.poll(); left != null; left = items.poll())
      left.answer().complete(answer);
  }

  private void put(Item item) {
    try {
      items.put(item);
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }
}
