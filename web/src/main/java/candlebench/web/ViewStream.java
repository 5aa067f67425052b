package candlebench.web;

import candlebench.station.Bench.Watch;
import candlebench.station.view.ShownUnit;
import jakarta.servlet.AsyncContext;
import java.io.IOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;

/**
 * Views to pages as server-sent events. Each view is written once in each unit that is looked at, and its bytes shared; a page that reads slowly gets the newest
 * view when it is ready again, never a backlog, and makes nobody wait.
 *
 * <p>When nothing changes the view is sent again every {@link #BEAT_MILLIS}, so that a page can tell a quiet bench from a dead
 * line, and a page that went away is noticed.
 *
 * <p>Threads: the station's thread only leaves word; one sender thread writes to whoever is ready, without blocking; the web
 * server's threads send the newest view to a page that has become ready again.
 */
final class ViewStream implements AutoCloseable {
  static final int PAGES_MOST = 128;
  static final int BEAT_MILLIS = 500;

  private static final long BEAT_NANOS = BEAT_MILLIS * 1_000_000L;

  private final Site site;
  private final Set<StreamedPage> pages = ConcurrentHashMap.newKeySet();
  private final Semaphore places = new Semaphore(PAGES_MOST);
  private final AtomicBoolean newer = new AtomicBoolean();
  private final Thread sender = new Thread(this::send, "views to pages");
  private final Watch watch;
  private volatile boolean open = true;

  ViewStream(Site site) {
    this.site = site;
    sender.setDaemon(true);
    sender.start();
    watch = site.bench().watch(this::leaveWord);
  }

  /** Keeps a place for one more page, which must then be added; false where all are taken. */
  boolean reserve() {
    return places.tryAcquire();
  }

  /** Takes in a page that has a place: it is sent the view as it is now, then every newer one, until what is returned completes. */
  CompletableFuture<Void> add(AsyncContext request, ShownUnit unit) {
    CompletableFuture<Void> ended = new CompletableFuture<>();
    ended.thenRun(places::release);
    try {
      StreamedPage page = new StreamedPage(request, unit, ended);
      pages.add(page);
      ended.thenRun(() -> pages.remove(page));
      page.offer(newest(unit));
    } catch (IOException cutAlready) {
      ended.complete(null);
    }
    return ended;
  }

  int pages() {
    return pages.size();
  }

  @Override
  public void close() {
    open = false;
    watch.close();
    LockSupport.unpark(sender);
    pages.forEach(StreamedPage::end);
  }

  private byte[] newest(ShownUnit unit) {
    return ViewJson.event(site.bench().view(unit), site.nanos().getAsLong());
  }

  private void leaveWord() {
    if (!newer.getAndSet(true)) LockSupport.unpark(sender);
  }

  private void send() {
    long lastSent = System.nanoTime();
    while (open) {
      long now = System.nanoTime();
      if (newer.getAndSet(false) || now - lastSent >= BEAT_NANOS) {
        lastSent = now;
        if (pages.isEmpty()) continue;
        Map<ShownUnit, byte[]> events = new EnumMap<>(ShownUnit.class);
        for (StreamedPage page : pages)
          page.offer(events.computeIfAbsent(page.unit(), this::newest));
      } else {
        LockSupport.parkNanos(this, BEAT_NANOS - (now - lastSent));
      }
    }
  }
}
