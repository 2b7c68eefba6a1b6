// Works out of a profile everything that the core needs to know of an engine.
import { InputError, type Problem } from "../units/problem.ts";
import { checkProfile, knownOrder } from "./check-profile.ts";
import { cylinderNames } from "./cylinder-name.ts";
import type { Connector, Engine } from "./engine.ts";
import { firingGroups } from "./firing-group.ts";
import { companionsOf, firingAngles } from "./firing-order.ts";
import { genericBanks } from "./generic-order.ts";
import type { CylinderName, EngineProfile, IgnitionKind } from "./profile.ts";
import { hasConnectorEach } from "./served-by.ts";

const ORDER_MISSING: Problem = {
  code: "order-missing",
  path: "/firingOrder",
  message: "The firing order is needed to know which cylinders share a coil.",
  hint: "Write it as the service manual does, or ask candidateEngines for all orders that fit.",
};

/**
 * The engine of a profile. Throws an `InputError` with all problems at once when the profile is not
 * sound or has no firing order.
 */
export function resolveEngine(profile: EngineProfile): Engine {
  const firingOrder = knownOrder(profile);
  const problems = [...checkProfile(profile), ...(firingOrder ? [] : [ORDER_MISSING])];
  if (!firingOrder || problems.length > 0) throw new InputError(problems);
  const names = cylinderNames(profile);
  const order = indices(firingOrder, names);
  const angles = firingAngles(order, profile.firingIntervals);
  const groups = groupsOf(profile, names, order, angles);
  const groupOf = listOf(groups, names.length);
  const banks = banksOf(profile, names);
  return {
    profile,
    names,
    ignition: profile.ignition,
    order,
    angles,
    companions: companionsOfEngine(profile, groups, groupOf, angles),
    groups,
    groupOf,
    banks,
    bankOf: listOf(banks, names.length),
    neighbours: neighboursOf(profile, names, banks),
    connectors: connectorsOf(profile, names, groups),
    hasLead: leadsOf(profile, names, groups),
  };
}

/** Indices of cylinders by their names, which `checkProfile` has found to exist. */
function indices(list: readonly CylinderName[], names: readonly CylinderName[]): readonly number[] {
  return list.map((name) => names.indexOf(name));
}

/** By cylinder: which of the lists it stands in. */
function listOf(lists: readonly (readonly number[])[], count: number): readonly number[] {
  return Array.from({ length: count }, (_, c) => lists.findIndex((list) => list.includes(c)));
}

function groupsOf(
  profile: EngineProfile,
  names: readonly CylinderName[],
  order: readonly number[],
  angles: readonly number[],
): Engine["groups"] {
  const companions = [...companionsOf(angles, profile.pairingToleranceDeg)];
  // A maker that pairs within a tolerance may choose other partners than the nearest.
  for (const group of profile.firingGroups ?? []) {
    const [a = -1, b = -1] = indices(group, names);
    if (group.length !== 2 || a < 0 || b < 0) continue;
    companions[a] = b;
    companions[b] = a;
  }
  return firingGroups(profile, order, companions);
}

function companionsOfEngine(
  profile: EngineProfile,
  groups: Engine["groups"],
  groupOf: readonly number[],
  angles: readonly number[],
): Engine["companions"] {
  const isPaired = groups.every((group) => group.length === 2) && groups.length > 1;
  if (!isPaired) return companionsOf(angles, profile.pairingToleranceDeg);
  return groupOf.map((g, c) => groups[g]?.find((other) => other !== c));
}

function banksOf(profile: EngineProfile, names: readonly CylinderName[]): Engine["banks"] {
  const all = names.map((_, c) => c);
  const banks = profile.banks ?? (profile.layout === "inline" ? undefined : genericBanks(profile));
  if (banks) return banks.map((bank) => indices(bank, names));
  if (profile.layout === undefined || profile.layout === "inline") return [all];
  const half = Math.ceil(all.length / 2);
  return [all.slice(0, half), all.slice(half)];
}

function neighboursOf(
  profile: EngineProfile,
  names: readonly CylinderName[],
  banks: Engine["banks"],
): Engine["neighbours"] {
  const pairs = profile.neighbours
    ? profile.neighbours.map((pair) => indices(pair, names))
    : banks.flatMap((bank) => bank.slice(1).map((c, i) => [bank[i] ?? c, c]));
  return pairs.map(([a = 0, b = 0]) => [Math.min(a, b), Math.max(a, b)] as const);
}

function connectorsOf(
  profile: EngineProfile,
  names: readonly CylinderName[],
  groups: Engine["groups"],
): readonly Connector[] {
  if (profile.connectors) {
    return profile.connectors.map(({ name, feeds }) => ({
      name,
      cylinders: indices(feeds, names),
    }));
  }
  if (!hasConnectorEach(profile.ignition))
    return [{ name: "coil connector", cylinders: names.map((_, c) => c) }];
  return groups.map((group) => ({
    name: `coil connector ${group.map((c) => names[c]).join("+")}`,
    cylinders: group,
  }));
}

function leadsOf(
  profile: EngineProfile,
  names: readonly CylinderName[],
  groups: Engine["groups"],
): readonly boolean[] {
  const hasLeads: Readonly<Record<IgnitionKind, boolean>> = {
    distributor: true,
    pack: true,
    rail: false,
    hybrid: true,
    "coil-per-plug": false,
  };
  const carriers = profile.coilOn
    ? indices(profile.coilOn, names)
    : groups.map(([firesFirst]) => firesFirst);
  return names.map((_, c) => {
    if (profile.ignition === "hybrid") return !carriers.includes(c);
    return hasLeads[profile.ignition];
  });
}
