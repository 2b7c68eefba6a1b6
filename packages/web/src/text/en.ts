// Every word on a screen that does not come from the knowledge or from the engine.
import type { IgnitionKind, Layout } from "@half-order/core";

export const NAME = "Half-Order";

/** Alternatives as a phrase: "2", "2 or 5", "1, 2 or 5". */
export function either(words: readonly (string | number)[]): string {
  const head = words.slice(0, -1).join(", ");
  return head === "" ? words.join("") : `${head} or ${words[words.length - 1]}`;
}

/** Names as a phrase: "2", "2 and 5", "1, 2 and 5". */
export function list(words: readonly (string | number)[]): string {
  const head = words.slice(0, -1).join(", ");
  return head === "" ? words.join("") : `${head} and ${words[words.length - 1]}`;
}

export const START = {
  title: "The engine shakes. Which part is it?",
  lead: "Say what you see and hear. The page weighs every part at every place, says what is likely and why, and what the hand does next.",
  ask: "How many cylinders has it?",
  other: "Or begin with",
  demo: "An invented engine",
  demoMore: "to try the page out",
  sketch: "An engine of your own",
  sketchMore: "type its firing order",
  file: "A case file",
  fileMore: "opened on this device, sent nowhere",
  cases: "All cases",
  hand: "What you have at hand",
  handMore: "tools, place, skill, prices",
  offline: "The whole page is on this device now: it works without a network.",
  notOffline:
    "This page needs its network: only from a secure address (https) can a browser keep it.",
  dial: "The firing dial of an invented engine: each cylinder at the angle at which it fires.",
};

export const SAFE = {
  title: "Stopped somewhere safe?",
  /** The caution that belongs to the title. */
  caution: "traffic",
  inFull: "Read in full",
};

export const PICK = {
  layout: "How do the cylinders stand?",
  layouts: { inline: "In one row", v: "In a V", flat: "Flat, side against side" } satisfies Record<
    Layout,
    string
  >,
  /** As a name, with the number of cylinders. */
  layoutNames: {
    inline: (n) => `Inline ${n}`,
    v: (n) => `V${n}`,
    flat: (n) => `Flat ${n}`,
  } satisfies Record<Layout, (n: number) => string>,
  kindNames: {
    distributor: "distributor",
    pack: "coil pack",
    rail: "coil rail",
    hybrid: "coils on every other plug",
    "coil-per-plug": "coil on each plug",
  } satisfies Record<IgnitionKind, string>,
  ignition: "How do the plugs get their spark?",
  ignitionHelp: "Look under the cover on top of the engine, with the engine off.",
  kinds: {
    distributor: ["One coil and a distributor", "A round cap with a cable to each plug."],
    pack: [
      "Double coils in a block",
      "A block with a tower and a cable for each plug, no round cap.",
    ],
    rail: [
      "A coil rail",
      "One long bar bolted over the plugs, with one plug-in connector, no cables.",
    ],
    hybrid: [
      "A coil on every other plug",
      "From each coil one cable leads to the plug of its companion, seldom the next one.",
    ],
    "coil-per-plug": [
      "A coil on each plug",
      "As many single coils as plugs, each with its own connector.",
    ],
  } satisfies Record<IgnitionKind, readonly [string, string]>,
  order: "In which order do they fire?",
  orderHelp:
    "It may be cast on the intake or printed in the manual. Without it the page weighs every order that fits.",
  unknownOrder: "I don't know",
  unknownLayout: "Can't tell",
  unknownIgnition: "Can't tell",
  otherOrder: "Another order",
  pairs: (pairs: string): string => `${pairs} share a coil`,
  uneven: (degrees: readonly number[]): string => `unevenly, ${degrees.join("° and ")}° apart`,
};

export const QUESTION = {
  step: (n: number, of: number): string => `Question ${n} of at most ${of}`,
  own: "Finding",
  cannotTell: "Can't tell",
  none: "None of these",
  these: (n: number): string => (n === 1 ? "Only the one ticked" : `The ${n} ticked, no others`),
  keepTicks: "Not sure yet: keep the ticks, go on",
  yes: "Yes",
  no: "No",
  back: "Back",
  skip: "Skip to the ranking",
  nav: "Back, or to the ranking",
  remove: "Take this answer back",
  done: "Done",
};

export const CODES = {
  tap: "Tap the cylinders that a misfire code names",
  tapHelp: (code: string, name: string): string =>
    `The last two digits are the cylinder: ${code} is cylinder ${name}.`,
  cylinder: (name: string, code: string): string => `Cylinder ${name}, code ${code}`,
  several: (code: string): string => `${code}, misfire on several or at random`,
  more: "Other codes",
  moreHelp: "As the reader shows them, such as P0171 P0420.",
  these: (n: number): string => (n === 1 ? "This is the only code" : `These ${n} are all`),
  none: "Read, and none is stored",
  cannotTellMore: "not read, no reader at hand",
  wrong: (words: string): string =>
    `Not a code: ${words}. A code is a letter and four signs, such as P0171.`,
};

export const RANKING = {
  title: "What it probably is",
  was: "What it probably was",
  before: "Before any answer",
  beforeMore: "what such engines come in with",
  so: "Likely so far",
  notYet: "Nothing stands out yet",
  unproven: "Repaired, not proven yet",
  proven: "Repaired and proven",
  see: "The ranking",
  mended: "Mended",
  unconfirmed: (ask: string): string => `Ticked, and not weighed yet: ${ask}`,
  somethingElse: "Nothing this catalogue holds",
  somethingElseAbout: "A fault that the page does not know.",
  more: (n: number): string => `${n} less likely ones`,
  fewer: "Only the likeliest",
  asNumber: "as a number",
  inWords: "in words",
  partOf: (part: string, of: string): string => `${part} of ${of}`,
  allAlike: (part: string): string => `Every ${part} alike`,
  likeliest: (name: string, others: number): string =>
    `${name}, or ${others === 1 ? "one other way" : `${others} other ways`}`,
  ways: "Above: failed in whatever way. Here: each way by itself.",
  each: "each",
  weighing: "Weighing …",
};

export const PICTURE = {
  dial: "Firing dial: once round is 720° of the crank",
};

export const LEDGER = {
  cylinder: (name: string): string => `cylinder ${name}`,
};

export const ADD = {
  title: "Add a finding",
};

export const ANSWERS = {
  none_: "none",
  save: "Save as a file",
  link: (n: number): string => `Answers (${n})`,
};

export const PAGE = {
  nav: "Ways",
  next: "Next step",
  more: "More",
  skip: "To the matter itself",
  act: "What is asked or done",
};

export const UNDO = { undo: "Undo", redo: "Redo" };

export const LAZY = {
  coming: "Coming …",
  failed: "This part of the page could not be loaded. All answers are kept.",
  again: "Load the page again",
};

export const CASE_NAME = {
  unnamed: (cylinders: number): string => `${cylinders} cylinders`,
};
