// The line to the station: the newest view, and word when the line is silent. The page keeps no other truth.

import { inUnit } from "./light.js";

const SILENCE_MILLIS = 1300;     // the station speaks every 500 ms at the latest
const GIVE_UP_MILLIS = 4000;     // a line this silent is opened anew
const LOOK_MILLIS = 100;

export function followStation({ onView, onLost }) {
  let source;
  let lastHeard = performance.now();
  let opened = 0;
  let lost = false;

  /** Opens the line, or opens it anew. */
  const open = () => {
    opened = performance.now();
    source?.close();
    source = new EventSource(`api/stream${inUnit()}`);
    source.onmessage = event => {
      lastHeard = performance.now();
      lost = false;
      onView(JSON.parse(event.data), lastHeard);
    };
  };

  const look = () => {
    const now = performance.now();
    if (now - lastHeard < SILENCE_MILLIS) return;
    if (!lost) {
      lost = true;
      onLost();
    }
    if (now - Math.max(lastHeard, opened) > GIVE_UP_MILLIS) open();
  };

  open();
  setInterval(look, LOOK_MILLIS);
  addEventListener("pagehide", () => source.close());
  addEventListener("pageshow", event => { if (event.persisted) open(); });
  return open;
}
