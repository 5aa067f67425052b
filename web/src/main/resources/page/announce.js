// What is spoken: stages and warnings, politely; an over-pour at once. Not every reading.

const polite = document.getElementById("polite");
const assertive = document.getElementById("assertive");
let spoken = "";
let alarmed = "";

/** Speaks a change of stage or a warning, once. */
export function tell(words) {
  if (words === spoken) return;
  spoken = words;
  polite.textContent = words;
}

/** Speaks an over-pour at once; empty words end it. */
export function alarm(words) {
  if (words === alarmed) return;
  alarmed = words;
  assertive.textContent = words;
}
