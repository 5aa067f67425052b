// Hands for the practice bench: a stream runs for as long as its key is held.

import { post } from "./commands.js";

const move = (hand, down) => post("api/practice", { hand, down: String(down) });

export function offerHands(region) {
  for (const button of region.querySelectorAll("[data-hand]")) {
    if ("held" in button.dataset) hold(button);
    else button.addEventListener("click", () => move(button.dataset.hand, true));
  }
}

function hold(button) {
  const press = down => {
    if ((button.getAttribute("aria-pressed") === "true") === down) return;
    button.setAttribute("aria-pressed", String(down));
    move(button.dataset.hand, down);
  };
  const isKey = event => event.key === " " || event.key === "Enter";
  button.setAttribute("aria-pressed", "false");
  button.addEventListener("pointerdown", event => {
    button.setPointerCapture(event.pointerId);
    press(true);
  });
  for (const end of ["pointerup", "pointercancel", "blur"]) button.addEventListener(end, () => press(false));
  button.addEventListener("keydown", event => {
    if (!isKey(event)) return;
    event.preventDefault();
    if (!event.repeat) press(true);
  });
  button.addEventListener("keyup", event => {
    if (!isKey(event)) return;
    event.preventDefault();
    press(false);
  });
  addEventListener("pagehide", () => press(false));
}
