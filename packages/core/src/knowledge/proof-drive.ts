// What proves a repair: what a drive must contain, what must stay clear, and for how long.
import type { Grounds, Regime } from "./schema.ts";

/** One stretch of a proving drive. */
export interface ProofStep {
  readonly regime: Regime;
  readonly say: string;
  readonly minutes: number;
  readonly cautions: readonly string[];
}

/** Of the minutes, and of what belongs into a drive. */
export const PROOF_GROUNDS: Grounds = { basis: "memory", confidence: "low" };

/** In the order in which they are driven. */
export const PROOF_STEPS: readonly ProofStep[] = [
  {
    regime: "coldStart",
    say: "Start it after a night outside and listen to the first minute.",
    minutes: 1,
    cautions: ["exhaust-gas"],
  },
  {
    regime: "coldIdle",
    say: "Let it idle cold, lamps and heater fan on.",
    minutes: 3,
    cautions: ["exhaust-gas"],
  },
  {
    regime: "wet",
    say: "Drive in rain or on a wet road, or on the damp morning after a wash.",
    minutes: 10,
    cautions: ["traffic"],
  },
  {
    regime: "bumps",
    say: "Drive over a rough road, turn both ways at full lock, engage each gear.",
    minutes: 5,
    cautions: ["traffic"],
  },
  {
    regime: "pull",
    say: "Pull from low revs in a high gear up to about 90 km/h, three times. A blinking lamp ends it.",
    minutes: 3,
    cautions: ["traffic", "blinking-lamp"],
  },
  {
    regime: "cruise",
    say: "Hold a steady speed of 80 to 90 km/h, then coast down in gear.",
    minutes: 6,
    cautions: ["traffic"],
  },
  {
    regime: "hotIdle",
    say: "Let it idle hot, in gear and in neutral, air conditioner on and off.",
    minutes: 2,
    cautions: ["exhaust-gas"],
  },
];

/** What every proving drive holds, so that the car's own monitors get to run. */
export const ALWAYS_DRIVEN: readonly Regime[] = ["cruise", "hotIdle"];

/** A regime belongs into the drive when the fault shows at least this part of its hardest there. */
export const REGIME_COUNTS_FROM = 0.5;

/**
 * Stretches that must be waited for: a night, or rain. Where the fault shows at least as hard in one that can be
 * driven at will, they belong into the drive only when an answer has tied the misfire to them.
 */
export const PROOF_WAITS: readonly {
  readonly regime: Regime;
  readonly told: readonly { readonly finding: string; readonly is: readonly string[] }[];
}[] = [
  {
    regime: "coldStart",
    told: [
      {
        finding: "regime.warmth",
        is: ["cold-only", "worse-cold", "clears-at-once", "clears-later"],
      },
      { finding: "regime.standing", is: ["night"] },
      { finding: "regime.weather", is: ["cold"] },
    ],
  },
  {
    regime: "wet",
    told: [
      { finding: "regime.weather", is: ["wet-only"] },
      { finding: "onset", is: ["after-wet"] },
      { finding: "mist", is: ["yes"] },
    ],
  },
];

/** Rules of the public on-board diagnosis regulations, known here from memory. */
export const PROOF_RULES = {
  grounds: { basis: "memory", confidence: "medium" } satisfies Grounds,
  /** Weight of the newest drive in the moving average of misfire counts. */
  newestWeight: 0.1,
  /** A drive counts as like the freeze frame within this speed and part of the load, as warm as then. */
  likeFrame: { rpm: 375, loadShare: 0.2 },
  /** Drives in a row without a pending code. */
  pendingFreeDrives: 2,
  /** Drives in a row without the fault before the lamp goes out by itself. */
  lampOffDrives: 3,
  /** Warm-ups without the fault before a stored code goes by itself. */
  warmUps: 40,
  /** A permanent code needs a drive of at least this. */
  permanentDrive: { runningMin: 10, above40KmhMin: 5, idleSeconds: 30 },
} as const;

/** Something that is read after each proving drive. */
export interface ProofSign {
  readonly id: "codes" | "pending" | "counts" | "lamp" | "permanent" | "monitors" | "trims";
  readonly say: string;
}

export const PROOF_SIGNS: readonly ProofSign[] = [
  { id: "codes", say: "No stored code comes back after it was cleared once." },
  { id: "pending", say: "No pending code on two drives in a row." },
  {
    id: "counts",
    say: "With a reader that shows them: the misfire counts of this drive stay near zero. Not the average over ten drives: it still holds a third of the old fault after ten clean ones.",
  },
  {
    id: "lamp",
    say: "The lamp stays off. If the codes were not cleared, it goes out after three clean drives.",
  },
  {
    id: "permanent",
    say: "A permanent code cannot be cleared by hand or battery. It goes when its own monitor has passed.",
  },
  {
    id: "monitors",
    say: "The monitors of catalyst and oxygen sensors have finished. That the misfire monitor is ready proves nothing.",
  },
  { id: "trims", say: "The fuel trims come back to within 10 % of zero." },
];
