// The engines that come with the library: generic ones and invented demo vehicles.
import { demoProfiles } from "./demo.ts";
import type { Engine } from "./engine.ts";
import { genericProfiles } from "./generic.ts";
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
  return allProfiles().find((profile) => profile.id === id);
}

/** The engine with this id, worked out; `undefined` when there is none. */
export function engineById(id: string): Engine | undefined {
  const profile = profileById(id);
  return profile && resolveEngine(profile);
}
