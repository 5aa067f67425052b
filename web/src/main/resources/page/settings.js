// What this screen keeps for itself: light, sound, keys. Nothing of the bench.

import { keep, kept } from "./light.js";

const USUAL = { light: "auto", loudness: 60, pitch: 100, shortcuts: true };
const dialog = document.getElementById("settings");
const form = dialog.querySelector("form");

export const settings = { ...USUAL, ...kept() };

export function openSettings() {
  form.elements.light.value = settings.light;
  form.elements.loudness.value = settings.loudness;
  form.elements.pitch.value = settings.pitch;
  form.elements.shortcuts.checked = settings.shortcuts;
  dialog.showModal();
}

document.getElementById("settings-done").addEventListener("click", () => dialog.close());

form.addEventListener("input", () => {
  settings.light = form.elements.light.value;
  settings.loudness = Number(form.elements.loudness.value);
  settings.pitch = Number(form.elements.pitch.value);
  settings.shortcuts = form.elements.shortcuts.checked;
  keep(settings);
});
