// What this screen keeps for itself: light, sound, keys. Nothing of the bench.

import { keep, kept } from "./light.js";
import { text } from "./words.js";

const USUAL = { light: "auto", loudness: 60, pitch: 100, shortcuts: true, goOnKey: "", undoKey: "u", decimal: "point", unit: "" };
const dialog = document.getElementById("settings");
const form = dialog.querySelector("form");

export const settings = { ...USUAL, ...kept() };

let unitChosen = () => {};

/** Calls back when another unit was chosen. */
export function onUnit(act) {
  unitChosen = act;
}

export function openSettings() {
  form.elements.light.value = settings.light;
  form.elements.loudness.value = settings.loudness;
  form.elements.pitch.value = settings.pitch;
  form.elements.shortcuts.checked = settings.shortcuts;
  form.elements.decimal.value = settings.decimal;
  form.elements.unit.value = settings.unit;
  showKeys();
  dialog.showModal();
}

document.getElementById("settings-done").addEventListener("click", () => dialog.close());

form.addEventListener("input", () => {
  settings.light = form.elements.light.value;
  settings.loudness = Number(form.elements.loudness.value);
  settings.pitch = Number(form.elements.pitch.value);
  settings.shortcuts = form.elements.shortcuts.checked;
  settings.decimal = form.elements.decimal.value;
  const otherUnit = settings.unit !== form.elements.unit.value;
  settings.unit = form.elements.unit.value;
  keep(settings);
  if (otherUnit) unitChosen();
});

// Keys: whatever is pressed in a field becomes the key; Backspace brings the usual one back.

const PASSING = ["Tab", "Shift", "Control", "Alt", "Meta", "Escape"];

function showKeys() {
  form.elements.goOnKey.value = settings.goOnKey || text("page.key-usual");
  form.elements.undoKey.value = settings.undoKey.toUpperCase();
}

for (const name of ["goOnKey", "undoKey"])
  form.elements[name].addEventListener("keydown", event => {
    if (PASSING.includes(event.key)) return;
    event.preventDefault();
    settings[name] = event.key === "Backspace" ? USUAL[name] : event.key === " " ? "Space" : event.key;
    keep(settings);
    showKeys();
  });

const pressed = event => (event.key === " " ? "Space" : event.key).toLowerCase();

/** Whether a press means the large key. */
export const meansGoOn = event => settings.goOnKey ? pressed(event) === settings.goOnKey.toLowerCase() : ["space", "enter"].includes(pressed(event));

/** Whether a press means undo. */
export const meansUndo = event => pressed(event) === settings.undoKey.toLowerCase();
