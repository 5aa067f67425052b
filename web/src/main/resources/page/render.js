// A view into the page: one function per region. Only what changed is touched; data enters as text.

import { figure } from "./light.js";
import { text } from "./words.js";
import { makeVessel } from "./vessel.js";

const $ = id => document.getElementById(id);
const vessel = makeVessel($("vessel"));

function put(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

function show(element, visible) {
  if (element.hidden === visible) element.hidden = !visible;
}

function glyph(use, name) {
  const link = `#g-${name}`;
  if (use.getAttribute("href") !== link) use.setAttribute("href", link);
}

function icon(name) {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const use = document.createElementNS("http://www.w3.org/2000/svg", "use");
  svg.setAttribute("class", "glyph");
  svg.setAttribute("aria-hidden", "true");
  use.setAttribute("href", `#g-${name}`);
  svg.append(use);
  return svg;
}

function element(name, words = "", kind = "") {
  const made = document.createElement(name);
  made.textContent = words;
  if (kind) made.className = kind;
  return made;
}

/** Renews a list only when what it shows has changed, so that focus stays where it is. */
function renew(list, value, fill) {
  const shown = JSON.stringify([value, figure("0.0")]);
  if (list.dataset.shown === shown) return;
  list.dataset.shown = shown;
  list.replaceChildren(...fill());
}

const seconds = millis => (Math.max(0, millis) / 1000).toFixed(1);
const clock = millis => {
  const whole = Math.ceil(Math.max(0, millis) / 1000);
  return whole < 60 ? text("page.seconds", { seconds: whole }) : `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
};

export function renderTop(view) {
  show($("practice-mark"), view.practice);
  document.body.toggleAttribute("data-practice", view.practice);
  const batch = view.bench.batch;
  show($("batch"), batch !== null);
  if (!batch) return;
  put($("batch-name"), `${batch.recipe} · ${batch.code}`);
  put($("batch-size"), text("page.vessels", { count: batch.vessels }));
  const other = batch.loadBasis === "of_wax" ? "of_total" : "of_wax";
  show($("batch-load"), batch.load !== "");
  if (batch.load !== "") put($("batch-load"), text("page.load", { load: batch.load, basis: text(`basis.${batch.loadBasis}`), other: batch.otherLoad, otherBasis: text(`basis.${other}`) }));
}

export function renderScales(scales, elapsed) {
  const shown = scales.map(scale => {
    const old = scale.ageMillis < 0 || scale.ageMillis + elapsed > 1000;
    const mark = scale.link !== "live" ? "lost" : old ? "stale" : scale.stability === "unstable" ? "moving" : "live";
    return { name: scale.name, mark, number: old ? "" : `${figure(scale.shown)} ${scale.unit}`.trim(), link: scale.link };
  });
  renew($("scales"), shown, () => shown.map(scale => {
    const item = element("li");
    item.append(icon(scale.mark), element("span", scale.name), element("span", scale.number, "shown"), element("span", text(`link.${scale.link}`)));
    return item;
  }));
}

/** Now, waiting and next, where several pots take turns; elapsed since the view was made. */
export function renderPots(pots, elapsed) {
  show($("pots-region"), pots.length > 0);
  const shown = pots.map(pot => {
    const left = pot.timer ? clock(pot.timer.remainingMillis - elapsed) : "";
    const filled = pot.filled > 0 ? text("page.pot-filled", { filled: pot.filled, vessels: pot.vessels }) : "";
    const about = pot.state === "waiting" ? `${text(pot.timer.what)} ${left}` : text(`pot.${pot.state}`);
    return { state: pot.state, words: [`${pot.pot}: ${about}`, filled].filter(Boolean).join(", ") };
  });
  renew($("pots"), shown, () => shown.map(pot => {
    const item = element("li", pot.words);
    item.dataset.state = pot.state;
    return item;
  }));
}

export function renderNow(bench) {
  const now = text(bench.now);
  put($("now"), now);
  $("now").toggleAttribute("data-long", now.length > 21);
  $("now").toggleAttribute("data-alone", bench.weighing === null && bench.choices.length === 0);
  show($("detail"), bench.detail !== null);
  put($("detail"), bench.detail ? text(bench.detail) : "");
}

/** The number, or what stands in its place while it may not be trusted; age is how old the number is, lost whether the line is. */
export function renderWeight(bench, scales, age, lost) {
  const weighing = bench.weighing;
  const stale = weighing !== null && (weighing.trust === "stale" || age > 1000);
  const none = weighing !== null && weighing.trust === "none";
  const trouble = lost ? text("page.lost")
    : bench.trouble ? text(bench.trouble)
    : stale ? text("trust.stale", { age: seconds(age) })
    : none ? text("trust.none") : "";
  show($("trouble"), trouble !== "");
  show($("figure"), weighing !== null && trouble === "");
  show($("amounts"), weighing !== null && trouble === "" && bench.choices.length === 0);
  put($("trouble-word"), trouble);
  glyph($("trouble-glyph"), lost ? "lost" : troubleSign(scales));
  const last = stale && !lost && weighing.toGo !== "";
  show($("trouble-last"), last);
  if (last) renew($("trouble-last"), [weighing.net, seconds(age)], () => [
    document.createTextNode(text("page.last-seen", { age: seconds(age) })), element("s", `${figure(weighing.net)} ${weighing.unit}`)]);
  document.body.dataset.trust = trouble ? "none" : weighing?.trust ?? "none";
  if (!weighing || trouble) return trouble;

  const past = weighing.toGo.startsWith("-");
  const number = past ? weighing.toGo.slice(1) : weighing.toGo;
  put($("figure-name"), text(bench.cue === "over" ? "figure.over" : past ? "figure.past" : "figure.to-go"));
  put($("number"), figure(number));
  $("number").dataset.length = number.length > 7 ? "longest" : number.length > 5 ? "long" : "";
  put($("unit"), weighing.unit);
  $("figure").dataset.trust = weighing.trust;
  show($("trust"), true);
  glyph($("trust-glyph"), weighing.trust);
  put($("trust-word"), text(`trust.${weighing.trust}`));
  put($("amounts"), text("amounts", weighing) + (weighing.over ? text("amounts.allowance", weighing) : ""));
  return "";
}

function troubleSign(scales) {
  if (scales.some(scale => scale.stability === "overload" || scale.stability === "underload")) return "over";
  return scales.some(scale => ["lost", "held", "denied", "telnet"].includes(scale.link)) ? "lost" : "stale";
}

/** The signal: what the stream should do. */
export function renderCue(bench, elapsed, hidden) {
  const cue = hidden ? "none" : bench.cue;
  const stopIn = bench.stopInMillis === null ? null : Math.max(0, bench.stopInMillis - elapsed);
  const counts = stopIn !== null && stopIn > 0 && stopIn < 5000 && (cue === "pour" || cue === "slow");
  document.body.dataset.cue = cue;
  show($("cue"), cue !== "none" && cue !== "over" && !(cue === "waiting" && !bench.weighing) && !(cue === "hold-still" && bench.countIn));
  if (cue === "none") return;
  glyph($("cue-glyph"), cue);
  const drops = bench.dropsToGo;
  put($("cue-word"), counts ? text("cue.stop-in", { seconds: seconds(stopIn) })
    : cue === "drops" ? (drops === null ? text("cue.drops-few") : drops === 1 ? text("cue.drop") : text("cue.drops", { count: drops }))
    : text(`cue.${cue}`));
  show($("cue-run-down"), counts);
  if (counts) $("cue-run-down").firstElementChild.style.setProperty("--left", (stopIn / 5000).toFixed(3));
}

/** What is to be done with the vessel, by the kind of step. */
const PLACES = { IDLE: "lit", DONE: "lit", PLACE_POT: "down", PLACE_BOTTLE: "down", PLACE_CUP: "down", TIP_CUP: "up", PLACE_VESSEL: "down", RETURN_POT: "down", AWAY: "down", LIFT_VESSEL: "up", MELT: "up" };

export function renderPicture(bench, hidden) {
  const weighing = bench.weighing;
  const step = bench.step;
  const place = weighing ? "" : PLACES[step] ?? "";
  vessel.draw({
    shape: /VESSEL|IDLE|DONE|PREPARE/.test(step) ? "glass" : "pot",
    permille: weighing ? weighing.fillPermille : null,
    remembered: hidden,
    cue: hidden ? "none" : bench.cue,
    target: weighing ? `${figure(weighing.target)} ${weighing.unit}` : "",
    place,
  });
  put($("vessel-words"), weighing && !hidden ? text("page.picture-fill", { percent: Math.round(weighing.fillPermille / 50) * 5 }) : text("page.picture-empty"));
}

export function renderTimes(bench, elapsed) {
  show($("times"), bench.countIn !== null || bench.timer !== null);
  time($("count-in"), bench.countIn, elapsed, 1000);
  time($("timer"), bench.timer, elapsed, 0);
}

function time(box, countdown, elapsed) {
  show(box, countdown !== null);
  if (!countdown) return;
  const left = Math.max(0, countdown.remainingMillis - elapsed);
  put(box.querySelector(".time-left"), clock(left));
  put(box.querySelector(".time-what"), text(countdown.what));
  box.querySelector(".run-down > *").style.setProperty("--left", (left / Math.max(1, countdown.totalMillis)).toFixed(3));
}

/** The ways on; take(choice, reason) is called with the one taken. */
export function renderChoices(choices, take) {
  show($("ways"), choices.length > 0);
  renew($("choices"), choices, () => choices.map(choice => way(choice, take)));
}

function way(choice, take) {
  const item = element("li", "", "way");
  const button = element("button", text(choice.label));
  button.type = "button";
  const remark = choice.possible ? choice.cost && text(choice.cost) : text("page.impossible", { why: choice.whyNot ? text(choice.whyNot) : "" });
  if (remark) button.append(element("small", remark));
  item.append(button);
  if (!choice.possible) {
    button.setAttribute("aria-disabled", "true");
    return item;
  }
  if (!choice.needsReason) {
    button.addEventListener("click", () => take(choice.id, ""));
    return item;
  }
  const form = element("form");
  const label = element("label", text("page.reason"));
  const reason = element("input");
  const send = element("button", text("page.take"), "plain");
  reason.maxLength = 300;
  reason.required = true;
  reason.id = `reason-${choice.id}`;
  label.htmlFor = reason.id;
  form.hidden = true;
  form.append(label, reason, send);
  button.setAttribute("aria-expanded", "false");
  button.addEventListener("click", () => {
    form.hidden = !form.hidden;
    button.setAttribute("aria-expanded", String(!form.hidden));
    if (!form.hidden) reason.focus();
  });
  form.addEventListener("submit", event => {
    event.preventDefault();
    if (reason.value.trim() === "") reason.focus();
    else take(choice.id, reason.value.trim());
  });
  item.append(form);
  return item;
}

/** The large key and the way back. */
export function renderKeys(bench, elapsed) {
  show($("go-on"), bench.confirm !== null);
  put($("go-on"), bench.confirm ? text(bench.confirm.label) : "");
  const left = bench.undo ? bench.undo.remainingMillis - elapsed : 0;
  show($("undo"), left > 0);
  if (left <= 0) return;
  put($("undo-word"), `${text("page.undo")}: ${text(bench.undo.what)}`);
  $("undo").querySelector(".run-down > *").style.setProperty("--left", (left / Math.max(1, bench.undo.totalMillis)).toFixed(3));
}

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

export function renderRecord(record) {
  put($("record"), record.last ? text("page.recorded", { what: text(record.last) }) : text("page.entries", { count: record.entries }));
  show($("record-trouble"), record.trouble !== null);
  put($("record-trouble"), record.trouble ? text(record.trouble) : "");
}
