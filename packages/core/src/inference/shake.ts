// The same model with all its weights a little off, each by its own chance: does the ranking hold?
//
// Each weight moves by normal noise of standard deviation σ in natural log-odds (odds and multipliers: in
// their logarithm). What is one weight to the person who wrote it moves as one: faults of one type share
// their noise, whatever their place; sets of which an answer says the same share theirs.
import {
  type DiagnosisModel,
  type MisfireObservation,
  randomSet,
} from "../model/diagnosis-model.ts";
import type { Random } from "../units/random.ts";
import { odds, PROBABILITY_FLOOR } from "../units/weight.ts";

export interface Shake {
  /** Standard deviation in natural log-odds; ln 2 is a factor of two. */
  readonly sigma: number;
  readonly random: Random;
}

/** A probability whose log-odds moved; kept off 0 and 1 by the floor of the knowledge or its own. */
export function shakenProbability(probability: number, { sigma, random }: Shake): number {
  const least = Math.min(PROBABILITY_FLOOR, probability, 1 - probability) || PROBABILITY_FLOOR;
  const inside = Math.min(1 - least, Math.max(least, probability));
  const moved = odds(inside) * Math.exp(sigma * random.normal());
  return Math.min(1 - least, Math.max(least, moved / (1 + moved)));
}

/** A multiplier whose logarithm moved. */
export function shakenMultiplier(times: number, { sigma, random }: Shake): number {
  return times * Math.exp(sigma * random.normal());
}

/**
 * All weights of a model, shaken. 0 stays 0 (a fault that has nothing to do with a sign) and −1 stays
 * silent. Chances of a fault's sets are scaled to add up to 1 again.
 *
 * @param typeOf by fault: faults with the same number are one type at several places
 */
export function shakenModel(
  model: DiagnosisModel,
  typeOf: ArrayLike<number>,
  shake: Shake,
): DiagnosisModel {
  return shakerOf(model, typeOf)(shake);
}

/** The same, for many shakes: what moves as one is found once. */
export function shakerOf(
  model: DiagnosisModel,
  typeOf: ArrayLike<number>,
): (shake: Shake) => DiagnosisModel {
  const types = groupsOf(Array.from({ length: model.faults }, (_, f) => typeOf[f] as number));
  const atoms = groupsOf(atomKeys(model, typeOf));
  const values = model.observations.map(({ value }) =>
    groupsOf(Array.from(value, (own, f) => (own > 0 ? `${typeOf[f]} ${own}` : undefined))),
  );
  const sets = model.misfireObservations.map((o) => setsShaker(o, model.cylinders));
  return (shake) => ({
    ...model,
    odds: moved(
      model.odds,
      types,
      (odds, factor) => odds * factor,
      () => shakenMultiplier(1, shake),
    ),
    atomChance: scaled(
      model,
      moved(model.atomChance, atoms, instead, (chance) => shakenProbability(chance, shake)),
    ),
    links: model.links.map((link) => ({ ...link, times: shakenMultiplier(link.times, shake) })),
    observations: model.observations.map((o, i) => ({
      ...o,
      background: shakenProbability(o.background, shake),
      value: moved(o.value, values[i] as Groups, instead, (own) => shakenProbability(own, shake)),
    })),
    misfireObservations: sets.map((shakeSets) => shakeSets(shake)),
  });
}

/** What an answer says of each set, shaken; sets of which it says the same move as one. */
export function shakenSets(
  observation: MisfireObservation,
  cylinders: number,
  shake: Shake,
): MisfireObservation {
  return setsShaker(observation, cylinders)(shake);
}

function setsShaker({ likelihood, answer }: MisfireObservation, cylinders: number) {
  const said = Float64Array.from({ length: randomSet(cylinders) + 1 }, (_, set) => likelihood(set));
  const groups = groupsOf(Array.from(said));
  return (shake: Shake): MisfireObservation => {
    // Chances of exact counts are tiny: for them log-odds and logarithm are the same.
    const table = moved(said, groups, instead, (value) =>
      value < PROBABILITY_FLOOR ? shakenMultiplier(value, shake) : shakenProbability(value, shake),
    );
    return { likelihood: (set) => table[set] as number, answer };
  };
}

/** Which values move as one. */
interface Groups {
  /** By value: its group; −1 for one that does not move. */
  readonly of: Int32Array;
  /** Position of the first value of each group. */
  readonly first: readonly number[];
}

/** Values with the same key are one group; those without a key do not move. */
function groupsOf(keys: readonly (string | number | undefined)[]): Groups {
  const known = new Map<string | number, number>();
  const first: number[] = [];
  const of = Int32Array.from(keys, (key, at) => {
    if (key === undefined) return -1;
    const group = known.get(key) ?? first.push(at) - 1;
    known.set(key, group);
    return group;
  });
  return { of, first };
}

/** Draws once for each group, and lays what was drawn on each of its values. */
function moved(
  values: Float64Array,
  { of, first }: Groups,
  lay: (value: number, drawn: number) => number,
  draw: (value: number) => number,
): Float64Array {
  const drawn = first.map((at) => draw(values[at] as number));
  return values.map((value, at) => {
    const group = of[at] as number;
    return group < 0 ? value : lay(value, drawn[group] as number);
  });
}

function instead(_: number, drawn: number): number {
  return drawn;
}

/** The n-th atom of a type moves alike at all its places. */
function atomKeys(
  { atomStart, atomChance, faults }: DiagnosisModel,
  typeOf: ArrayLike<number>,
): readonly string[] {
  return Array.from({ length: faults }, (_, fault) => {
    const row = atomChance.subarray(atomStart[fault], atomStart[fault + 1]);
    return Array.from(row, (chance, n) => `${typeOf[fault]} ${n} ${chance}`);
  }).flat();
}

/** Chances of each fault add up to 1. */
function scaled({ atomStart, faults }: DiagnosisModel, chances: Float64Array): Float64Array {
  for (let fault = 0; fault < faults; fault++) {
    const start = atomStart[fault] as number;
    const end = atomStart[fault + 1] as number;
    if (end - start === 1) chances[start] = 1;
    let sum = 0;
    for (let a = start; a < end; a++) sum += chances[a] as number;
    for (let a = start; a < end; a++) chances[a] = (chances[a] as number) / sum;
  }
  return chances;
}
