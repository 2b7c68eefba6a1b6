// Which engines may a profile be? One when its firing order is known, else all orders that fit.
import { InputError, type Problem } from "../units/problem.ts";
import { checkProfile, knownOrder } from "./check-profile.ts";
import { isLabel } from "./cylinder-name.ts";
import type { Engine } from "./engine.ts";
import { GENERIC_ORDERS, type GenericOrder } from "./generic-order.ts";
import type { CylinderName, EngineProfile } from "./profile.ts";
import { resolveEngine } from "./resolve-engine.ts";

/** An engine that a profile may be, and how probable that is; weights add up to 1. */
export interface CandidateEngine {
  readonly engine: Engine;
  readonly weight: number;
}

/**
 * Every engine that fits what is known, weighted by how common its firing order is among engines of
 * that cylinder count; a complete profile gives one of weight 1. Each keeps all that the profile
 * says. Throws an `InputError` when the profile is not sound or no known order fits it.
 */
export function candidateEngines(profile: EngineProfile): readonly CandidateEngine[] {
  if (knownOrder(profile)) return [{ engine: resolveEngine(profile), weight: 1 }];
  const problems = checkProfile(profile);
  if (problems.length > 0) throw new InputError(problems);
  const fitting = GENERIC_ORDERS.flatMap((generic) => {
    if (!mayBe(profile, generic)) return [];
    const completed = complete(profile, generic);
    // The checks know best whether groups, coils and connectors go with this order.
    if (checkProfile(completed).length > 0) return [];
    return [{ engine: resolveEngine(completed), commonness: generic.commonness }];
  });
  if (fitting.length === 0) throw new InputError([noOrderFits(profile)]);
  const total = fitting.reduce((sum, { commonness }) => sum + commonness, 0);
  return fitting.map(({ engine, commonness }) => ({ engine, weight: commonness / total }));
}

function mayBe(profile: EngineProfile, generic: GenericOrder): boolean {
  return (
    generic.order.length === profile.cylinders &&
    !generic.order.some(isLabel) &&
    (profile.layout === undefined || profile.layout === generic.layout) &&
    (profile.banks === undefined || isSameSplit(profile.banks, generic.banks))
  );
}

function complete(profile: EngineProfile, generic: GenericOrder): EngineProfile {
  return {
    ...profile,
    layout: generic.layout,
    banks: profile.banks ?? generic.banks,
    firingOrder: generic.order,
    ...(generic.intervals ? { firingIntervals: generic.intervals } : {}),
  };
}

/** True when two lists of banks divide the cylinders alike, whatever is written first. */
function isSameSplit(
  a: readonly (readonly CylinderName[])[],
  b: readonly (readonly CylinderName[])[],
): boolean {
  const key = (banks: typeof a): string =>
    banks
      .map((bank) => bank.map(String).sort().join())
      .sort()
      .join(" ");
  return key(a) === key(b);
}

function noOrderFits(profile: EngineProfile): Problem {
  const known = [
    `${profile.cylinders} cylinders`,
    `ignition "${profile.ignition}"`,
    ...(profile.layout ? [`layout "${profile.layout}"`] : []),
    ...(["banks", "firingGroups", "coilOn", "connectors"] as const).filter((key) => profile[key]),
  ];
  return {
    code: "no-order-fits",
    path: "/firingOrder",
    message: `No firing order known here fits all of this: ${known.join(", ")}.`,
    hint: "Write the firing order from the service manual, or check the other fields.",
  };
}
