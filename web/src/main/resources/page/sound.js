// The bench's sounds from this device's speaker. Browsers keep a page silent until it is touched, so sound begins with a press.

import { hush, makeBeats, play, STOP, TAKEN, TRIED } from "./beats.js";
import { settings } from "./settings.js";

const beats = makeBeats();
let audio;
let played = [];

export const soundIsOn = () => audio?.state === "running";

export async function turnSound(on) {
  if (!on) return audio?.suspend();
  audio ??= new AudioContext();
  await audio.resume();
  sounds(TRIED);
}

export const trySound = () => sounds(STOP);

/** A weight was taken. */
export const soundTaken = () => sounds(TAKEN);

/** Called often: sounds what is due now. How full it is and how soon to stop set how fast the ticks follow. */
export function sound(bench, now) {
  if (!soundIsOn()) return;
  const { notes, changed } = beats.next(bench, now);
  if (changed) played = hush(played, audio.currentTime);
  sounds(notes);
}

function sounds(notes) {
  if (!soundIsOn() || settings.loudness === 0) return;
  played = played.filter(each => each.end > audio.currentTime);
  played.push(...notes.map(note => play(audio, note, audio.currentTime, settings)));
}
