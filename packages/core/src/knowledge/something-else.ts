// What the catalogue does not hold, and how many faults come together: the numbers of the prior that
// belong to no fault.
import type { FaultRow, Grounds } from "./schema.ts";

/** Stands for every cause that is not in the catalogue; it says nothing about any finding. */
export const SOMETHING_ELSE = {
  id: "something-else",
  name: "Nothing this catalogue holds",
  about:
    "A cause that is not in the catalogue. When this leads, look at the findings again before buying anything.",
  at: "engine",
  part: { name: "unknown", at: "engine" },
  grounds: { basis: "memory", confidence: "low" },
  shares: { distributor: 30, pack: 30, rail: 30, hybrid: 30, "coil-per-plug": 30 },
  reach: {
    own: 0.5,
    group: 0.08,
    neighbours: 0.07,
    two: 0.05,
    bank: 0.03,
    random: 0.25,
    none: 0.02,
  },
  shows: 0.6,
  regimes: {
    coldStart: 0.5,
    coldIdle: 0.5,
    hotIdle: 0.5,
    cruise: 0.5,
    pull: 0.5,
    wet: 0.35,
    bumps: 0.2,
  },
  risks: [],
  signs: [],
  firstCheck: "check.codes",
  mend: "Not known.",
} as const satisfies FaultRow;

/**
 * Share of complaints with exactly two unrelated faults, before any finding. Shares answer "which one
 * is it"; read as independent rates they would make two faults at once as likely as not.
 */
export const TWO_FAULTS_SHARE = {
  share: 0.08,
  grounds: { basis: "memory", confidence: "low" },
} as const satisfies { share: number; grounds: Grounds };
