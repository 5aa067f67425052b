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
};
