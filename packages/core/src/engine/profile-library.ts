// The engines that come with the library: generic ones and invented demo vehicles.
import { demoProfiles } from "./demo.ts";
import type { Engine } from "./engine.ts";
import { genericProfiles } from "./generic.ts";
import { GENERIC_ORDERS } from "./generic-order.ts";
import type { EngineProfile } from "./profile.ts";
import { resolveEngine } from "./resolve-engine.ts";

let all: readonly EngineProfile[] | undefined;

/** All profiles that come with the library, demo vehicles first. All are complete. Worked out once. */
export function allProfiles(): readonly EngineProfile[] {
  all ??= [...demoProfiles(), ...genericProfiles()];
  return all;
}

/** The profile with this id, such as `demo.tern`; `undefined` when there is none. */
export function profileById(id: string): EngineProfile | undefined {
  const isIt = (profile: EngineProfile): boolean => profile.id === id;
  // The generic ones take a while, and most who ask for a demo need no other.
  return demoProfiles().find(isIt) ?? allProfiles().find(isIt);
}

/** Numbers of cylinders of the profiles that come with the library, ascending; quicker than to ask each. */
export function cylinderCounts(): readonly number[] {
  const generic = GENERIC_ORDERS.map(({ order }) => order.length);
  const all = [...demoProfiles().map(({ cylinders }) => cylinders), ...generic];
  return [...new Set(all)].sort((a, b) => a - b);
}

/** The engine with this id, worked out; `undefined` when there is none. */
export function engineById(id: string): Engine | undefined {
  const profile = profileById(id);
  return profile && resolveEngine(profile);
}
