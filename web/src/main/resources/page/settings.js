// What this screen keeps for itself: light, sound, keys. Nothing of the bench.

const PLACE = "candlebench.screen";
const USUAL = { light: "auto", loudness: 60, pitch: 100, shortcuts: true };
const dark = matchMedia("(prefers-color-scheme: dark)");
const dialog = document.getElementById("settings");
const form = dialog.querySelector("form");

export const settings = { ...USUAL, ...kept() };

function kept() {
  try {
    return JSON.parse(localStorage.getItem(PLACE)) ?? {};
  } catch {
    return {};
  }
}

function light() {
  const dim = settings.light === "dim" || (settings.light === "auto" && dark.matches);
  document.documentElement.dataset.light = dim ? "dim" : "bright";
}

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
  localStorage.setItem(PLACE, JSON.stringify(settings));
  light();
});
dark.addEventListener("change", light);
light();
