// The quiet row: what is done, what is being done, what is to come.

import { $, element, icon, renew, show } from "./dom.js";
import { figure } from "./light.js";
import { text } from "./words.js";

const BEFORE = 1;
const AFTER = 1;

export function renderParts(parts) {
  show($("parts-region"), parts.length > 0);
  renew($("parts"), parts, () => {
    const now = parts.findIndex(part => part.state === "now");
    const here = now < 0 ? parts.length : now;
    const from = parts.length <= 5 ? 0 : Math.max(0, Math.min(here - BEFORE, parts.length - BEFORE - AFTER - 1));
    const to = parts.length <= 5 ? parts.length : Math.min(parts.length, from + BEFORE + AFTER + 1);
    const items = parts.slice(from, to).map(partItem);
    if (from > 0) items.unshift(summary("done", text("page.done-before", { count: from })));
    if (to < parts.length) items.push(summary("to-come", text("page.to-come-after", { count: parts.length - to })));
    return items;
  });
}

function partItem(part) {
  const item = element("li", "", "part");
  item.dataset.state = part.state;
  item.dataset.verdict = part.verdict;
  if (part.state === "now") item.setAttribute("aria-current", "step");
  const words = element("div");
  const weight = part.state === "done" ? part.actual : part.target;
  const verdict = part.verdict && part.verdict !== "within" ? ` ${text(`verdict.${part.verdict}`)}` : "";
  const hand = part.byHand ? ` ${text("page.by-hand")}` : "";
  words.append(element("b", part.name), element("span", `${figure(weight)} ${part.unit}${verdict}${hand}`), element("span", ` ${text(`part.${part.state}`)}`, "spoken"));
  item.append(icon(part.state), words);
  return item;
}

function summary(state, words) {
  const item = element("li", "", "part");
  item.dataset.state = state;
  item.append(icon(state), element("span", words));
  return item;
}
