// What the bench says, in English: key → sentence, with {placeholders}. Masses come with their unit.
// One sentence, one thing to do; a verb and a thing.

export const messages = {
  // What to do now.
  "now.idle": "Choose a recipe and start a batch.",
  "now.place-pot": "Put the empty pot on the scale.",
  "now.pour": "Pour {part}.",
  "now.done": "Done. The batch is written down.",

  // A settled weight is about to be taken.
  "count-in.pot": "Taking the pot's own weight",
  "count-in.weight": "Taking this weight",

  // What the undo key would take back.
  "undo.pot-tared": "Take the pot's weight back",
  "undo.weight-accepted": "Take the last weight back",

  // Why a command was not done.
  "refused.no-batch": "No batch is running. Start one first.",
  "refused.batch-runs": "A batch is running. Finish it or give it up first.",
  "refused.no-recipe": "There is no recipe called {recipe}. Choose one from the list.",
  "refused.vessels": "A batch has 1 to {most} vessels.",
  "refused.place-pot": "Put the empty pot on the scale first.",
  "refused.not-now": "That key does nothing just now.",
  "refused.lot": "Give the material and its lot, each on one line.",
  "refused.no-weight-for-lot": "Wait until the scale shows a weight, then name the new lot: what is in the pot so far came from the old one.",
  "refused.negative-amount": "An amount received is zero (not known) or more.",
  "refused.note": "A note has 1 to {most} characters.",
  "refused.reason": "Say why, in a few words: a correction keeps its reason.",
  "refused.correct-when-done": "Finish the batch first. Its weights can be corrected after that.",
  "refused.nothing-to-undo": "There is nothing left to take back.",

  // What stands in the number's place.
  "trouble.no-line": "The scale does not answer. Check its cable and its power. Nothing is lost.",
  "trouble.nothing-heard": "Nothing heard from the scale yet.",
  "trouble.old": "The scale has gone quiet. Wake it up; we go on from where we were.",
  "trouble.overload": "Too heavy for this scale. Take something off.",
  "trouble.underload": "The scale reads below zero. Press its zero key with nothing on it.",
  "trouble.fault": "The scale reports a fault. Switch it off and on.",
  "trouble.no-unit": "The scale does not say its unit. Choose the unit in the settings.",
  "trouble.blank": "The scale shows no number.",

  // The page itself.
  "page.connecting": "Looking for the station…",
  "page.lost": "The page has lost the station. The number is hidden. Nothing is lost: it comes back by itself.",
  "page.not-sent": "That did not reach the station. Look whether it runs, then press again.",
  "page.sound-off": "Sound is off: turn on",
  "page.sound-on": "Sound is on",
  "page.reason": "Why? It goes into the record.",
  "page.reason-needed": "Write why, then press again.",
  "page.take": "Take this way",
  "page.impossible": "Not possible: {why}",
  "page.lot": "Lot of {material}",
  "page.vessels": "{count} vessels",
  "page.load": "{load} % {basis} ({other} % {otherBasis})",
  "page.recorded": "Recorded: {what}",
  "page.entries": "{count} entries in the record",
  "page.last-seen": "Last seen, {age} s ago: ",
  "page.by-hand": "by hand",
  "page.done-before": "{count} done",
  "page.to-come-after": "{count} to come",
  "page.undo": "Undo",
  "page.seconds": "{seconds} s",
  "page.no-ports": "This computer shows no serial port. Plug the scale's cable in; the list renews itself.",
  "page.seek-how": "Then start the station with the port's name and the scale's format. To try everything without a scale, start the practice bench:",
  "page.picture-fill": "Filled to {percent} per cent of the line",
  "page.picture-empty": "Nothing is being filled",

  // How far the number may be trusted.
  "trust.live": "still",
  "trust.moving": "moving",
  "trust.assumed": "unit assumed",
  "trust.stale": "The number is {age} s old. Wait, or wake the scale.",
  "trust.none": "No number from the scale yet.",

  // What the number is.
  "figure.to-go": "to go",
  "figure.past": "past the line",
  "figure.over": "over the target",
  "amounts": "{net} {unit} in, of {target} {unit}",
  "amounts.allowance": " · {under} under to {over} over is right",
  "amounts.exact": " · exactly {exact} {unit}",

  // Signals.
  "cue.pour": "Pour",
  "cue.slow": "Slow down",
  "cue.stop": "Stop",
  "cue.stop-in": "Stop in {seconds}",
  "cue.drops": "{count} drops",
  "cue.drop": "1 drop",
  "cue.drops-few": "By drops",
  "cue.pieces": "Piece by piece",
  "cue.hold-still": "Hold still",
  "cue.over": "Too much",
  "cue.waiting": "Waiting for you",

  // How a line to a scale is.
  "link.connecting": "opening",
  "link.live": "live",
  "link.silent": "silent",
  "link.garbled": "not understood",
  "link.lost": "unplugged",
  "link.held": "held by another program",
  "link.denied": "not permitted",
  "link.telnet": "speaks telnet",

  // What a load is a share of.
  "basis.of_wax": "of wax",
  "basis.of_total": "of total",

  // How a part stands.
  "part.done": "done",
  "part.now": "now",
  "part.to-come": "to come",
  "part.dropped": "left out",
  "verdict.under": "under",
  "verdict.within": "within",
  "verdict.over": "over",
};
