// What does it point to when the plugs of one set have not worn alike?
import type { Grounds } from "./schema.ts";

export type WearPattern =
  | "even"
  | "one-wide"
  | "one-narrow"
  | "pair-wide"
  | "neighbours-wide"
  | "several-off"
  | "alternating"
  | "set-fast"
  | "unworn";

export interface WearPatternRow {
  readonly id: WearPattern;
  readonly say: string;
  /** Where to look next. */
  readonly look: string;
  readonly grounds: Grounds;
}

/** How gaps are compared; the threshold is that of Iglewicz and Hoaglin. */
export const WEAR_RULES = {
  grounds: { basis: "memory", confidence: "medium" } satisfies Grounds,
  /** Modified z-score from which a plug stands apart from its set. */
  outlierFrom: 3.5,
  /**
   * One standard deviation of a feeler gauge in the hand, mm: differences below are reading errors, and plugs
   * that at the fastest usual rate have worn less than this have not worn yet.
   */
  gaugeMm: 0.03,
  /** From here on it goes with its companion on one coil, where that stands apart. */
  companionFrom: 2.5,
  /** Below this no plug can stand apart from a set. */
  fewestPlugs: 3,
  /** From here on the score means what the books say; below, it is a hint. */
  enoughPlugs: 5,
} as const;

const HABIT: Grounds = { basis: "common practice", confidence: "medium" };

export const WEAR_PATTERNS: readonly WearPatternRow[] = [
  {
    id: "even",
    say: "No plug stands apart by its gap.",
    look: "One that looks unlike the others still does.",
    grounds: HABIT,
  },
  {
    id: "one-wide",
    say: "One plug has worn wider than the rest of its set.",
    look: "Its cylinder runs hotter or leaner, or this plug is older or of another kind: look at injector, intake seal and part number there.",
    grounds: HABIT,
  },
  {
    id: "one-narrow",
    say: "One plug has a narrower gap than the rest of its set.",
    look: "It was dropped, set narrow or renewed later, or its cylinder hardly fired. A bent electrode may have been touched by something.",
    grounds: HABIT,
  },
  {
    id: "pair-wide",
    say: "Both plugs of one coil have worn wider than the rest.",
    look: "They share a coil: look at its boots or cables and at its spark, and at whether these two are older than the others.",
    grounds: HABIT,
  },
  {
    id: "neighbours-wide",
    say: "Cylinders side by side have worn wider than the rest.",
    look: "They share coolant, gasket and intake: look for heat, a leak between them, or an intake leak at that end.",
    grounds: HABIT,
  },
  {
    id: "several-off",
    say: "Several plugs stand apart, without a part in common.",
    look: "Compare part numbers and ages first; then look at each of these cylinders.",
    grounds: HABIT,
  },
  {
    id: "alternating",
    say: "In every pair on one coil, one plug has worn wider than the other.",
    look: "That is how a double coil wears them: one plug sparks from the centre, the other from the side electrode. Metal on one side only suits half of the places; fit the listed plug.",
    grounds: { basis: "common practice", confidence: "high" },
  },
  {
    id: "set-fast",
    say: "The whole set has worn faster than its metal usually does.",
    look: "Plug type and heat range, mixture, and whether the distance is right. Weak coils come after worn plugs, not before.",
    grounds: HABIT,
  },
  {
    id: "unworn",
    say: "These plugs have run too short a way to wear: what stands apart was so when it went in, or was bent since.",
    look: "Compare part numbers with the manual's list, and the gap with its figure; look whether the plug was dropped or something touched it.",
    grounds: HABIT,
  },
];
