// The ways on, where one must be chosen: what each costs, and why one is closed.

import { $, element, renew, show } from "./dom.js";
import { text } from "./words.js";

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
