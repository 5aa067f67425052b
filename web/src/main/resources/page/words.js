// From a key and its values to a sentence.

import { messages } from "./messages.js";

const missing = new Set();

/** The sentence of a Say, or of a key with values. A key without a sentence shows itself, and is told once. */
export function text(say, values = {}) {
  const key = typeof say === "string" ? say : say.key;
  const fill = typeof say === "string" ? values : say.with;
  const sentence = messages[key];
  if (sentence === undefined) {
    if (!missing.has(key)) console.error(`no message for '${key}': add it to messages.js`);
    missing.add(key);
    return key;
  }
  return sentence.replace(/\{([\w-]+)\}/g, (whole, name) => fill[name] ?? whole);
}
