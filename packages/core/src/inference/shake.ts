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
  const byType = (values: Float64Array, move: (value: number) => number): Float64Array => {
    const known = new Map<string, number>();
    return values.map((value, fault) => {
      if (value <= 0) return value;
      const key = `${typeOf[fault]} ${value}`;
      const moved = known.get(key) ?? move(value);
      known.set(key, moved);
      return moved;
    });
  };
  return {
    ...model,
    odds: shakenOdds(model, typeOf, shake),
    atomChance: shakenAtoms(model, typeOf, shake),
    links: model.links.map((link) => ({ ...link, times: shakenMultiplier(link.times, shake) })),
    observations: model.observations.map((o) => ({
      ...o,
      background: shakenProbability(o.background, shake),
      value: byType(o.value, (value) => shakenProbability(value, shake)),
    })),
    misfireObservations: model.misfireObservations.map((o) =>
      shakenSets(o, model.cylinders, shake),
    ),
  };
}

/** What an answer says of each set, shaken; sets of which it says the same move as one. */
export function shakenSets(
  { likelihood, answer }: MisfireObservation,
  cylinders: number,
  shake: Shake,
): MisfireObservation {
  const known = new Map<number, number>();
  const table = Float64Array.from({ length: randomSet(cylinders) + 1 }, (_, set) => {
    const value = likelihood(set);
    // Chances of exact counts are tiny: for them log-odds and logarithm are the same.
    const moved =
      known.get(value) ??
      (value < PROBABILITY_FLOOR
        ? shakenMultiplier(value, shake)
        : shakenProbability(value, shake));
    known.set(value, moved);
    return moved;
  });
  return { likelihood: (set) => table[set] as number, answer };
}

function shakenOdds(
  { odds: before }: DiagnosisModel,
  typeOf: ArrayLike<number>,
  shake: Shake,
): Float64Array {
  const factors = new Map<number, number>();
  return before.map((value, fault) => {
    const type = typeOf[fault] as number;
    const factor = factors.get(type) ?? shakenMultiplier(1, shake);
    factors.set(type, factor);
    return value * factor;
  });
}

/** The n-th atom of a type moves alike at all its places. */
function shakenAtoms(
  { atomStart, atomChance, faults }: DiagnosisModel,
  typeOf: ArrayLike<number>,
  shake: Shake,
): Float64Array {
  const moved = Float64Array.from(atomChance);
  const factors = new Map<string, number>();
  for (let fault = 0; fault < faults; fault++) {
    const row = moved.subarray(atomStart[fault], atomStart[fault + 1]);
    for (const [n, chance] of row.entries()) {
      const key = `${typeOf[fault]} ${n} ${chance}`;
      const value = factors.get(key) ?? shakenProbability(chance, shake);
      factors.set(key, value);
      row[n] = row.length === 1 ? 1 : value;
    }
    const sum = row.reduce((total, chance) => total + chance, 0);
    for (const [n, chance] of row.entries()) row[n] = chance / sum;
  }
  return moved;
}
