package candlebench.web;

import candlebench.station.view.StationView;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;

/**
 * Not a test: a picture of every state and page on each screen, and of the tablet's as eyes see it that lack one kind of cone, with an
 * {@code index.html} to look through them. Run it from the root:
 * {@code mvn -q -Pbrowser -pl web -am test-compile exec:java -Dexec.classpathScope=test -Dexec.mainClass=candlebench.web.Gallery
 * -Dexec.args=web/target/gallery}
 */
final class Gallery {
  private static final List<String> PAGES = List.of(
      "plan.html",
      "batches.html",
      "scales.html",
      "sheet.html?code=20261125-1&label=250%20g",
      "labels.html?code=20261125-1&label=8%20oz");

  private final Path folder;
  private final List<String> names = new ArrayList<>();

  private Gallery(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args.length > 0 ? args[0] : "target/gallery");
    Files.createDirectories(folder);
    Gallery gallery = new Gallery(folder);
    Path data = Files.createTempDirectory("candlebench-gallery");
    try (ServedRecord record = new ServedRecord(data);
        PageBrowser browser = new PageBrowser()) {
      for (Screen screen : Screen.values()) {
        gallery.bench(record, browser, screen);
        gallery.practice(browser, screen);
        gallery.pages(record, browser, screen);
      }
    }
    gallery.index();
    System.out.println(gallery.names.size() + " pictures: " + folder.resolve("index.html"));
  }

  private void bench(ServedRecord record, PageBrowser browser, Screen screen) throws IOException {
    Page page = browser.open(record.server().port(), screen.width(), screen.height(), screen.dim());
    Map<String, StationView> scenes = new LinkedHashMap<>(Scenes.all());
    scenes.put("long", Scenes.longWeight());
    scenes.put("by-hand", Scenes.byHand());
    for (Map.Entry<String, StationView> scene : scenes.entrySet()) {
      record.bench().show(scene.getValue());
      page.locator("body[data-revision='" + scene.getValue().revision() + "']").waitFor();
      take(page, screen, scene.getKey(), false);
    }
    page.locator("#open-settings").click();
    take(page, screen, "settings", false);
    page.context().close();
  }

  private void practice(PageBrowser browser, Screen screen) throws IOException {
    ScriptedBench practice = new ScriptedBench(Scenes.practising());
    Site site = practice.site(java.util.Optional.of((hand, down) -> {}));
    try (WebServer served = new WebServer(site, InetAddress.getLoopbackAddress(), 0)) {
      Page page = browser.open(served.port(), screen.width(), screen.height(), screen.dim());
      page.locator("#hands:visible").waitFor();
      take(page, screen, "practice", false);
      page.context().close();
    }
  }

  private void pages(ServedRecord record, PageBrowser browser, Screen screen) throws IOException {
    Page page = browser.open(record.server().port(), screen.width(), screen.height(), screen.dim());
    for (String path : PAGES) {
      page.navigate(record.server().address() + path);
      if (path.equals("plan.html")) PlanPageTest.planTheExample(page);
      page.locator(
              "#plan:visible, #batches:visible, #sheet:visible, #labels:visible, #scales section:visible")
          .first()
          .waitFor();
      take(page, screen, path.replaceFirst("\\.html.*", ""), true);
    }
    page.context().close();
  }

  private void take(Page page, Screen screen, String state, boolean whole) throws IOException {
    String name = word(screen) + "-" + state + ".png";
    Path file = folder.resolve(name);
    page.screenshot(new Page.ScreenshotOptions().setPath(file).setFullPage(whole));
    names.add(name);
    if (screen != Screen.TABLET && screen != Screen.TABLET_DIM) return;
    for (ColourVision eye : ColourVision.values()) {
      if (eye == ColourVision.USUAL) continue;
      String seen = word(screen) + "-" + state + "-" + word(eye) + ".png";
      ImageIO.write(
          eye.of(ImageIO.read(file.toFile())), "png", folder.resolve(seen).toFile());
      names.add(seen);
    }
  }

  private void index() throws IOException {
    StringBuilder html =
        new StringBuilder("<!doctype html><meta charset=\"utf-8\"><title>Gallery</title>\n");
    for (String name : names)
      html.append("<figure><figcaption>")
          .append(name)
          .append("</figcaption><img src=\"")
          .append(name)
          .append("\" loading=\"lazy\" width=\"640\"></figure>\n");
    Files.writeString(folder.resolve("index.html"), html);
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
