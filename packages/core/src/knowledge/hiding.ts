// How much of "looks sound" is a fault that hid from the look?
import type { Grounds } from "./schema.ts";

/** Of looks that are made cold or at idle, whenever the trouble is there. */
export const HIDING = {
  grounds: { basis: "memory", confidence: "low" } satisfies Grounds,
  /**
   * Of what looks like a sound engine at one output of a faulty part: the part in which the fault hid from all
   * outputs at once. The rest is a slip of the eye at the one.
   */
  together: 0.75,
  /** However sure an answer says that the trouble is there, no more of the looks than this meet it. */
  surest: 0.99,
} as const;
