// Touching the page only where it changes; data enters as text.

import { figure } from "./light.js";

export const $ = id => document.getElementById(id);

export function put(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

export function show(element, visible) {
  if (element.hidden === visible) element.hidden = !visible;
}

export function glyph(use, name) {
  const link = `#g-${name}`;
  if (use.getAttribute("href") !== link) use.setAttribute("href", link);
}

export function icon(name) {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const use = document.createElementNS("http://www.w3.org/2000/svg", "use");
  svg.setAttribute("class", "glyph");
  svg.setAttribute("aria-hidden", "true");
  use.setAttribute("href", `#g-${name}`);
  svg.append(use);
  return svg;
}

export function element(name, words = "", kind = "") {
  const made = document.createElement(name);
  made.textContent = words;
  if (kind) made.className = kind;
  return made;
}

/** Renews a list only when what it shows has changed, so that focus stays where it is. */
export function renew(list, value, fill) {
  const shown = JSON.stringify([value, figure("0.0")]);
  if (list.dataset.shown === shown) return;
  list.dataset.shown = shown;
  list.replaceChildren(...fill());
}
