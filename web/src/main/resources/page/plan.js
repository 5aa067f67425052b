// What goes into the pot: a plan file in, its sum step by step out. The station plans; the page only shows.

import { $, ask, cells, failed, made } from "./rows.js";
import { text } from "./words.js";

let order = null;

const percent = decimal => `${Number((Number(decimal) * 100).toFixed(4))} %`;
const grams = exact => text("page.plan-grams", { grams: Number(Number(exact).toFixed(4)) });
const row = (...texts) => cells(document.createElement("tr"), "td", ...texts);
const basis = of => text(of === "total" ? "basis.of_total" : "basis.of_wax");
const share = stated => `${percent(stated.decimal)} ${basis(stated.of)}`;

function take(json) {
  order = json;
  $("order-form").elements.vessels.value = order.batch?.vessels ?? "";
  $("plan-it").disabled = false;
  $("empty").hidden = true;
  $("answer").textContent = text("page.plan-taken", { name: order.recipe?.name ?? "" });
}

$("example").addEventListener("click", async () => {
  try {
    take(await ask("api/plan-example"));
  } catch (error) {
    failed(error);
  }
});

$("order-form").elements.file.addEventListener("change", async event => {
  const [file] = event.target.files;
  if (!file) return;
  $("failed").hidden = true;
  try {
    take(JSON.parse(await file.text()));
  } catch {
    failed(new Error(text("page.plan-no-json", { file: file.name })));
  }
});

$("order-form").addEventListener("submit", async event => {
  event.preventDefault();
  const vessels = Number(event.target.elements.vessels.value);
  const batch = vessels > 0 ? { ...order.batch, vessels } : order.batch;
  $("failed").hidden = true;
  $("plan").hidden = true;
  try {
    const response = await fetch("api/plan", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ ...order, batch }) });
    const plan = await response.json();
    if (!response.ok) throw new Error(plan.error);
    show(plan);
  } catch (error) {
    failed(error);
  }
});

function show(plan) {
  const { total } = plan;
  $("verdict").textContent = text(plan.verdict === "refused" ? "page.plan-refused" : "page.plan-planned", { name: plan.recipe.name });
  $("findings").replaceChildren(...plan.findings.map(finding => made("li", "", made("strong", "", text(`severity.${finding.severity}`)), ` ${finding.subject}: ${finding.words}`, made("small", "said", ` ${finding.asks} (${finding.source}).`))));
  $("total").replaceChildren(
    row(text("page.plan-fill"), grams(total.fill), total.fillKnownBy ?? ""),
    row(text("page.plan-fills"), grams(total.fills), `${total.vessels} × ${grams(total.fill)}`),
    row(text("page.plan-losses"), grams(total.losses), text("page.plan-loss-sum", { pots: plan.charges.length, pot: total.lossPerPot, vessels: total.vessels, vessel: total.lossPerVessel })),
    row(made("strong", "", text("page.plan-total")), made("strong", "", grams(total.total)), `${grams(total.fills)} + ${grams(total.losses)}`));
  $("parts").replaceChildren(...plan.parts.map(part => row(
    part.name,
    share(part.stated),
    `${percent(part.ofWax.decimal)} ${basis("wax")} = ${percent(part.ofTotal.decimal)} ${basis("total")}`,
    made("strong", "", grams(part.exact)),
    part.otherMeaning ? text("page.plan-other", { share: share(part.otherMeaning.stated), amount: grams(part.otherMeaning.exact) }) : "")));
  $("load").textContent = plan.recipe.oilsOfWax ? text("page.plan-load", { wax: percent(plan.recipe.oilsOfWax.decimal), total: percent(plan.recipe.oilsOfTotal.decimal) }) : "";
  $("pots").replaceChildren(...plan.charges.map(pot));
  $("plan").hidden = false;
  $("verdict").tabIndex = -1;
  $("verdict").focus();
}

function pot(charge, at) {
  const title = made("h3", "", text("page.plan-pot", { pot: charge.pot, vessels: charge.vessels, contents: grams(charge.contents), gross: grams(charge.gross) }));
  title.id = `pot-${at}`;
  const table = made("table", "",
    made("thead", "", cells(document.createElement("tr"), "th", ...["part", "exact", "weigh", "where"].map(column => text(`page.plan-${column}`)))),
    made("tbody", "", ...charge.parts.map(part => row(part.name, grams(part.exact), made("strong", "", `${part.shown} g`), text(part.into === "cup" ? "page.plan-cup" : "page.plan-in-pot", { scale: part.scale })))));
  for (const head of table.querySelectorAll("th")) head.scope = "col";
  const frame = made("div", "wide", table);
  frame.tabIndex = 0;
  frame.setAttribute("role", "group");
  frame.setAttribute("aria-labelledby", title.id);
  return made("div", "", title, frame);
}

$("example").disabled = false;
