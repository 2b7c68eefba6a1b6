// Sound profiles that the tests of this room spoil, and what a refusal is compared with.
import type { EngineProfile } from "../../../packages/core/src/engine/profile.ts";

export const four: EngineProfile = {
  cylinders: 4,
  layout: "inline",
  firingOrder: [1, 3, 4, 2],
  ignition: "rail",
};
export const six: EngineProfile = {
  cylinders: 6,
  layout: "v",
  firingOrder: [1, 2, 3, 4, 5, 6],
  ignition: "pack",
};
export const labelled: EngineProfile = {
  cylinders: 4,
  layout: "flat",
  banks: [
    ["R1", "R2"],
    ["L1", "L2"],
  ],
  firingOrder: ["R1", "R2", "L1", "L2"],
  ignition: "pack",
};
export const oddFire: EngineProfile = {
  ...six,
  firingOrder: [1, 6, 5, 4, 3, 2],
  firingIntervals: [90, 150, 90, 150, 90, 150],
};

export const { firingOrder: _, ...orderless } = four;

export interface Refusal {
  readonly why: string;
  readonly profile: EngineProfile;
  /** `code path` of every problem, in any order. */
  readonly problems: readonly string[];
  /** Something that the message or the hint of the first problem must say. */
  readonly says: string;
}
