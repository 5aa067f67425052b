// The way to a scale: choose its port, hear how far the search has come, use what was found.

import { post } from "./commands.js";
import { text } from "./words.js";

const LOOK_FOR_PORTS_MILLIS = 2000;
const LOOK_FOR_SEARCH_MILLIS = 300;
const LOOK_FOR_BENCH_MILLIS = 500;
const UNITS = ["g", "kg", "oz", "lb"];

const $ = id => document.getElementById(id);
let portsAt = -Infinity;
let looking = 0;

const ask = async path => (await fetch(path)).json();

/** Shows the way to a scale, and the ports there are now. */
export function offerSearch(shown, possible) {
  $("seek").hidden = !shown;
  $("find-form").hidden = !possible;
  if (shown && possible && performance.now() - portsAt > LOOK_FOR_PORTS_MILLIS) showPorts();
}

async function showPorts() {
  portsAt = performance.now();
  const { ports } = await ask("api/ports");
  const shown = JSON.stringify(ports);
  if ($("ports").dataset.shown === shown) return;
  $("ports").dataset.shown = shown;
  $("ports").replaceChildren(...ports.map(port => {
    const item = document.createElement("li");
    item.append(key(text("page.find-on", { device: port.device }), () => begin(port.device)), ` ${[port.title, port.usb].filter(Boolean).join("  ")}`);
    return item;
  }));
  $("no-ports").hidden = ports.length > 0;
}

function key(words, act) {
  const button = Object.assign(document.createElement("button"), { type: "button", className: "plain", textContent: words });
  button.addEventListener("click", act);
  return button;
}

async function begin(device) {
  const answer = await post("api/find", { device });
  if (!answer.done) return tell(answer.words ? text(answer.words) : answer.error);
  clearInterval(looking);
  looking = setInterval(look, LOOK_FOR_SEARCH_MILLIS);
  await look();
}

async function look() {
  const search = await ask("api/find").catch(() => null);
  if (!search?.words) return;
  if (search.over) clearInterval(looking);
  tell([text(search.words), search.sending ? text(search.sending) : ""].filter(Boolean).join(" "), search.why ?? "");
  const scales = search.over ? search.scales : [];
  const again = search.over ? [key(text("page.find-again"), () => begin(search.device))] : [];
  const items = [...scales.map(offer), ...again].map(content => {
    const item = document.createElement("li");
    item.append(...[content].flat());
    return item;
  });
  if ($("found").childElementCount !== items.length || search.over) $("found").replaceChildren(...items);
}

function tell(words, why = "") {
  if ($("find-words").textContent !== words) $("find-words").textContent = words;
  $("find-why").textContent = why;
}

/** A scale that was found, with the unit to be said where it never names one. */
function offer(scale) {
  const unit = document.createElement("select");
  unit.append(...UNITS.map(each => new Option(each)));
  const label = document.createElement("label");
  label.append(text("page.find-unit"), " ", unit);
  const use = key(text("page.find-use", { title: scale.title }), async () => {
    const before = await ask("api/view");
    const answer = await post("api/use", { format: scale.format, unit: scale.needsUnit ? unit.value : "" });
    if (!answer.done) return tell(answer.words ? text(answer.words) : answer.error);
    tell(text("page.find-kept"));
    $("found").replaceChildren();
    awaitBench(before);
  });
  return scale.needsUnit ? [label, use] : use;
}

/** The station opens the scale and answers anew: then the page begins anew too. Views are numbered from one in each run. */
async function awaitBench(before, gone = false) {
  const view = await ask("api/view").catch(() => null);
  const anew = view && (before.bench.step === "NO_SCALE" ? view.bench.step !== "NO_SCALE" : gone || view.revision < before.revision);
  if (anew) location.reload();
  else setTimeout(() => awaitBench(before, gone || !view), LOOK_FOR_BENCH_MILLIS);
}

$("find-form").addEventListener("submit", event => {
  event.preventDefault();
  begin($("find-form").elements.device.value.trim());
});
