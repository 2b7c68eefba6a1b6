// The words of the screen that tells how firm the first place is.

export const SURE = {
  title: "How sure is this?",
  working: "Working it out …",
  progress: "How much of it is worked out",
  done: "All is worked out.",
  first: (name: string, chance: string, part?: string): string =>
    `First: ${name}, ${chance}${part === undefined ? "" : `; that part in whatever way, ${part}`}.`,
  second: (name: string, chance: string, part?: string): string =>
    `Next to it: ${name}, ${chance}${part === undefined ? "" : `; that part in whatever way, ${part}`}.`,
  nothingYet:
    "No answer is given yet. What follows is about the order in which such engines come in.",
  nothingFits: (chance: string): string =>
    `Likeliest of all is that it is nothing this catalogue holds: ${chance}. What follows is only about the first of the faults that it does hold.`,
  order: (order: string, chance: string): string =>
    `The firing order is not known. What follows takes the likeliest, ${order} (${chance}).`,
  overAll: (name: string): string => `Over all orders together comes first: ${name}.`,
  broke: "This could not be worked out",

  shaken: "If all weights are somewhat off",
  shakenBody: (times: number): string =>
    `The weights are estimates, and many may be off by half or by double. Here all of them were shaken by chance, ${times} times at each strength.`,
  shakenKin:
    "The first place stays as long as the same part holds it, whatever has failed in it: what must be done may well stay the same.",
  strength: (times: string): string => `Each off by a factor of about ${times}`,
  stays: (n: number, of: number): string => `the first place stays in ${n} of ${of}`,
  oneFault: (n: number, of: number): string => `the likeliest single fault in ${n} of ${of}; `,
  three: (n: number, of: number): string => `the same three parts lead in ${n} of ${of}`,
  /** From how often the first place stays when it is shaken a little. */
  verdict: {
    firm: "The first place stands firm against small errors of the weights.",
    fair: "The first place mostly holds. Make the check that it names before a part is bought.",
    loose:
      "The first place hangs on weights that nobody knows so well. Check, and buy no part on it yet.",
  },

  weakest: "The weakest link",
  most: "Carries the most",
  carries: "What the first place hangs on",
  carriesBody:
    "Each answer with the decibans (dB) that the first place would lose without it, the most delicate answer first; minus speaks against it. 3 dB are twice the odds, 10 dB ten times.",
  notTheColumn:
    "In the column under “Because” the same answers have other figures: there each counts on top of those before it, so that the column adds up. Here each is taken away alone while all others stay; of two answers that say the same, either can then go at little loss.",
  none: "No single answer carries it: none of their weights, however wrong, would bring another part to the first place.",
  holds: (db: string): string => `${db} dB`,
  speaksNot: "says nothing of it",
  level: (first: string): string =>
    `“${first}” is level with the first place: the smallest error decides between them.`,
  off: (db: string, times: string): string => `May be off by ${db} dB, ${times} times the odds.`,
  within: "That is no more than estimates are often off by.",
  falls: (fault: string, to: string, from: string, first: string): string =>
    `“${first}” would be first if “${fault}” brought this answer in only ${to} of cases, not in ${from}.`,
  rises: (fault: string, to: string, from: string, first: string): string =>
    `“${first}” would be first if “${fault}” brought this answer in ${to} of cases, not in ${from}.`,
  itself: (fault: string, to: string, from: string): string =>
    `“${fault}” would be first if it brought this answer in ${to} of cases, not in ${from}.`,
  without: (first: string): string => `Without this answer “${first}” comes first.`,
  lookAgain: "Look at it again",

  idle: (n: number): string =>
    n === 1 ? "1 answer that does not decide it" : `${n} answers that do not decide it`,
  idleBody:
    "No error in one of their weights, up to a factor of a thousand, would bring another part to the first place, nor would taking one of them back.",

  common: "How common the faults are",
  commonBody: "Before any answer, each fault has a share of what such engines come in with.",
  rarer: (fault: string, times: string, first: string): string =>
    `“${first}” would be first if “${fault}” were ${times} times as rare.`,
  commoner: (fault: string, times: string, first: string): string =>
    `“${first}” would be first if “${fault}” were ${times} times as common.`,
  commonerItself: (fault: string, times: string): string =>
    `“${fault}” would be first if it were ${times} times as common.`,
  commonFirm:
    "It would have to be wrong by more than a factor of a thousand to bring another part to the first place.",

  estimates:
    "This tells how far the ranking leans on single numbers, not whether it is right. A check tells that; the vehicle maker's manual and licensed technicians overrule this page.",
};
