// What the maker says, sent to the station. Each press has an id, so that sending it again does not do it again.

import { inUnit } from "./light.js";

const TRIES = 3;
const BETWEEN_TRIES_MILLIS = 400;

function newId() {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), each => each.toString(36).padStart(2, "0")).join("");
}

const FIGURES = ["net", "amount", "known", "celsius"];

/** Sends a command; answers {done, words} or {done: false, error}. A figure may be typed with a decimal comma. */
export async function say(command, fields = {}) {
  const plain = { ...fields };
  for (const name of FIGURES) if (plain[name]) plain[name] = plain[name].replace(/^(-?\d+),(\d+)$/, "$1.$2");
  return post(`api/say${inUnit()}`, { id: newId(), command, ...plain });
}

/** Posts JSON, again with the same id where the line failed. */
export async function post(path, body) {
  for (let attempt = 1; ; attempt++) {
    try {
      const response = await fetch(path, {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(body),
      });
      const answer = await response.json();
      return { done: false, ...answer };
    } catch {
      if (attempt === TRIES) return { done: false, words: { key: "page.not-sent", with: {} } };
      await new Promise(later => setTimeout(later, BETWEEN_TRIES_MILLIS));
    }
  }
}
