// Words of the pages of the record, in English: what the station names by a key.

export const words = {
  ending: { running: "under way", done: "done", scrapped: "scrapped", abandoned: "given up" },
  basis: { "of-wax": "of the wax", "of-total": "of the total" },
  kind: { wax: "wax", oil: "oil", additive: "additive", dye: "dye", more: "more of it", "split-off": "split off", part: "", vessel: "" },
  how: { settled: "", "by-hand": "by hand", "print-key": "by the scale's print key" },
  verdict: { under: "under", within: "", over: "over" },
  standing: { stands: "", "taken-back": "taken back", reopened: "weighed again" },
  what: { lot: "lot", weight: "net weight", note: "note" },
  moment: {
    started: "Started",
    prepared: "Vessels set out",
    "pot-weighed": "Pot weighed empty",
    "melt-began": "Melting began",
    "melt-ended": "Melted",
    "pot-weighed-again": "Pot weighed again",
    "mix-began": "Stirring began",
    "mix-ended": "Stirred",
    temperature: "Temperature",
    ended: "Ended",
  },
  deviation: {
    "over-poured": "Over by {amount}: {about}",
    "over-gone": "No longer over ({choice})",
    remedy: "Way on: {choice}, {amount} in all",
    "out-of-tolerance": "Outside its tolerance by {amount}: {about}",
    "over-limit": "Above the most allowed: {about} at {amount}",
    "by-hand": "Entered by hand, not weighed: {about}, {amount}",
    "taken-back": "A step taken back ({choice})",
    reopened: "Moved by {amount} after it was taken, weighed again: {about}",
    "pan-differed": "The scale held something else than expected; taken as right at {amount} ({choice})",
    "not-weighed-again": "Pot not weighed again after melting: no scale answered",
    "lot-changed": "Another lot from here on: {about}, {choice}",
    "lot-unknown": "Lot unknown: {about}",
    "temperature-outside": "Temperature {amount} outside its window ({about})",
    "mix-spilt": "Mix spilt, about: {amount}",
    "mix-short": "Too little mix for all vessels left: {amount}",
    "vessels-left-out": "Vessels left out for want of mix: {about}, with {amount} of mix left",
    scrapped: "Scrapped",
    "given-up": "Given up",
  },
  choice: {
    keep: "keep it",
    "add-more": "add more of the others",
    "take-back": "take it back",
    "split-off": "split some off",
    scrap: "scrap the batch",
    "weight-accepted": "a weight",
    "pot-tared": "the pot's own weight",
    "bottle-weighed": "a bottle's weight",
    "cup-tared": "a cup's own weight",
    "cup-tipped": "a cup weighed back",
    "vessel-tared": "a vessel's own weight",
    "pot-reweighed": "the pot weighed again",
    prepared: "vessels set out",
    "wait-ended": "a wait",
  },
  rule: {
    "mean-not-below-label": "so that the mean stays at the label or above in 39 of 40 batches",
    "single-not-below-t1": "so that single candles stay above T1 in 39 of 40 cases",
  },
};

/** A sentence with its gaps filled; empty reasons leave nothing behind. */
export function fill(sentence, values) {
  return sentence.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);
}

/** The date and time of day where the bench stands, as it was written down. */
export function when(wall) {
  return { day: wall.slice(0, 10), time: wall.slice(11, 16) };
}
