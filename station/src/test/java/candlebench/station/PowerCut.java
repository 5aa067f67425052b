package candlebench.station;

import candlebench.station.DiskLog.Kind;
import candlebench.station.DiskLog.Step;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * What a power cut leaves of the files at one instant: all that was synced, and of the rest what luck would have it, sector by sector
 * and out of order, since a disk may keep what nobody asked it to keep.
 *
 * <p>On what it rests: a synced file keeps its name, and a removal lasts once its folder was synced, as the usual file systems of Linux
 * do it.
 */
final class PowerCut {
  private static final int SECTOR = 512;

  private final List<Step> steps;
  private final BooleanSupplier luck;
  private final Map<String, Integer> lastSync = new HashMap<>();
  private final Map<String, byte[]> files = new HashMap<>();

  private PowerCut(List<Step> steps, BooleanSupplier luck) {
    this.steps = steps;
    this.luck = luck;
    for (int i = 0; i < steps.size(); i++)
      if (steps.get(i).kind() == Kind.SYNCED) lastSync.put(steps.get(i).file(), i);
  }

  /**
   * Leaves in an empty folder what a power cut after these steps leaves.
   *
   * @param luck whether a piece that was not synced survives
   */
  static void leave(List<Step> steps, BooleanSupplier luck, Path folder) throws IOException {
    PowerCut cut = new PowerCut(steps, luck);
    for (int i = 0; i < steps.size(); i++) cut.take(i);
    for (Map.Entry<String, byte[]> file : cut.files.entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
  }

  /** The last whole line told in these steps that begins with a word. */
  static Optional<String[]> told(List<Step> steps, String word) {
    StringBuilder all = new StringBuilder();
    for (Step step : steps)
      if (step.kind() == Kind.TOLD) all.append(new String(step.bytes(), StandardCharsets.UTF_8));
    String whole = all.substring(0, all.lastIndexOf("\n") + 1);
    return whole
        .lines()
        .filter(line -> line.startsWith(word + " "))
        .reduce((before, last) -> last)
        .map(line -> line.split(" "));
  }

  private void take(int i) {
    Step step = steps.get(i);
    boolean synced = i < lastSync.getOrDefault(step.file(), -1);
    boolean named = synced || i < lastSync.getOrDefault(folderOf(step.file()), -1);
    switch (step.kind()) {
      case CREATED -> {
        if (!isFolder(step.file()) && (named || luck.getAsBoolean()))
          files.put(step.file(), new byte[0]);
      }
      case WRITTEN -> write(step, synced);
      case CUT -> {
        if (synced || luck.getAsBoolean())
          files.computeIfPresent(
              step.file(), (name, bytes) -> Arrays.copyOf(bytes, (int) step.length()));
      }
      case REMOVED -> {
        if (i < lastSync.getOrDefault(folderOf(step.file()), -1) || luck.getAsBoolean())
          files.remove(step.file());
      }
      case SYNCED, TOLD -> {}
    }
  }

  private void write(Step step, boolean synced) {
    if (!files.containsKey(step.file())) return;
    for (int from = 0; from < step.bytes().length; ) {
      long at = step.offset() + from;
      int count = (int) Math.min(SECTOR - at % SECTOR, step.bytes().length - from);
      if (synced || luck.getAsBoolean()) write(step, from, count);
      from += count;
    }
  }

  private void write(Step step, int from, int count) {
    int end = (int) step.offset() + from + count;
    byte[] bytes = files.get(step.file());
    if (bytes.length < end) bytes = Arrays.copyOf(bytes, end);
    System.arraycopy(step.bytes(), from, bytes, end - count, count);
    files.put(step.file(), bytes);
  }

  private static boolean isFolder(String file) {
    return file.equals(".");
  }

  private static String folderOf(String file) {
    int slash = file.lastIndexOf('/');
    return slash < 0 ? "." : file.substring(0, slash);
  }
}
