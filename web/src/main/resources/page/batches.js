// The list of batches, from a lot to its batches, and what is left of each lot.

import { say } from "./commands.js";
import { $, ask, cells, failed, made } from "./rows.js";
import { when, words } from "./record-words.js";
import { text } from "./words.js";

let oldest = 0;

function link(page, code, words) {
  const a = made("a", "", words);
  a.href = `${page}?${new URLSearchParams({ code })}`;
  return a;
}

const row = (...texts) => cells(document.createElement("tr"), "td", ...texts);
const body = id => $(id).querySelector("tbody");

function batchRow(batch) {
  const made = when(batch.started);
  return row(link("sheet.html", batch.code, batch.code), `${made.day} ${made.time}`, batch.recipe, batch.person, `${batch.filled} of ${batch.vessels}`, words.ending[batch.ending], batch.deviations ? String(batch.deviations) : "none", [link("sheet.html", batch.code, "sheet"), " ", link("labels.html", batch.code, "labels")]);
}

async function showBatches(before = "") {
  const found = await ask(`api/batches?${new URLSearchParams({ before })}`);
  body("batches").append(...found.batches.map(batchRow));
  if (found.batches.length) oldest = found.batches[found.batches.length - 1].first;
  const some = body("batches").children.length > 0;
  $("batches-frame").hidden = !some;
  $("empty").hidden = some;
  $("older").hidden = !found.more;
  $("practice").hidden = !found.practice;
  $("record").replaceChildren(`${found.practice ? "Practice journal" : "Record"} of ${found.entries} entries. Head `, made("span", "hash", found.head));
}

async function showStock() {
  const { stock } = await ask("api/lots");
  body("stock").replaceChildren(...stock.map(lot => row(lot.material, lot.lot, lot.received || "not written down", lot.used, lot.left, String(lot.batches))));
  $("stock-frame").hidden = stock.length === 0;
  $("no-stock").hidden = stock.length > 0;
}

async function find(query) {
  const { uses } = await ask(`api/lots?${new URLSearchParams(query)}`);
  body("uses").replaceChildren(...uses.map(({ batch, lot }) => row(link("sheet.html", batch.code, batch.code), lot.material, lot.unknown ? "unknown" : lot.lot, lot.amount, lot.vessels.join(", ") || "none", when(batch.started).day)));
  $("uses-frame").hidden = uses.length === 0;
  const vessels = uses.reduce((sum, { lot }) => sum + lot.vessels.length, 0);
  $("found").textContent = uses.length ? `${uses.length} ${uses.length === 1 ? "batch" : "batches"}, ${vessels} vessels.` : "No batch took from such a lot.";
}

const typed = form => Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, value.trim()]));

$("lot-form").addEventListener("submit", event => {
  event.preventDefault();
  const lot = event.target.elements.lot.value.trim();
  if (lot) find({ lot }).catch(failed);
});
$("unknown").addEventListener("click", () => find({ unknown: "true" }).catch(failed));
$("older").addEventListener("click", () => showBatches(oldest).catch(failed));

$("received-form").addEventListener("submit", async event => {
  event.preventDefault();
  const form = event.target;
  const answer = await say("receive-lot", typed(form));
  $("answer").textContent = answer.done ? "Written down." : answer.words ? text(answer.words) : answer.error;
  if (!answer.done) return;
  form.reset();
  showStock().catch(failed);
});

showBatches().catch(failed);
showStock().catch(failed);
