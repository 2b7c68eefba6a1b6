// Engines that the laws are tried on: one of each ignition kind and of each layout.

import { demoProfiles } from "../../packages/core/src/engine/demo.ts";
import type { EngineProfile } from "../../packages/core/src/engine/profile.ts";

export const ENGINES: readonly EngineProfile[] = demoProfiles();

/** The largest engine that has a generic firing order. */
export const TWELVE: EngineProfile = {
  name: "V12, coil packs",
  cylinders: 12,
  layout: "v",
  banks: [
    [1, 2, 3, 4, 5, 6],
    [7, 8, 9, 10, 11, 12],
  ],
  firingOrder: [1, 7, 5, 11, 3, 9, 6, 12, 2, 8, 4, 10],
  ignition: "pack",
};
