// A view into the page: one function per region. Only what changed is touched; data enters as text.

import { $, element, glyph, icon, put, renew, show } from "./dom.js";
import { figure } from "./light.js";
import { text } from "./words.js";
import { makeVessel } from "./vessel.js";

const vessel = makeVessel($("vessel"));

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
  if (shown.length === 0) return renew($("scales"), shown, () => [element("li", text("page.scales"))]);
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
  put($("amounts"), [text("amounts", weighing), weighing.over && text("amounts.allowance", weighing), weighing.roundedTo && text("amounts.rounded", weighing)].filter(Boolean).join(" · "));
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

export function renderRecord(record) {
  put($("record"), record.last ? text("page.recorded", { what: text(record.last) }) : text("page.entries", { count: record.entries }));
  show($("record-trouble"), record.trouble !== null);
  put($("record-trouble"), record.trouble ? text(record.trouble) : "");
}
