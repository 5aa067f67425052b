// The sheet of one batch: what the record says of it, on one printed page.

import { say } from "./commands.js";
import { $, ask, cells, drawn, failed, made, qrCode } from "./rows.js";
import { fill, when, words } from "./record-words.js";
import { text } from "./words.js";

const asked = new URLSearchParams(location.search);
const code = asked.get("code") ?? "";
const label = asked.get("label") ?? "";
let sheet;

const same = name => (name ? ` (${name})` : "");

function head() {
  document.title = `Batch ${sheet.code} · Candlebench`;
  $("code").textContent = sheet.code;
  $("recipe").textContent = sheet.recipe;
  $("practice").hidden = !sheet.practice;
  $("qr").replaceChildren(qrCode(sheet.label.qr, `QR code of batch ${sheet.code}`));
  const began = when(sheet.started);
  const ended = sheet.ended ? when(sheet.ended) : null;
  const facts = [
    ["Made", `${began.day} ${began.time}${ended ? ` to ${ended.day === began.day ? "" : `${ended.day} `}${ended.time}` : ""}, ${words.ending[sheet.ending]}`],
    ["By", sheet.person || "not named"],
    ["Scale", sheet.scales.map(each => each.scale).join(", ") || "none"],
    ["Its last check", sheet.scales.map(lastCheck)],
    ["Pot", sheet.pot || "not weighed"],
    ["Yield", `${sheet.filled} of ${sheet.planned} vessels; ${sheet.yield.filled} of ${sheet.yield.weighedIn}${same(sheet.yield.percent)}; ${sheet.yield.left} left behind; ${sheet.yield.planned} planned`],
  ];
  $("facts").replaceChildren(...facts.flatMap(([name, value]) => [made("dt", "", name), made("dd", "", ...[value].flat())]));
}

/** When a scale was last tried with a known mass, and what it showed. */
function lastCheck(each, i) {
  const whose = sheet.scales.length > 1 ? `${each.scale}: ` : "";
  const line = made("span", "check", i ? "; " : "", whose);
  if (!each.time) line.append(made("strong", "", "never checked"));
  else {
    const { day, time } = when(each.time);
    line.append(`${day} ${time}${each.person ? ` by ${each.person}` : ""}: ${each.known} showed ${each.shown}, ${each.difference} `, made(each.within ? "span" : "strong", "", `(${each.within ? "within" : "beyond"} ±${each.allowed})`), each.weightAsked ? `, sure with a weight of class ${each.weightAsked} or better` : "");
  }
  return line;
}

function curve(line) {
  const [picture] = line.curve;
  if (!picture) return "";
  const { width, height } = picture;
  const across = y => `M0 ${y}H${width}`;
  return drawn("svg", { class: "curve", viewBox: `0 0 ${width} ${height}`, preserveAspectRatio: "none", role: "img", "aria-label": `${line.net} in ${picture.seconds} s` },
    drawn("path", { class: "band", d: `M0 ${picture.over}H${width}V${picture.under}H0z` }),
    drawn("path", { class: "target", d: across(picture.target) }),
    drawn("path", { class: "course", d: picture.path }));
}

function share(part) {
  const limit = part.limit ? `, at most ${part.limit}` : "";
  const other = part.otherShare ? ` = ${part.otherShare} ${words.basis[part.otherBasis]}` : "";
  return `${part.share} ${words.basis[part.basis]}${other}${limit}`;
}

const remarks = line => [words.kind[line.kind], words.verdict[line.verdict], words.how[line.how], words.standing[line.standing], line.was ? `corrected, was ${line.was}` : ""].filter(Boolean).join(", ");

function net(line) {
  const said = remarks(line);
  return [made("b", "", line.net), said ? made("span", "said", ` ${said}`) : ""].filter(Boolean);
}

/** Lots in their order; one that fits on a line is not broken at its hyphen. */
function lotsOf(line) {
  if (!line.lots) return made("strong", "", "unknown");
  return line.lots.split(" + ").flatMap((lot, i) => [i ? " + " : "", made("span", lot.length < 25 ? "whole" : "", lot)]).filter(piece => piece !== "");
}

