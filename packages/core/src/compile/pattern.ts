// From a fault's reach and its place on an engine to the sets of cylinders it can make miss.
import type { Engine } from "../engine/engine.ts";
import type { Place } from "../engine/place.ts";
import type { CylinderClass, MisfireClass, Reach } from "../knowledge/schema.ts";
import { randomSet } from "../model/diagnosis-model.ts";

/** Chance of each set (bit mask; 2^n is random), adding up to 1. */
export type Pattern = ReadonlyMap<number, number>;

const TARGETS = {
  own: (_, cylinder) => [maskOf([cylinder])],
  group: groupSets,
  companions: (engine, cylinder) => {
    const companion = engine.companions[cylinder];
    return [maskOf(companion === undefined ? [cylinder] : [cylinder, companion])];
  },
  mate: (engine, cylinder) => {
    const group = isDouble(engine) ? (engine.groups[engine.groupOf[cylinder] ?? 0] ?? []) : [];
    return [maskOf([group.find((other) => other !== cylinder) ?? cylinder])];
  },
  neighbours: (engine, cylinder) =>
    engine.neighbours.filter((pair) => pair.includes(cylinder)).map(maskOf),
  consecutive: (engine, cylinder) => {
    const next = engine.order[(engine.order.indexOf(cylinder) + 1) % engine.order.length];
    return [maskOf(next === undefined ? [cylinder] : [cylinder, next])];
  },
  two: (engine, cylinder) =>
    engine.names
      .map((_, other) => other)
      .filter((other) => engine.groupOf[other] !== engine.groupOf[cylinder] || !isDouble(engine))
      .filter((other) => other !== cylinder)
      .map((other) => maskOf([cylinder, other])),
  bank: (engine, cylinder) => {
    const bank = engine.banks[engine.bankOf[cylinder] ?? 0] ?? [];
    return [bank.length === engine.names.length ? randomSet(engine.names.length) : maskOf(bank)];
  },
  elsewhere: (engine, _, place) =>
    engine.names
      .map((_name, other) => other)
      .filter((other) => !place.cylinders.includes(other))
      .map((other) => maskOf([other])),
  all: (engine, _, place) =>
    place.cylinders.length === engine.names.length && engine.names.length > 1
      ? [randomSet(engine.names.length)]
      : [maskOf(place.cylinders)],
  random: (engine) => [randomSet(engine.names.length)],
  none: () => [0],
} as const satisfies Record<
  keyof Reach,
  (engine: Engine, cylinder: number, place: Place) => readonly number[]
>;

/** The pattern of a reach at a place; what a target cannot mean on this engine goes to random. */
export function patternOf(engine: Engine, place: Place, reach: Reach): Pattern {
  const pattern = new Map<number, number>();
  const add = (set: number, chance: number): void => {
    pattern.set(set, (pattern.get(set) ?? 0) + chance);
  };
  for (const [target, chance] of Object.entries(reach) as [keyof Reach, number][]) {
    if (place.kind === "neighbours" && target === "neighbours") {
      add(maskOf(place.cylinders), chance);
      continue;
    }
    for (const cylinder of place.cylinders) {
      const found = TARGETS[target](engine, cylinder, place);
      const sets = found.length > 0 ? found : [randomSet(engine.names.length)];
      for (const set of sets) add(set, chance / place.cylinders.length / sets.length);
    }
  }
  return pattern;
}

/** What kind of set it is: how many cylinders miss, and whether always the same. */
export function misfireClass(set: number, cylinders: number): MisfireClass {
  if (set === randomSet(cylinders)) return "random";
  const missing = bits(set);
  return missing === 0 ? "none" : missing === 1 ? "one" : missing === 2 ? "two" : "more";
}

/** The same seen from one cylinder. */
export function cylinderClass(set: number, cylinder: number, cylinders: number): CylinderClass {
  if (set === randomSet(cylinders)) return "random";
  return (set >> cylinder) & 1 ? "hit" : "spared";
}

/** Number of cylinders in a set. */
export function bits(set: number): number {
  let count = 0;
  for (let rest = set; rest > 0; rest &= rest - 1) count++;
  return count;
}

/** A double coil takes both its cylinders; else the fault keeps to its own or takes all. */
function groupSets(engine: Engine, cylinder: number, place: Place): readonly number[] {
  const group = engine.groups[engine.groupOf[cylinder] ?? 0] ?? [];
  if (group.length === 2 && isDouble(engine)) return [maskOf(group)];
  return [place.cylinders.length > 1 ? randomSet(engine.names.length) : maskOf([cylinder])];
}

function isDouble(engine: Engine): boolean {
  return engine.ignition === "pack" || engine.ignition === "rail" || engine.ignition === "hybrid";
}

function maskOf(cylinders: readonly number[]): number {
  return cylinders.reduce((mask, cylinder) => mask | (1 << cylinder), 0);
}
