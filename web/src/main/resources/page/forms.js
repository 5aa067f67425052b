// What is typed: the start of a batch, a weight by hand, a temperature, another lot, giving up.

import { offerSearch } from "./seek.js";
import { text } from "./words.js";

const $ = id => document.getElementById(id);
const KEPT = "candlebench.start";

let setup = { recipes: [], hands: false, search: false };
let materials = [];

const fields = form => Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, value.trim()]));

/** Asks what this station has; again whenever the line to it was opened anew. */
export async function askSetup() {
  setup = await (await fetch("api/setup")).json();
  const choice = $("start-form").elements.recipe;
  choice.replaceChildren(...setup.recipes.map(recipe => new Option(recipe.name, recipe.id)));
  const kept = JSON.parse(localStorage.getItem(KEPT) ?? "{}");
  for (const [name, value] of Object.entries(kept)) if ($("start-form").elements[name]) $("start-form").elements[name].value = value;
  if (choice.selectedIndex < 0) choice.selectedIndex = 0;
  askLots();
}

const chosen = () => setup.recipes.find(recipe => recipe.id === $("start-form").elements.recipe.value);

function askLots() {
  const materials = chosen()?.materials ?? [];
  $("start-lots").replaceChildren(...materials.map(material => {
    const label = document.createElement("label");
    const lot = document.createElement("input");
    lot.name = `lot ${material}`;
    lot.maxLength = 60;
    lot.addEventListener("keydown", toNextLot);
    label.append(text("page.lot", { material }), lot);
    return label;
  }));
}

/** A scanner types a lot and then Enter: that leads to the next lot, and from the last one to the key that starts. */
function toNextLot(event) {
  if (event.key !== "Enter") return;
  event.preventDefault();
  const lots = [...$("start-lots").querySelectorAll("input")];
  (lots[lots.indexOf(event.target) + 1] ?? $("start-form").querySelector("button")).focus();
}

/** Wires the forms; send(command, fields) answers whether it was done. */
export function offerForms(send) {
  const start = $("start-form");
  start.elements.recipe.addEventListener("change", askLots);
  start.addEventListener("submit", async event => {
    event.preventDefault();
    const { recipe, vessels, person, ...typed } = fields(start);
    const lots = {};
    for (const [name, lot] of Object.entries(typed)) if (lot) lots[name.slice("lot ".length)] = lot;
    if (await send("start-batch", { recipe, vessels, person, lots })) localStorage.setItem(KEPT, JSON.stringify({ recipe, vessels, person }));
  });

  $("by-hand-open").addEventListener("click", () => openByHand($("by-hand-form").hidden));
  onSubmit("by-hand-form", async typed => { if (await send("enter-by-hand", typed)) openByHand(false); });

  $("open-more").addEventListener("click", () => {
    $("lot-form").elements.material.replaceChildren(...materials.map(name => new Option(name)));
    $("more").showModal();
  });
  $("more-done").addEventListener("click", () => $("more").close());
  for (const [form, command] of [["temperature-form", "note-temperature"], ["spill-form", "note-spill"], ["lot-form", "change-lot"], ["abandon-form", "abandon"]])
    onSubmit(form, async typed => { if (await send(command, typed)) $("more").close(); });
}

function onSubmit(id, act) {
  $(id).addEventListener("submit", async event => {
    event.preventDefault();
    await act(fields($(id)));
  });
}

function openByHand(open) {
  $("by-hand-form").hidden = !open;
  $("by-hand-open").setAttribute("aria-expanded", String(open));
  if (open) $("by-hand-form").elements.net.focus();
  else $("by-hand-form").reset();
}

/** Shows the forms that fit the view. */
export function renderForms(view) {
  const { step, batch } = view.bench;
  materials = setup.recipes.find(recipe => recipe.name === batch?.recipe)?.materials ?? [];
  $("start").hidden = !(step === "IDLE" || step === "DONE") || setup.recipes.length === 0;
  $("by-hand").hidden = !view.bench.byHand;
  $("hands").hidden = !setup.hands;
  $("open-more").hidden = batch === null || step === "DONE" || step === "IDLE";
  offerSearch(step === "NO_SCALE", setup.search);
}
