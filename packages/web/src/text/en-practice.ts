// The words of practising: a hidden fault, what is asked and checked, and both ways beside one another.
import type { CylinderName } from "@half-order/core";
import { list } from "./en.ts";
import { CHECK } from "./en-check.ts";
import { sayMinutes } from "./en-mend.ts";

/** To the minute, so that steps add up by eye; from an hour on in hours. */
export function sayCost(minutes: number): string {
  return minutes < 60 ? CHECK.minutes(minutes) : sayMinutes(minutes);
}

interface StepAt {
  readonly name: string;
  readonly cylinders: readonly CylinderName[];
}

/** A check with the cylinders that it looks at; none where it looks at the whole engine. */
export function sayStep({ name, cylinders }: StepAt): string {
  if (cylinders.length === 0) return name;
  return `${name}: ${cylinders.length === 1 ? "cylinder" : "cylinders"} ${list(cylinders)}`;
}

export const PRACTICE = {
  title: "Look for a hidden fault",
  lead: "A fault is hidden in a made-up engine. Read the story, check what you like, then say what you would mend. Afterwards your way stands beside that of this page.",
  simulated:
    "No real car: a physics model breaks the part and answers, and minutes and chances are estimates. Every tool lies ready, for you and for the page. The ranking stays out of sight, unless you look.",
  engine: (name: string): string => `Engine: ${name}. Take another`,
  another: "Hide another fault",
  working: "Working it out …",
  comparing: "Working out both ways …",
  broke: "That did not work",
  wrongEngine: (id: string): string =>
    `The address names an engine that is not known here: “${id}”. A fault is hidden in another engine.`,
  wrongSeed: (written: string): string =>
    `The address names the fault by “${written}”, which is no whole number of up to nine digits. Any fault is hidden instead.`,
  stepsLeftOut: "What the address says was done is left out.",
  wrongStep: (written: string): string =>
    `The address holds a step that cannot be read, and it is left out: “${written}”.`,
  afterRepair: (written: string): string =>
    `The address goes on after the repair, which ends the search. Left out: “${written}”.`,

  story: "What the owner tells",
  storyHelp: "With what the code reader shows.",
  log: "What was checked",
  logNone: "Nothing yet.",
  total: (minutes: string): string => `Checks so far: ${minutes}.`,
  isKnown: "Nothing of it is news.",
  sawNothing: "There was nothing to be seen.",
  peek: "Look at the ranking",
  peekHelp: "It costs nothing, and is noted on your way.",
  peeked: "Looked at the ranking",
  check: "Check something",
  mend: "I would mend this",
  mendHelp: "One repair: it ends the search and shows what it was, mended or not.",
  find: { check: "Find a check by a word", repair: "Find a repair by a word" },
  found: (n: number): string => (n === 1 ? "1 found" : `${n} found`),
  group: (tool: string, n: number): string => `With ${tool} (${n})`,
  range: (least: string, most: string): string => `${least} to ${most}`,
  allRepairs: (n: number): string => `All repairs (${n})`,
  opens: (what: string): string => `First: ${what}.`,
  how: "How",
  act: { check: "Check it", repair: "Mend it" },
  actAt: { check: "Check it at cylinder", repair: "Mend it at cylinder" },
  together: "(what shares a coil is looked at together)",

  was: "What it was",
  mends: (repairs: string): string => `What mends it: ${repairs}.`,
  curer: (name: string, chance: string): string => `${name}, ${chance}`,
  mendsNone: "No repair of the catalogue mends it on this engine.",
  reaches: (name: string, chance: string): string =>
    `The repair that was chosen: ${name}. It cures this with the chance: ${chance}.`,
  misses: (name: string): string =>
    `The repair that was chosen: ${name}. It does not reach this, and the engine would miss as before.`,
  ways: "Both ways",
  waysHelp:
    "After each step: how probable the ranking held the true fault, by what was known by then. The page goes on until the engine runs right, or it is handed over; a repair is taken to cure where that is more likely than not.",
  held: (chance: string): string => `true fault: ${chance}`,
  learner: "The learner's way",
  library: "This page's way",
  before: "The story",
  end: {
    runs: "It runs right.",
    misses: "It misses as before: it is not mended yet.",
    "costs-more":
      "Has it done by a professional: by what was known, to go on would have cost more than that.",
    "little-mends":
      "Has it done by a professional: by what was known, hardly any repair would have mended it.",
  },
  cured: (chance: string): string => `cures it: ${chance}`,
  notCured: "does not cure it",
  checksTook: "Checks",
  allTook: {
    runs: "Until it ran right",
    misses: "With the repair, and not mended yet",
    "costs-more": "Until it was handed over",
    "little-mends": "Until it was handed over",
  },

  part: "Where the ways part",
  never: "Nowhere: the learner did what the page would have done.",
  partAt: (n: number): string =>
    n === 0 ? "At once." : n === 1 ? "After the first step." : `After ${n} steps.`,
  did: { learner: "The learner", library: "The page" },
  doesCheck: (who: string, name: string): string => `${who}: ${name}.`,
  doesMend: (who: string, name: string): string => `${who}: mend. ${name}.`,
  stops: (who: string): string => `${who} stops there, and the engine misses as before.`,
  handsOver: (who: string, why: string): string => `${who}: ${why}`,
  saves: (minutes: string): string =>
    `By what was known, with this check it was expected to run right ${minutes} sooner than with repairs alone, the time of the check counted in.`,
  savesNothing: "By what was known it told little for its time.",
  notWeighed: "By what was known it told so little that it was not weighed.",
  hoped: (chance: string): string => `By what was known it would cure: ${chance}.`,
  notHoped: "By what was known it would hardly cure.",
  doubt:
    "The page plans by chances that are estimates, and one hidden fault proves neither way the better one.",
  watch: "Break this part and watch",
  watchHelp: "There it breaks in a size of its own, perhaps in another form than here.",
};
