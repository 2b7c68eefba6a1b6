// What may a look at the broken engine see?
import type { Random } from "../units/random.ts";
import type { SimulatedCodes } from "./simulated-code.ts";
import type { SimulatedDrive } from "./simulated-drive.ts";
import type { SimulatedEngine } from "./simulated-engine.ts";
import type { SimulatedFinding } from "./simulated-sense.ts";

/** All that a check may look at. */
export interface SimulatedState {
  readonly parts: SimulatedEngine;
  readonly drive: SimulatedDrive;
  readonly codes: SimulatedCodes;
  readonly random: Random;
}

type Seen = SimulatedFinding["answer"] | undefined;

/** A look at the whole engine. */
export type EngineLook = (state: SimulatedState) => Seen;

/** A look at one cylinder, or the coil that fires it. */
export type CylinderLook = (state: SimulatedState, cylinder: number) => Seen;
