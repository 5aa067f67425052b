// Wires the page: views in, regions out, presses to the station.

import { alarm, tell } from "./announce.js";
import { say } from "./commands.js";
import { askSetup, offerForms, renderForms } from "./forms.js";
import { offerHands } from "./practice.js";
import * as render from "./render.js";
import { renderParts } from "./parts.js";
import { meansGoOn, meansUndo, onUnit, openSettings, settings } from "./settings.js";
import { sound, soundIsOn, soundTaken, trySound, turnSound } from "./sound.js";
import { followStation } from "./stream.js";
import { renderChoices } from "./ways.js";
import { text } from "./words.js";

const AGE_LOOK_MILLIS = 100;
const ANSWER_MILLIS = 6000;
const SAME_PRESS_MILLIS = 500;

const $ = id => document.getElementById(id);
let view = null;
let heardAt = 0;
let lost = false;
let entries = -1;
let called = 0;

/** What depends on the view alone, and then on time. */
function draw() {
  const { bench } = view;
  document.body.dataset.revision = view.revision;
  renewPress(bench);
  render.renderTop(view);
  render.renderNow(bench);
  renderChoices(bench.choices, take);
  renderParts(bench.parts);
  render.renderRecord(view.record);
  renderForms(view);
  drawTimes();
  speak(bench);
}

/** What changes though nothing arrives: ages and countdowns. */
function drawTimes() {
  const { bench, scales } = view;
  const elapsed = performance.now() - heardAt;
  const own = scales.find(scale => scale.name === bench.weighing?.scale);
  const age = own && own.ageMillis >= 0 ? own.ageMillis + elapsed : 0;
  render.renderScales(scales, elapsed);
  render.renderPots(bench.pots, elapsed);
  const trouble = render.renderWeight(bench, scales, age, lost);
  const hidden = trouble !== "";
  render.renderCue(bench, elapsed, hidden && bench.cue !== "over");
  render.renderPicture(bench, hidden);
  render.renderTimes(bench, elapsed);
  render.renderKeys(bench, elapsed);
  sound({
    cue: hidden ? "none" : bench.cue,
    permille: bench.weighing?.fillPermille ?? 0,
    stopInMillis: bench.stopInMillis === null ? null : bench.stopInMillis - elapsed,
    countInMillis: bench.countIn ? bench.countIn.remainingMillis - elapsed : 0,
  }, performance.now());
  if (trouble) tell(trouble);
}

function speak(bench) {
  alarm(bench.cue === "over" ? `${text("cue.over")}. ${text(bench.now)}` : "");
  if (!lost && !bench.trouble) tell([text(bench.now), bench.countIn ? text(bench.countIn.what) : "", bench.timer ? text(bench.timer.what) : ""].filter(Boolean).join(". "));
  if (entries >= 0 && view.record.entries > entries && view.record.last) soundTaken();
  entries = view.record.entries;
  const calling = bench.pots.filter(pot => pot.state === "calls").length;
  if (calling > called) {
    soundTaken();
    tell(bench.pots.filter(pot => pot.state === "calls").map(pot => `${pot.pot}: ${text("pot.calls")}`).join(". "));
  }
  called = calling;
}

// Presses. A second tap on the same key counts once: it is not sent while what the key means on the page has not changed, and
// a press that got lost is sent again under its own id.

const press = { meaning: "", at: -Infinity };
let asked = "";

/** A page that asks for something else takes the next press, however soon. */
function renewPress(bench) {
  const asks = JSON.stringify([bench.step, bench.now, bench.confirm, bench.choices]);
  if (asks !== asked) press.meaning = "";
  asked = asks;
}

async function send(command, fields = {}) {
  const meaning = JSON.stringify([command, fields]);
  const now = performance.now();
  if (meaning === press.meaning && now - press.at < SAME_PRESS_MILLIS) return false;
  Object.assign(press, { meaning, at: now });
  const answer = await say(command, fields);
  if (!answer.done) tellAnswer(answer);
  return answer.done;
}

function tellAnswer(answer) {
  const words = answer.words ? text(answer.words) : answer.error;
  const box = $("answer");
  box.textContent = words;
  box.hidden = false;
  clearTimeout(tellAnswer.later);
  tellAnswer.later = setTimeout(() => { box.hidden = true; }, ANSWER_MILLIS);
}

function take(choice, reason) {
  send("choose", { choice, reason });
}

function goOn() {
  if (view?.bench.confirm) send(view.bench.confirm.command);
}

$("go-on").addEventListener("click", goOn);
$("undo").addEventListener("click", () => send("undo"));

/** The large key by keyboard or foot switch, wherever no other key or field has the focus. */
addEventListener("keydown", event => {
  const free = event.target === document.body || event.target === $("weight");
  if (!free || !settings.shortcuts || event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
  if (meansGoOn(event)) {
    event.preventDefault();
    goOn();
  } else if (meansUndo(event) && !$("undo").hidden) send("undo");
});

$("open-settings").addEventListener("click", openSettings);
$("sound-try").addEventListener("click", async () => { await turnSound(true); trySound(); showSound(); });
$("sound").addEventListener("click", async event => {
  if (event.detail > 0) toBench();
  await turnSound(!soundIsOn());
  showSound();
});
for (const dialog of ["settings", "more"]) $(dialog).addEventListener("close", toBench);

/** Where a foot switch means the large key. */
function toBench() {
  $("weight").focus({ preventScroll: true });
}

function showSound() {
  $("sound").textContent = text(soundIsOn() ? "page.sound-on" : "page.sound-off");
  $("sound").setAttribute("aria-pressed", String(soundIsOn()));
}

showSound();
$("now").textContent = text("page.connecting");
offerHands($("hands"));
offerForms(send);

const openAnew = followStation({
  onView(newest, at) {
    if (view === null || lost) askSetup().then(() => renderForms(view));
    view = newest;
    heardAt = at;
    lost = false;
    draw();
  },
  onLost() {
    lost = true;
    if (view) drawTimes();
    else $("now").textContent = text("page.lost");
  },
});
onUnit(openAnew);
setInterval(() => { if (view) drawTimes(); }, AGE_LOOK_MILLIS);