function partRows(part) {
  const lines = part.lines.length ? part.lines : [null];
  return lines.map((line, i) => {
    const row = document.createElement("tr");
    const name = i === 0 ? made("span", "", part.name, made("span", "said", ` ${words.kind[part.kind]}`)) : "";
    if (!line) return cells(row, "td", name, share(part), "", "", "nothing weighed", "", "", "");
    cells(row, "td", name, i === 0 ? share(part) : "", lotsOf(line), [line.target, line.exactTarget ? made("span", "said", ` exactly ${line.exactTarget}`) : ""].filter(Boolean), net(line), line.difference, when(line.time).time, curve(line));
    for (const n of [3, 4, 5]) row.children[n].className = "n";
    return row;
  });
}

function loads() {
  const known = (share, surely) => (surely ? `${share} ± ${surely}` : share);
  const lines = sheet.loads.flatMap((load, i) => [
    i ? "; " : "Load reached: ",
    load.ofWax ? made("b", "", `${known(load.ofWax, load.surelyOfWax)} of the wax`) : "",
    load.ofWax ? ", " : "",
    `${known(load.ofTotal, load.surelyOfTotal)} of the total`,
    sheet.loads.length > 1 ? ` (${load.name})` : "",
    load.overLimit ? made("strong", "", ", above the most allowed") : "",
  ]).filter(piece => piece !== "");
  if (sheet.loads.some(load => load.surelyOfWax))
    lines.push(" ", made("span", "said", "(± expanded, k = 2, by JCGM 100:2008: steps, and errors of class III in use, OIML R 76-1)"));
  $("loads").replaceChildren(...lines);
}

function vessel(line) {
  const item = made("li", line.verdict === "within" ? "" : "off", made("span", "number", String(line.number)), ...net(line), made("span", "said", ` ${line.difference}`), made("span", "at", when(line.time).time));
  const picture = curve(line);
  if (picture) item.append(picture);
  return item;
}

function content() {
  const box = $("content");
  const [found] = sheet.content;
  if (!found) return box.replaceChildren();
  const mean = found.meanShort
    ? made("strong", "", `mean ${found.mean}, ${found.meanShort} under the label`)
    : made("span", "", `mean ${found.mean}`);
  const rules = found.tolerable
    ? ` T1 ${found.t1}: ${found.belowT1} below, ${found.allowedBelowT1} allowed. T2 ${found.t2}: ${found.belowT2} below, none allowed.`
    : " No table of limits reaches this label.";
  const mav = found.mav ? ` US, indicative: ${found.beyondMav} short by more than ${found.mav} (MAV).` : "";
  const coarse = found.fineEnough || !found.tolerable ? "" : made("strong", "", " The scale’s step is too coarse to check this label.");
  box.replaceChildren(
    made("p", "", made("b", "", `Net content against ${found.label}: `), mean, found.deviation ? `, spread ${found.deviation}` : "", `, ${found.count} weighed. `, made(found.keepsTheRules ? "b" : "strong", "", found.keepsTheRules ? "Keeps the rules." : "Does not keep the rules."), rules, mav, coarse),
    made("p", "", found.aim
      ? `Aim the next ones at ${found.aim}, ${words.rule[found.aimRule]}; from ${found.fillsLookedAt} of your fills.`
      : `What to aim at shows after five fills of yours; there are ${found.fillsLookedAt}.`));
}

function lots() {
  $("lots").replaceChildren(...sheet.lots.map(lot => {
    const all = lot.vessels.length === sheet.filled;
    const where = lot.vessels.length ? (all ? "all vessels" : `vessels ${lot.vessels.join(", ")}`) : "no vessel";
    return cells(document.createElement("tr"), "td", lot.material, lot.unknown ? made("strong", "", "unknown") : made("b", "", lot.lot), lot.amount, where);
  }));
}

function moments() {
  $("moments").replaceChildren(...sheet.moments.map(moment => {
    const about = moment.what === "temperature" ? `${moment.about} °C` : moment.about;
    return cells(document.createElement("tr"), "td", when(moment.time).time, words.moment[moment.what], about);
  }));
}

function deviations() {
  const lines = sheet.deviations.map(each => {
    const values = { ...each, choice: words.choice[each.choice] ?? each.choice };
    return made("li", "", made("span", "at", when(each.time).time), ` ${fill(words.deviation[each.kind], values)}`, each.reason ? made("b", "", `; reason: ${each.reason}`) : "");
  });
  const struck = sheet.struck.map(line => made("li", "", made("span", "at", when(line.time).time), ` ${line.name}${line.kind === "vessel" ? ` ${line.number}` : ""}: `, made("s", "", line.net), ` ${remarks(line)}`));
  $("deviations").replaceChildren(...(lines.length + struck.length ? [...lines, ...struck] : [made("li", "", "None.")]));
}

