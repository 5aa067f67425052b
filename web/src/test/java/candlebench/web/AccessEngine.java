package candlebench.web;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * The accessibility engine axe-core in a page: every rule it has for WCAG 2.0 to 2.2 at the levels A, AA and AAA, and its rules of good
 * practice.
 */
final class AccessEngine {
  private static final String ENGINE = engine();

  private static final String RUN = """
      async () => {
        const found = await axe.run(document, { resultTypes: ["violations"], rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } } });
        return found.violations.map(rule => `${rule.id} (${rule.help}): ${rule.nodes.map(node => `${node.target.join(" ")} ${node.any.concat(node.all, node.none).map(check => check.message).join("; ")}`).join(" | ")}`);
      }
      """;

  private AccessEngine() {}

  /** What speaks against the page as it stands now, a line for each rule. */
  @SuppressWarnings("unchecked")
  static List<String> violations(Page page) {
    if (Boolean.FALSE.equals(page.evaluate("'axe' in window"))) page.evaluate(ENGINE);
    return (List<String>) page.evaluate(RUN);
  }

  private static String engine() {
    try (InputStream in = AccessEngine.class.getResourceAsStream("/axe.min.js")) {
      if (in == null) throw new AssertionError("axe-core is not among the test's libraries");
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
