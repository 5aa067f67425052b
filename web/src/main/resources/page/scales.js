// The scales of this bench: how each is heard just now, what it is, when it was last tried; the way to one more.

import { say } from "./commands.js";
import { figure } from "./light.js";
import { $, ask, failed, made } from "./rows.js";
import { when } from "./record-words.js";
import { offerSearch } from "./seek.js";
import { followStation } from "./stream.js";
import { text } from "./words.js";

const OLD_MILLIS = 1000;
const LOOK_MILLIS = 1000;

let known = { scales: [], search: false, practice: false };
let shown = "";

/** What stays on the page: words in their places. */
function label() {
  const words = (selector, key) => { document.querySelector(selector).textContent = text(key); };
  words("#seek-title", "page.scales-find");
  words("#seek li p", "page.scales-plug");
  words("#no-ports", "page.scales-no-ports");
  words("#find-form span", "page.scales-port");
  words("#find-form button", "page.scales-look");
  words("#check-title", "page.scales-check");
  words("#check-how", "page.scales-check-how");
  ["scale", "known", "unit", "person"].forEach((name, at) => { $("check-form").querySelectorAll("span")[at].textContent = text(`page.scales-check-${name}`); });
  words("#check-form button", "page.scales-check-it");
}

function checked([check]) {
  if (!check) return [made("strong", "", text("page.scales-never-checked"))];
  const { day, time } = when(check.time);
  return [text("page.scales-checked", { day, time, known: check.known, shown: check.shown, difference: check.difference }), " ",
    made(check.within ? "span" : "strong", "", text(check.within ? "page.scales-within" : "page.scales-beyond", { allowed: check.allowed })),
    check.weightAsked ? ` ${text("page.scales-class", { asked: check.weightAsked })}` : ""];
}

/** Its last digit counts by ones, unless the maker said otherwise. */
function division(scale, live) {
  if (scale.division) return scale.division;
  const decimals = live.shown.split(".")[1]?.length ?? 0;
  return live.shown ? text("page.scales-by-digit", { step: figure((10 ** -decimals).toFixed(decimals)), unit: live.unit }) : text("page.scales-not-said");
}

function card(scale, live, age, at) {
  const old = live.ageMillis < 0 || age > OLD_MILLIS;
  const now = live.shown && !old ? `${figure(live.shown)} ${live.unit}` : text("page.scales-no-number");
  const facts = [
    ["shows", made("b", "", now)],
    ["link", text(`link.${live.link}`)],
    ["frames", text("page.scales-counts", { read: live.framesRead, refused: live.framesRefused })],
    ["format", `${scale.title} (${scale.format})`],
    ["place", scale.place],
    ["capacity", scale.capacity || text("page.scales-not-said")],
    ["division", division(scale, live)],
    ["sends", scale.askedEvery ? text("page.scales-asked", { millis: scale.askedEvery }) : text("page.scales-by-itself")],
    ["last-check", checked(scale.check)],
  ];
  const trouble = live.trouble ? made("p", "failed", made("strong", "", `${text("page.scales-do")} `), text(live.trouble)) : "";
  const title = made("h2", "", scale.name);
  title.id = `scale-${at}`;
  const section = made("section", "", title, trouble, made("dl", "facts", ...facts.flatMap(([name, value]) => [made("dt", "", text(`page.scales-${name}`)), made("dd", "", ...[value].flat())])));
  section.setAttribute("aria-labelledby", title.id);
  return section;
}

function draw(view) {
  const cards = known.scales.map((scale, at) => [scale, view.scales[at]]).filter(([, live]) => live);
  const words = JSON.stringify(cards.map(([scale, live]) => [scale, { ...live, ageMillis: live.ageMillis > OLD_MILLIS, framesRead: 0 }]));
  if (words === shown && performance.now() - draw.at < LOOK_MILLIS) return;
  shown = words;
  draw.at = performance.now();
  $("scales").replaceChildren(...cards.map(([scale, live], at) => card(scale, live, live.ageMillis, at)));
}
draw.at = 0;

async function begin() {
  known = await ask("api/scales");
  const none = known.scales.length === 0;
  $("empty").hidden = !none;
  $("empty").textContent = text("page.scales-empty");
  $("no-search").hidden = known.search;
  $("no-search").textContent = text(known.practice ? "page.scales-practice" : "page.scales-named");
  $("check-form").elements.scale.replaceChildren(...known.scales.map(scale => new Option(scale.name)));
  $("check-section").hidden = none;
  offerSearch(known.search, known.search);
}

$("check-form").addEventListener("submit", async event => {
  event.preventDefault();
  const fields = Object.fromEntries([...new FormData(event.target)].map(([name, value]) => [name, value.trim()]));
  const answer = await say("check-scale", fields);
  $("checked").textContent = answer.done ? text("page.written-down") : answer.words ? text(answer.words) : answer.error;
  if (answer.done) begin().catch(failed);
});

label();
begin().then(() => {
  followStation({
    onView(view) {
      draw(view);
      offerSearch(known.search, known.search);
    },
    onLost() {
      $("scales").replaceChildren(made("p", "failed", text("page.lost")));
      shown = "";
    },
  });
}).catch(failed);