function notes() {
  const remarks = sheet.notes.map(note => made("li", "", made("span", "at", `${when(note.time).day} ${when(note.time).time}`), ` ${note.text}${same(note.person)}${note.corrected ? ", corrected" : ""}`));
  const corrections = sheet.corrections.map(each => made("li", "", made("span", "at", `${when(each.time).day} ${when(each.time).time}`), ` Correction ${each.entry} of entry ${each.corrects}: ${words.what[each.what]}${same(each.material)} `, made("s", "", each.was || "unknown"), ` ${each.now}; reason: ${each.reason}${same(each.person)}`));
  $("notes").replaceChildren(...remarks, ...corrections);
  $("notes-section").hidden = remarks.length + corrections.length === 0;
}

function record() {
  $("record").replaceChildren(
    `${sheet.practice ? "Practice journal" : "Record"} of ${sheet.entries} entries; this batch begins with entry ${sheet.firstEntry}. Head `,
    made("span", "hash", sheet.head),
    ". Kept elsewhere, it shows at any audit whether entries were cut off or written anew.");
}

/** What can be corrected, as choices: each weight, each lot, each note. */
function corrigible() {
  const all = [...sheet.parts.flatMap(part => part.lines), ...sheet.vessels];
  const option = (what, entry, words, was, material = "") => {
    const made = new Option(words, `${what} ${entry}`);
    Object.assign(made.dataset, { what, entry, was, material });
    return made;
  };
  const start = sheet.lots.filter(lot => lot.amount === "").map(lot => option("lot", sheet.firstEntry, `Lot of ${lot.material}: ${lot.lot || "unknown"}`, lot.lot, lot.material));
  const weighed = all.filter(line => line.kind !== "vessel").flatMap(line => line.lotNumbers.map(lot => option("lot", line.entry, `Lot of ${line.name}: ${lot || "unknown"}`, lot)));
  const weights = all.map(line => option("weight", line.entry, `Net weight in grams, ${line.name}${line.kind === "vessel" ? ` ${line.number}` : ""}: ${line.net}`, line.grams));
  const notes = sheet.notes.map(note => option("note", note.entry, `Note: ${note.text}`, note.text));
  $("correct-form").elements.entry.replaceChildren(...weighed, ...start, ...weights, ...notes);
}

async function write(command, fields) {
  const answer = await say(command, { batch: sheet.code, ...fields });
  $("answer").textContent = answer.done ? "Written down." : answer.words ? text(answer.words) : answer.error;
  if (answer.done) await show();
  return answer.done;
}

const typed = form => Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, value.trim()]));

$("note-form").addEventListener("submit", async event => {
  event.preventDefault();
  const form = event.target;
  if (await write("note", typed(form))) form.reset();
});

$("correct-form").addEventListener("submit", async event => {
  event.preventDefault();
  const form = event.target;
  const { what, entry, was, material } = form.elements.entry.selectedOptions[0].dataset;
  const { now, reason, person } = typed(form);
  if (await write("correct", { what, entry, was, material, now, reason, person })) form.reset();
});

$("claim-form").addEventListener("submit", event => {
  event.preventDefault();
  location.search = new URLSearchParams({ code, label: typed(event.target).label });
});

$("print").addEventListener("click", () => print());

async function show() {
  const query = new URLSearchParams({ code, label });
  sheet = await ask(`api/batch?${query}`);
  $("to-labels").href = `labels.html?${query}`;
  $("claim-form").elements.label.value = sheet.label.stated;
  head();
  $("parts").replaceChildren(...sheet.parts.flatMap(partRows));
  loads();
  $("vessels").replaceChildren(...sheet.vessels.map(vessel));
  $("vessels").classList.toggle("many", sheet.vessels.length > 12);
  $("vessels-section").hidden = sheet.vessels.length === 0;
  content();
  lots();
  moments();
  deviations();
  notes();
  record();
  corrigible();
  $("sheet").hidden = false;
  $("write").hidden = false;
}

show().catch(failed);
