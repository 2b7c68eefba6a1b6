// The words of what stands beside a ranking: a conflict, what cannot be told apart, orders that may be.
import type { Basis } from "@half-order/core";

/** Where a weight comes from. */
export const GROUNDS = {
  published: "published",
  "common practice": "common practice",
  memory: "estimate",
} satisfies Record<Basis, string>;

/** The same in a sentence. */
export const GROUNDS_SAY = {
  published: "Somebody measured or counted it and printed the number.",
  "common practice":
    "The trade at large does and says it so; the number that it got here is chosen to fit.",
  memory:
    "Nobody counted it: it is a number written down from what is remembered of the trade, and may well be off by half or by double.",
} satisfies Record<Basis, string>;

export const NOTES = {
  because: "Because",
  mend: "What mends it",
  look: "Look first",
  atMark: "At the mark that was tapped",
  conflict: "The answers disagree",
  conflictBody: (db: string): string =>
    `Together they are less likely than each on its own (${db} dB). One of them may be a slip, or two things are wrong. Before any part is bought, look again at:`,
  lookAgain: "Look at it again",
  apart: (n: number): string =>
    n === 1 ? "Cannot be told apart yet: 1 group" : `Cannot be told apart yet: ${n} groups`,
  apartBody: "No answer so far speaks for one against the other:",
  or: " · ",
  putRight: "Put right as well",
  putRightBody: "so that the new part lives",
  orders: "The firing order is not known",
  ordersBody: (n: number): string => `${n} fit. What is first depends on it:`,
  likeliestOrder: (order: string, chance: string): string => `Likeliest: ${order}, ${chance}.`,
  ifOrder: (order: string): string => `If it is ${order}`,
  share: (pairs: string): string => `then ${pairs} share a coil`,
  drawnOrder: "Drawn",
  draw: "Draw it",
  isOrder: "It is this one",
  firstThen: (name: string): string => `First then: ${name}.`,
  sure: "How sure is this?",
  sureOfAll: "How sure is the first place, if all of them are somewhat off?",
  sureMore: "what the first place hangs on, and how little would change it",
  searched: (places: number): string => `${places} faults at their places weighed`,
  unsearched: (bound: string): string => `not searched: ${bound}`,
  estimates:
    "The weights are estimates, not measurements. The vehicle maker's manual and licensed technicians overrule this page.",
};
