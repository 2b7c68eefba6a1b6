// The words of the way from the ranking to a mended engine: the next step, the repair, its proof.
import type { RepairResult, Withheld } from "@half-order/core";
import type { Disagreement } from "../state/tried.ts";

/** "3 minutes", "about 40 minutes", "about 1 h 20 min": finer would be more than anybody knows. */
export function sayMinutes(minutes: number): string {
  const whole = Math.max(1, Math.round(minutes));
  if (whole === 1) return "1 minute";
  if (whole <= 10) return `${whole} minutes`;
  const fives = Math.round(minutes / 5) * 5;
  if (fives < 60) return `about ${fives} minutes`;
  const [hours, rest] = [Math.floor(fives / 60), fives % 60];
  if (hours >= 10) return `about ${Math.round(minutes / 60)} h`;
  return rest === 0 ? `about ${hours} h` : `about ${hours} h ${rest} min`;
}

export const STEP = {
  next: "Next",
  planning: "Looking for what pays …",
  broke: "The next step cannot be worked out:",
  cylinders: (count: number, names: string): string =>
    count === 1 ? `cylinder ${names}` : `cylinders ${names}`,
  how: "How it is done, and what you found",
  others: "Something else",
  opens: "First this must come off",
  off: (what: string, n: number): string => (n === 1 ? what : `${n} times: ${what}`),
  openMinutes: (minutes: string): string => `off and on again: ${minutes}`,
  isOff: "It is off already",
  allOn: "All is back on",
  openNow: (n: number): string => (n === 1 ? "1 thing is off now." : `${n} things are off now.`),
  outcomes: "What each result would mean",
  outcomesHelp: "How likely it is, and what would then come next.",
  anythingElse: "Anything else",
  rarer: (n: number): string => (n === 1 ? "1 rarer result" : `${n} rarer results`),
  steps: "How",
  found: "What did you find?",
  foundAt: (count: number, names: string): string =>
    count === 1 ? `Cylinder ${names}` : `Cylinders ${names}`,
  noted: "Noted",
  change: "Change",
  elsewhere: "Looked at others too? Note them as well",
  notNow: "Not now, something else",
  done: "That is all I could see",
  spent: (minutes: string): string => `Spent so far: ${minutes}.`,
  expected: (minutes: string): string =>
    `Still to come: ${minutes}, with the price of parts and of a call turned into time.`,
  expectedCall: (minutes: string): string =>
    `What a professional asks is weighed like ${minutes} of work, by what an hour is taken to be worth. It is no time of your own.`,
  here: "Only what can be done at the roadside is offered. The rest is for a yard or a workshop.",
  without: (minutes: string): string => `With no further check: ${minutes}.`,
  endsInCall: (chance: string): string =>
    `With repairs alone, the chance that it ends with a professional: ${chance}.`,
  costs: "All of it is an estimate.",
  check: "Check",
  checks: "Other checks",
  saves: (minutes: string): string => `saves ${minutes}`,
  savesNothing: "tells little for its time",
  repairs: "If nothing more were checked",
  repairsHelp: "The repairs in the order that costs least. Each cures with this chance:",
  withheld: "Not offered",
  why: {
    tool: "its tool is not at hand",
    spare: "would settle it; no good part to try is at hand",
    skill: "it asks for more practice",
    place: "not at this place",
    rest: "the engine must stay off",
  } satisfies Record<Withheld["why"], string>,
  hand: "Say what is at hand: place, tools, skill",
  handOther: "Something else is at hand now",
  stopFirst: "Nothing below before this is put right.",
  stopMore: "What to do, and what lifts it",
  /** Of a check with the engine running, by what is said of driving. */
  running: {
    "stop-now": "Not now: the engine must stay off. Leave every check that needs it running.",
    "do-not-drive":
      "This is not driving, and still hard on the catalyst: start it for this check alone, in the open, for a minute at most. Not at all when it smells of petrol, smokes or knocks.",
  },
  /** Of a check with the engine off that ends with a start or a drive. */
  trial: {
    "stop-now": "The engine must stay off: leave out the start and the drive of this check.",
    "do-not-drive":
      "Where this asks for a start or a drive: do not drive. Let it idle in the open, for a minute at most, and not at all when it smells of petrol, smokes or knocks.",
  },
  backOn: "Before the engine runs again",
  backOnAll: (n: number): string => `${n} things to put back, one after the other`,
  repair: "Repair",
  price: (price: string): string => `parts for about ${price}`,
  mend: "How it is mended, and put back",
  prove: "To the drives that prove it",
  proven: "To the proof, and to close the case",
  call: "Have a professional look at it",
  callBody:
    "With what is at hand no further check and no repair pays. Somebody with the right tools comes out cheaper.",
  callHere:
    "Nothing that can be mended here pays. While you wait, these looks cost nothing and help whoever mends it:",
  callLooks: "These looks need no more than what is at hand, and help whoever mends it:",
  callHereOnly: "Nothing that can be done here pays. Have it fetched.",
  callLink: "Hand over what is known",
  shutOut: "Your answers on what is at hand leave out what could be done with more:",
  youSaid: {
    skill: (said: string): string => `Who does it: “${said}”. More practice is asked for by`,
    tool: (said: string): string => `What lies ready: ${said}. Another tool is needed for`,
    place: (said: string): string => `Where the car is: “${said}”. Not to be done there`,
  },
  changeHand: "Change these answers",
};

