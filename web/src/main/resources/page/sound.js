// The bench by ear: ticks that quicken as the line nears, one unmistakable sign to stop, silence on the line, and an alarm that is
// none of these. Tempo carries the distance, pitch and tempo together the kind of sign. Browsers keep a page silent until it is
// touched, so sound begins with a press.

import { settings } from "./settings.js";

const TICK = 660;
const SLOW_TICK = 880;
const STOP = [1320, 880];
const TAKEN = [660, 990];
const ALARM = 520;
const ALARM_EVERY_MILLIS = 1600;
const TICKS_FAR_MILLIS = 1000;
const TICKS_NEAR_MILLIS = 220;
const SLOW_TICKS_MILLIS = 140;

let audio;
let lastCue = "none";
let lastCountIn = 0;
let due = 0;

export const soundIsOn = () => audio?.state === "running";

export async function turnSound(on) {
  if (!on) return audio?.suspend();
  audio ??= new AudioContext();
  await audio.resume();
  note(TICK, 0.08);
}

export function trySound() {
  note(STOP[0], 0.18);
  note(STOP[1], 0.35, 0.2);
}

function note(pitch, seconds, later = 0, shape = "sine") {
  if (!soundIsOn() || settings.loudness === 0) return;
  const start = audio.currentTime + later;
  const tone = new OscillatorNode(audio, { type: shape, frequency: pitch * (settings.pitch / 100) });
  const gain = new GainNode(audio, { gain: 0 });
  const loud = (settings.loudness / 100) ** 2;
  gain.gain.setValueAtTime(0, start);
  gain.gain.linearRampToValueAtTime(loud, start + 0.008);
  gain.gain.setValueAtTime(loud, start + seconds - 0.02);
  gain.gain.linearRampToValueAtTime(0, start + seconds);
  tone.connect(gain).connect(audio.destination);
  tone.start(start);
  tone.stop(start + seconds);
}

/** Called often: sounds what is due now. The permille of the fill sets how fast the ticks follow. */
export function sound(cue, permille, countInMillis, now) {
  if (!soundIsOn()) return;
  if (cue !== lastCue) {
    if (cue === "stop") trySound();
    due = now;
    lastCue = cue;
  }
  const second = Math.ceil(countInMillis / 1000);
  if (second > 0 && second !== lastCountIn) note(SLOW_TICK, 0.06);
  lastCountIn = second;
  if (now < due) return;
  if (cue === "pour" && permille > 0) {
    note(TICK, 0.05);
    const near = Math.min(1, permille / 1000);
    due = now + TICKS_FAR_MILLIS + (TICKS_NEAR_MILLIS - TICKS_FAR_MILLIS) * near;
  } else if (cue === "slow") {
    note(SLOW_TICK, 0.05);
    due = now + SLOW_TICKS_MILLIS;
  } else if (cue === "over") {
    for (const beat of [0, 0.22, 0.44]) note(ALARM, 0.16, beat, "square");
    due = now + ALARM_EVERY_MILLIS;
  }
}

/** A weight was taken. */
export function soundTaken() {
  note(TAKEN[0], 0.12);
  note(TAKEN[1], 0.22, 0.13);
}
