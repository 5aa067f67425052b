// A label for each candle of a batch, to be printed and cut.

import { $, ask, drawn, failed, made, qrCode } from "./rows.js";

const asked = new URLSearchParams(location.search);
const code = asked.get("code") ?? "";
const stated = asked.get("label") ?? "";

function card(sheet) {
  const { label } = sheet;
  const warning = made("div", "warning",
    made("p", "signal", drawn("svg", { class: "sign", "aria-hidden": "true" }, drawn("use", { href: "#warning" })), made("b", "", label.signalWord)),
    made("ul", "", ...label.safety.map(message => made("li", "", message))));
  return made("li", "card",
    made("p", "product", label.product),
    made("p", "net", made("span", "small", "Net weight "), label.ounces, made("span", "metric", ` (${label.metric})`)),
    warning,
    label.trim ? made("p", "trim", label.trim) : "",
    made("div", "batch", made("span", "", "Batch ", made("b", "", sheet.code)), qrCode(label.qr, `QR code of batch ${sheet.code}`)),
    sheet.practice ? made("p", "practice", "Practice: not for sale") : "");
}

$("claim-form").addEventListener("submit", event => {
  event.preventDefault();
  location.search = new URLSearchParams({ code, label: event.target.elements.label.value.trim() });
});
$("print").addEventListener("click", () => print());

async function show() {
  const query = new URLSearchParams({ code, label: stated });
  const sheet = await ask(`api/batch?${query}`);
  $("to-sheet").href = `sheet.html?${query}`;
  $("claim-form").elements.label.value = sheet.label.stated;
  document.title = `Labels of batch ${sheet.code} · Candlebench`;
  $("title").textContent = `${sheet.filled} ${sheet.filled === 1 ? "label" : "labels"} for batch ${sheet.code}`;
  $("practice").hidden = !sheet.practice;
  $("deference").textContent = sheet.label.deference;
  $("cards").replaceChildren(...Array.from({ length: sheet.filled }, () => card(sheet)));
  $("labels").hidden = false;
}

show().catch(failed);
