// In how many ways can an engine of an ignition kind be built?

import { FUELLINGS, SWITCHINGS } from "../../packages/core/src/engine/profile.ts";
import {
  checkProfile,
  type EngineProfile,
  type IgnitionKind,
} from "../../packages/core/src/index.ts";

/** Four-cylinder engines with every switching and fuelling that can be with it. */
export function builds(ignition: IgnitionKind): readonly EngineProfile[] {
  return SWITCHINGS.flatMap((switching) =>
    FUELLINGS.map(
      (fuelling): EngineProfile => ({
        cylinders: 4,
        firingOrder: [1, 3, 4, 2],
        ignition,
        switching,
        fuelling,
      }),
    ),
  ).filter((profile) => checkProfile(profile).length === 0);
}
