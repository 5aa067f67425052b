// Hands for the practice bench: the key is held for as long as one pours.

import { post } from "./commands.js";

export function offerHands(region) {
  const move = (hand, down) => post("api/practice", { hand, down: String(down) });
  for (const button of region.querySelectorAll("[data-hand]")) {
    const hand = button.dataset.hand;
    const held = hand === "pour" || hand === "trickle";
    if (!held) {
      button.addEventListener("click", () => move(hand, true));
      continue;
    }
    const press = down => {
      if ((button.getAttribute("aria-pressed") === "true") === down) return;
      button.setAttribute("aria-pressed", String(down));
      move(hand, down);
    };
    button.setAttribute("aria-pressed", "false");
    button.addEventListener("pointerdown", event => { button.setPointerCapture(event.pointerId); press(true); });
    for (const end of ["pointerup", "pointercancel", "blur"]) button.addEventListener(end, () => press(false));
    const isKey = event => event.key === " " || event.key === "Enter";
    button.addEventListener("keydown", event => { if (isKey(event) && !event.repeat) { event.preventDefault(); press(true); } });
    button.addEventListener("keyup", event => { if (isKey(event)) { event.preventDefault(); press(false); } });
    addEventListener("pagehide", () => press(false));
  }
}