export const DISAGREE = {
  "two-parts":
    "The misfire moved with two different parts. It can travel with one only, unless both are bad: exchange one at a time, and look again at the last answers before any part is bought.",
  "two-places":
    "It moved at one place and stayed at another. Either two things are wrong, or one of the looks was a slip: look again before any part is bought.",
} satisfies Record<Disagreement, string>;

export const MEND = {
  unknown: "This repair cannot be done on this engine",
  cures: (chance: string): string => `It cures the engine with this chance: ${chance}.`,
  for: "What it is for",
  works: (chance: string): string => `Mended by this repair: ${chance}.`,
  forNothing: "None of the faults that are likely now. Look at the ranking before you begin.",
  opens: "What comes off",
  opensNothing: "Nothing has to come off.",
  opensNoMore: "Nothing more.",
  leftOff: "What a check before took off counts as still off. If it is not, say so:",
  stillOpen: (n: number): string =>
    n === 1
      ? "One line of the list is not ticked. Is that done too?"
      : `${n} lines of the list are not ticked. Is all of it done?`,
  allOn: "Yes, all is done, and it runs right",
  toList: "No, back to the list",
  alsoRight: "Put right as well, so that the new part lives",
  notYet: "Do not buy yet",
  notYetBody: "Dear, and hardly likely to help:",
  putBack: "Putting it back",
  putBackHelp:
    "Tick each line when it is done. The ticks are kept on this device until the result is noted.",
  waits: "waits for the line before",
  missing: "the figure is in the maker's manual",
  left: (n: number): string => (n === 1 ? "1 line is not ticked." : `${n} lines are not ticked.`),
  allTicked: "All ticked.",
  how: "How does it run now?",
  rough:
    "The first start may be rough: some idle badly for minutes while they learn anew. Judge it warm.",
  results: {
    cured: ["It runs right", "next: the drives that prove it"],
    better: ["Better, not right", ""],
    same: ["No change", ""],
    worse: ["Worse", ""],
    "came-back": ["Right at first, then it came back", ""],
  } satisfies Record<RepairResult, readonly [string, string]>,
  untried: "Not tried yet",
  untriedMore: "note that it was done",
  estimates: "Minutes and chances are estimates. The vehicle maker's service manual comes first.",
};

function allOf(drives: number): string {
  if (drives === 1) return "The drive was";
  return drives === 2 ? "Both drives were" : `All ${drives} drives were`;
}

export const PROOF = {
  title: "The proof",
  none: "No repair is noted that a drive could prove.",
  of: (name: string): string => `after: ${name}`,
  lead: (clean: number, of: number): string =>
    clean < of
      ? `${clean} of ${of} clean drives. A fault that comes and goes may only be hiding.`
      : `${allOf(clean)} clean. That is as sure as drives can make it.`,
  believed: (chance: string): string => `Believed to be mended: ${chance}.`,
  after: (chance: string): string => `After the last of them: ${chance}.`,
  before: "Before the first drive",
  beforeBody:
    "The answers from before the repair called for caution. Drive only when each of these is seen:",
  noPlan:
    "No drive can be planned: this repair is for none of the faults that were likely. Drive as before, and read the codes afterwards.",
  drive: "Each drive",
  minutes: (n: number): string => (n === 1 ? "1 minute" : `${n} minutes`),
  clear: "What must be clear",
  codes: (codes: string): string => `Codes that must not come back: ${codes}.`,
  how: (n: number): string => `How was drive ${n}?`,
  clean: "Clean",
  cleanMore: "nothing felt, counts near zero, no code",
  less: "It missed, but less",
  same: "It missed as before",
  code: "A code came back",
  takeBack: "Take the last drive back",
  drives: "Drives so far",
  driveIs: (n: number, how: string): string => `Drive ${n}: ${how}`,
  failed: {
    "came-back": "It came back. What was mended was not all of it, or not it.",
    better: "It is better, and not mended.",
    same: "It is as before.",
  },
  failedMore: "The repair is noted so, and the ranking has taken it in.",
  onward: "To the next step",
  close: "Close the case as mended",
};

export const MENDED = {
  title: "Mended",
  on: (day: string): string => `The case was closed on ${day}.`,
  done: "What was done",
  was: "What it most likely was",
  likely: (name: string, chance: string): string => `${name}: ${chance} before the repair`,
  proven: "How it was proven",
  drives: (clean: number, of: number): string =>
    clean > of ? `${clean} clean drives, where ${of} would do.` : `${clean} of ${of} clean drives.`,
  body: "Nothing is left to do here. What may still be of use:",
  record: "Note the plugs that came out",
  recordMore: "the next service is then worked out",
  noted: "The record of the plugs",
  notedMore: "they are noted; here stands the next service",
  handOver: "Print or send the case",
  handOverMore: "what was found, done and proven",
  answers: "The answers as they were given",
  reopen: "It was not mended after all: open it again",
  reopenMore: "the repair then counts as one after which it came back",
};

export const REPAIRS = {
  title: "Repairs done",
  none: "No repair is noted.",
  untried: "not tried yet",
  change: "How did it run afterwards?",
  prove: "Prove it",
  remove: "Remove",
  when: (moment: string): string => `noted ${moment}`,
};
