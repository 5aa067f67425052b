// What this screen keeps for itself, and the light it is read in: every page follows the same choice.

const PLACE = "candlebench.screen";
const dark = matchMedia("(prefers-color-scheme: dark)");

/** What was kept, or nothing where the browser keeps nothing. */
export function kept() {
  try {
    return JSON.parse(localStorage.getItem(PLACE)) ?? {};
  } catch {
    return {};
  }
}

export function keep(settings) {
  try {
    localStorage.setItem(PLACE, JSON.stringify(settings));
  } catch {
    // A browser that keeps nothing forgets it with the page.
  }
  light();
}

function light() {
  const chosen = kept().light ?? "auto";
  const dim = chosen === "dim" || (chosen === "auto" && dark.matches);
  document.documentElement.dataset.light = dim ? "dim" : "bright";
}

dark.addEventListener("change", light);
light();
