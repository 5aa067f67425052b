// What the pages of the record share: asking, and building rows out of text.

import "./light.js";

const SVG = "http://www.w3.org/2000/svg";

export const $ = id => document.getElementById(id);

/** Asks the station; throws in its words. */
export async function ask(path) {
  const response = await fetch(path);
  const answer = await response.json();
  if (!response.ok) throw new Error(answer.error);
  return answer;
}

/** Shows what went wrong in place of what was asked for. */
export function failed(error) {
  const box = $("failed");
  const titled = document.querySelector("h1")?.checkVisibility();
  box.replaceChildren(made(titled ? "h2" : "h1", "", "This cannot be shown"), made("p", "", error.message));
  box.hidden = false;
}

/** An element with a class and children, of which texts are only ever text. */
export function made(name, className, ...children) {
  const element = document.createElement(name);
  if (className) element.className = className;
  element.append(...children.filter(child => child !== ""));
  return element;
}

export function drawn(name, attributes, ...children) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

export function cells(row, kind, ...texts) {
  row.append(...texts.map(text => made(kind, "", ...(Array.isArray(text) ? text : [text]))));
  return row;
}

/** The QR code of a label, by its path. */
export function qrCode(qr, title) {
  return drawn("svg", { class: "qr", viewBox: `0 0 ${qr.size} ${qr.size}`, role: "img", "aria-label": title }, drawn("path", { d: qr.path }));
}
