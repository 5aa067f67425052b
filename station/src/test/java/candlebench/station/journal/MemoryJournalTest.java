package candlebench.station.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.journal.JournalFailed.Trouble;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;

class MemoryJournalTest implements JournalContract {
  private MemoryJournal journal = new MemoryJournal(Purpose.RECORD);

  @Override
  public Journal journal() {
    return journal;
  }

  @Override
  public Journal reopened() {
    journal.close();
    journal = journal.reopened();
    return journal;
  }

  @Override
  public void fill() {
    journal.fail(Trouble.FULL);
  }

  @Override
  public void makeRoom() {
    journal.mend();
  }

  @Test
  void a_second_writing_thread_is_caught() throws Exception {
    journal.append(WALL, List.of(JournalContract.text("a", 1)));
    CompletableFuture<Throwable> caught = new CompletableFuture<>();
    Thread other = new Thread(() -> {
      try {
        journal.append(WALL, List.of(JournalContract.text("b", 2)));
        caught.complete(new IllegalStateException("not caught"));
      } catch (Throwable thrown) {
        caught.complete(thrown);
      }
    });
    other.start();
    other.join();
    assertThat(caught.get())
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("one thread writes");
  }

  @Test
  void a_time_without_its_offset_is_caught() {
    assertThatThrownBy(
            () -> journal.append("2026-11-25T09:30:00", List.of(JournalContract.text("a", 1))))
        .hasMessageContaining("2026-11-25T09:30:00");
  }
}
