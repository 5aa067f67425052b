package candlebench.web;

import com.microsoft.playwright.Page;
import java.util.List;
import java.util.Map;

/** How well the texts of a page stand out from the ground they stand on, to one kind of eye. */
final class Legible {

  /** WCAG 2.2, 1.4.6 (enhanced contrast). */
  private static final double CONTRAST = 7;

  private Legible() {}

  /** Each text that is less legible than the limit. */
  @SuppressWarnings("unchecked")
  static List<String> faint(Page page, ColourVision eye) {
    return (List<String>) page.evaluate("""
        ({ limit, eye }) => {
          const parts = colour => colour.match(/[\\d.]+/g).map(Number);
          const light = colour => {
            const linear = colour.slice(0, 3).map(c => c / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
            const [r, g, b] = eye.map(row => Math.min(1, Math.max(0, row[0] * linear[0] + row[1] * linear[1] + row[2] * linear[2])));
            return 0.2126 * r + 0.7152 * g + 0.0722 * b;
          };
          const ground = element => {
            for (let each = element; each; each = each.parentElement) {
              const colour = parts(getComputedStyle(each).backgroundColor);
              if (colour.length < 4 || colour[3] > 0) return colour;
            }
            return [255, 255, 255];
          };
          const faint = [];
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          for (let node = walk.nextNode(); node; node = walk.nextNode()) {
            const element = node.parentElement;
            if (!node.data.trim() || !element.checkVisibility() || element.closest(".spoken, title")) continue;
            const style = getComputedStyle(element);
            const pair = [light(parts(element.closest("svg") ? style.fill : style.color)), light(ground(element))].sort((a, b) => b - a);
            const contrast = (pair[0] + 0.05) / (pair[1] + 0.05);
            if (contrast < limit) faint.push(`${node.data.trim()}: ${contrast.toFixed(2)}`);
          }
          return faint;
        }
        """, Map.of("limit", CONTRAST, "eye", eye.rows()));
  }
}
