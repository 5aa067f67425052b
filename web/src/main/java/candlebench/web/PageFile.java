package candlebench.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * A file of the page. Only the names in this list are ever read: nothing of a request reaches a file's name.
 *
 * @param path where it is asked for
 * @param type its media type
 * @param bytes what is in it
 * @param tag changes when the content does
 */
record PageFile(String path, String type, byte[] bytes, String tag) {

  private static final List<String> NAMES = List.of(
      "index.html",
      "plan.html",
      "plan.js",
      "scales.html",
      "scales.js",
      "batches.html",
      "sheet.html",
      "labels.html",
      "sheets.css",
      "rows.js",
      "record-words.js",
      "batches.js",
      "sheet.js",
      "labels.js",
      "tokens.css",
      "style.css",
      "main.js",
      "stream.js",
      "dom.js",
      "render.js",
      "parts.js",
      "ways.js",
      "vessel.js",
      "commands.js",
      "announce.js",
      "sound.js",
      "beats.js",
      "practice.js",
      "forms.js",
      "seek.js",
      "settings.js",
      "light.js",
      "messages.js",
      "words.js",
      "icon.svg",
      "words.woff2",
      "figures.woff2");

  private static final Map<String, String> TYPES = Map.of(
      "html", "text/html; charset=utf-8",
      "css", "text/css; charset=utf-8",
      "js", "text/javascript; charset=utf-8",
      "svg", "image/svg+xml",
      "woff2", "font/woff2");

  /** Every file of the page, read once. */
  static List<PageFile> all() {
    return NAMES.stream().map(PageFile::of).toList();
  }

  private static PageFile of(String name) {
    try (InputStream in = PageFile.class.getResourceAsStream("/page/" + name)) {
      if (in == null) throw new AssertionError("the program was packed without page/" + name);
      byte[] bytes = in.readAllBytes();
      CRC32 sum = new CRC32();
      sum.update(bytes);
      String path = name.equals("index.html") ? "/" : "/" + name;
      String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
      return new PageFile(path, type, bytes, "\"" + Long.toHexString(sum.getValue()) + "\"");
    } catch (IOException unreadable) {
      throw new UncheckedIOException("page/" + name + " cannot be read", unreadable);
    }
  }
}
