// An engine profile with everything worked out. Inside the core cylinders are counted from 0 in the
// order of `names`; names are used only at the doors.
import type { CylinderName, EngineProfile, IgnitionKind } from "./profile.ts";

export interface Connector {
  readonly name: string;
  readonly cylinders: readonly number[];
}

export interface Engine {
  readonly profile: EngineProfile;
  readonly names: readonly CylinderName[];
  readonly ignition: IgnitionKind;
  /** Cylinder indices in firing order. */
  readonly order: readonly number[];
  /** By cylinder: crank degrees in 0..720 at which it fires, the first of the order at 0. */
  readonly angles: readonly number[];
  /** By cylinder: the cylinder that fires 360° (within the tolerance) away, if there is one. */
  readonly companions: readonly (number | undefined)[];
  /** Cylinders that each coil fires, each group ascending by firing order. */
  readonly groups: readonly (readonly number[])[];
  /** By cylinder: index into `groups`. */
  readonly groupOf: readonly number[];
  readonly banks: readonly (readonly number[])[];
  readonly bankOf: readonly number[];
  /** Pairs of cylinders side by side in the block, lower index first. */
  readonly neighbours: readonly (readonly [number, number])[];
  readonly connectors: readonly Connector[];
  /** By cylinder: true when a cable leads to its plug, false when the coil or rail sits on it. */
  readonly hasLead: readonly boolean[];
}
