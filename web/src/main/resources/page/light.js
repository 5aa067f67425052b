// What this screen keeps for itself, and the light it is read in: every page follows the same choice.

const PLACE = "candlebench.screen";
const dark = matchMedia("(prefers-color-scheme: dark)");

let comma = kept().decimal === "comma";

/** A figure with the decimal sign the maker chose; whatever is no figure, with or without its unit, stays as it is. */
export function figure(words) {
  return comma ? words.replace(/^(-?(?:\d+:|\d+ lb )?\d+)\.(\d+)(?= [%a-z]|$)/, "$1,$2") : words;
}

/** What was kept, or nothing where the browser keeps nothing. */
export function kept() {
  try {
    return JSON.parse(localStorage.getItem(PLACE)) ?? {};
  } catch {
    return {};
  }
}

export function keep(settings) {
  comma = settings.decimal === "comma";
  try {
    localStorage.setItem(PLACE, JSON.stringify(settings));
  } catch {
    // A browser that keeps nothing forgets it with the page.
  }
  light();
}

/** What is added to a path so that the station answers in the unit chosen here; nothing where its own will do. */
export function inUnit() {
  const { unit } = kept();
  return unit ? `?unit=${encodeURIComponent(unit)}` : "";
}

function light() {
  const chosen = kept().light ?? "auto";
  const dim = chosen === "dim" || (chosen === "auto" && dark.matches);
  document.documentElement.dataset.light = dim ? "dim" : "bright";
}

dark.addEventListener("change", light);
light();
