// What the bench sounds like: ticks that quicken as the line nears, one unmistakable sign to stop, silence on the line, pairs of
// ticks for drop by drop, and an alarm that is none of these. Tempo carries the distance; pitch and tempo together the kind of sign.
// Nothing here knows the page: the notes can be played on any audio context, a rendered one too.

const TICK = { pitch: 660, seconds: 0.05, later: 0, shape: "sine" };
const SLOW_TICK = { ...TICK, pitch: 880 };
const DROP_TICKS = [{ ...TICK, pitch: 1100 }, { ...TICK, pitch: 1100, later: 0.12 }];
const COUNT_TICK = { ...SLOW_TICK, seconds: 0.06 };
const ALARM = [0, 0.22, 0.44].map(later => ({ pitch: 520, seconds: 0.16, later, shape: "square" }));
export const STOP = [{ pitch: 1320, seconds: 0.18, later: 0.02, shape: "sine" }, { pitch: 880, seconds: 0.35, later: 0.22, shape: "sine" }];
export const TAKEN = [{ pitch: 660, seconds: 0.12, later: 0, shape: "sine" }, { pitch: 990, seconds: 0.22, later: 0.13, shape: "sine" }];
export const TRIED = [TICK];

const FAR_MILLIS = 1000;
const NEAR_MILLIS = 220;
const SLOW_MILLIS = 90;               // at the moment to stop; where that is foreseen, slower the longer it is away
const SLOW_AHEAD_MILLIS = 2000;
const SLOW_SHARE = 0.06;
const DROPS_MILLIS = 900;
const ALARM_MILLIS = 1600;

/** Beats are given out this long before they sound, so that they keep their time though they are asked for now and then only. */
const AHEAD_MILLIS = 150;
const RISE_SECONDS = 0.008;
const FALL_SECONDS = 0.02;

/** What is beaten while a sign stands, and how often; nothing on the line itself. */
function beat({ cue, permille, stopInMillis }) {
  switch (cue) {
    case "pour":
    case "pieces": return { notes: [TICK], every: FAR_MILLIS + (NEAR_MILLIS - FAR_MILLIS) * Math.min(1, Math.max(0, permille / 1000)) };
    case "slow": return { notes: [SLOW_TICK], every: SLOW_MILLIS + SLOW_SHARE * Math.min(SLOW_AHEAD_MILLIS, Math.max(0, stopInMillis ?? SLOW_AHEAD_MILLIS)) };
    case "drops": return { notes: DROP_TICKS, every: DROPS_MILLIS };
    case "over": return { notes: ALARM, every: ALARM_MILLIS };
    default: return null;
  }
}

/** Follows the bench by ear. */
export function makeBeats() {
  let lastCue = "none";
  let lastSecond = 0;
  let due = 0;
  let armed = true;    // one sign to stop for each stream

  return {
    /** The notes to be sounded from now on, and whether beats given out before, but not heard yet, are void. */
    next(bench, now) {
      const { cue, countInMillis } = bench;
      const notes = [];
      const changed = cue !== lastCue;
      if (changed) {
        if (cue === "stop" && armed) notes.push(...STOP);
        if (cue === "stop") armed = false;
        if (cue === "pour" || cue === "slow" || cue === "drops") armed = true;
        due = now;
        lastCue = cue;
      }
      const second = Math.ceil(countInMillis / 1000);
      if (second > 0 && second !== lastSecond) notes.push(COUNT_TICK);
      lastSecond = second;
      due = Math.max(due, now);
      for (let beaten = beat(bench); beaten && due < now + AHEAD_MILLIS; due += beaten.every)
        notes.push(...beaten.notes.map(note => ({ ...note, later: note.later + (due - now) / 1000, beat: true })));
      return { notes, changed };
    },
  };
}

/** Sounds a note on a context from a moment on, as loud (0 to 100) and as high (100 as it is written) as the maker likes it. */
export function play(context, note, at, { loudness, pitch }) {
  const start = at + note.later;
  const end = start + note.seconds;
  const loud = (loudness / 100) ** 2;
  const tone = new OscillatorNode(context, { type: note.shape, frequency: note.pitch * (pitch / 100) });
  const gain = new GainNode(context, { gain: 0 });
  gain.gain.setValueAtTime(0, start);
  gain.gain.linearRampToValueAtTime(loud, start + RISE_SECONDS);
  gain.gain.setValueAtTime(loud, end - FALL_SECONDS);
  gain.gain.linearRampToValueAtTime(0, end);
  tone.connect(gain).connect(context.destination);
  tone.start(start);
  tone.stop(end);
  return { tone, start, end, beat: note.beat === true };
}

/** Ends the beats that sound and takes back those that were given out; what is left is still to be heard. */
export function hush(played, at) {
  for (const each of played) if (each.beat && each.end > at) each.tone.stop(at);
  return played.filter(each => !each.beat && each.end > at);
}
