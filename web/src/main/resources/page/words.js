// From a key and its values to a sentence.

import { figure } from "./light.js";
import { messages } from "./messages.js";

const told = new Set();

function tell(fault) {
  if (!told.has(fault)) console.error(`${fault}: mend messages.js`);
  told.add(fault);
}

/** The sentence of a Say, or of a key with values. A key without a sentence shows itself, and is told once on the console. */
export function text(say, values = {}) {
  const key = typeof say === "string" ? say : say.key;
  const fill = typeof say === "string" ? values : say.with;
  const sentence = messages[key];
  if (sentence === undefined) {
    tell(`no sentence for '${key}'`);
    return key;
  }
  return sentence.replace(/\{([\w-]+)\}/g, (whole, name) => {
    if (fill[name] === undefined) tell(`'${key}' is sent without ${whole}`);
    return fill[name] === undefined ? whole : figure(String(fill[name]));
  });
}
