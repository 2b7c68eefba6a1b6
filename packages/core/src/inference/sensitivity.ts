// How far must one number move before the first place changes hands? (What-if of H. Chan & A. Darwiche,
// "When do numbers really matter?", Journal of Artificial Intelligence Research 17 (2002) 265.)
//
// The weight of every hypothesis is linear in the odds or the chance that one fault brings, so the lead
// of any rival over the first is linear too, and the largest of these leads is convex: below 0 at both
// ends of a stretch it is below 0 all along. Looking at the ends is therefore enough to know that no
// value does it, and between the number as it is and an end where it does, there is one change of hands.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { decibans, odds, PROBABILITY_FLOOR } from "../units/weight.ts";
import { posterior } from "./posterior.ts";

/**
 * Where a function changes sign between two values of its number, by bisection to `within`;
 * `undefined` when it has the same sign at both. With several changes of sign it finds one of them.
 */
export function crossing(
  of: (t: number) => number,
  from: number,
  to: number,
  within = 1e-12,
): number | undefined {
  let [near, far] = [from, to];
  const isPositive = of(near) > 0;
  if (of(far) > 0 === isPositive) return undefined;
  while (Math.abs(far - near) > within) {
    const middle = (near + far) / 2;
    if (middle === near || middle === far) break;
    if (of(middle) > 0 === isPositive) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
}

/** One number of a model; faults of one type at several places move together. */
export type Weight =
  /** Prior odds. */
  | { readonly kind: "prior"; readonly faults: readonly number[] }
  /** What the faults say of an observation, which they must not be silent about. */
  | { readonly kind: "sign"; readonly observation: number; readonly faults: readonly number[] }
  /** Chance of an answer about the misfiring set, at one set. */
  | { readonly kind: "set"; readonly observation: number; readonly set: number };

/** Where the first place changes hands. */
export interface Flip {
  /** Odds, or a probability, as the model has it and where it flips. */
  readonly from: number;
  readonly to: number;
  /** Odds of `to` over odds of `from`, in decibans; negative when the number must fall. */
  readonly moveDb: number;
  /** Fault number that then comes first. */
  readonly first: number;
}

export interface FlipOptions {
  /** Prior odds are moved this far each way at most, in dB. Default 40, a factor of 10,000. */
  readonly reachDb?: number;
  /** `posterior` of each trial. Default: tolerance 1e-4, three faults. */
  readonly posterior?: Parameters<typeof posterior>[1];
  /** Faults that cannot hold a place, such as "something else" where it is told apart. */
  readonly leaveOut?: readonly number[];
}

/** Bisection ends when the move is known to this many dB. */
const CLOSE_DB = 0.01;
const REACH_DB = 40;

/**
 * The nearest value of a weight at which another fault takes the first place; `undefined` when no value
 * does (probabilities between the floor and 1 − floor). Costs two calls of `posterior`, and some twelve
 * more for each end at which the place has changed hands.
 */
export function flip(
  model: DiagnosisModel,
  weight: Weight,
  options: FlipOptions = {},
): Flip | undefined {
  const from = numberOf(model, weight);
  const at = (db: number): DiagnosisModel => withWeight(model, weight, moved(weight, from, db));
  const holder = firstOf(faultsOf(model, options));
  const lead = (db: number): number => {
    const faults = faultsOf(at(db), options);
    return (faults[holder] as number) - (faults[firstOf(faults, holder)] as number);
  };
  const flips = ends(weight, from, options.reachDb ?? REACH_DB).flatMap((end) => {
    const db = crossing(lead, 0, end, CLOSE_DB);
    return db === undefined ? [] : [db];
  });
  const [nearest] = flips.sort((a, b) => Math.abs(a) - Math.abs(b));
  if (nearest === undefined) return undefined;
  const first = firstOf(faultsOf(at(nearest), options), holder);
  return { from, to: moved(weight, from, nearest), moveDb: nearest, first };
}

/** Probabilities of all faults, of those that hold no place 0. */
function faultsOf(
  model: DiagnosisModel,
  { posterior: how = { tolerance: 1e-4 }, leaveOut = [] }: FlipOptions,
): Float64Array {
  return posterior(model, how).fault.map((p, f) => (leaveOut.includes(f) ? 0 : p));
}

/** The likeliest fault, of equals the one with the lowest number. */
function firstOf(faults: Float64Array, besides?: number): number {
  let first = -1;
  faults.forEach((probability, f) => {
    if (f !== besides && (first < 0 || probability > (faults[first] as number))) first = f;
  });
  return first;
}

function numberOf(model: DiagnosisModel, weight: Weight): number {
  if (weight.kind === "set") {
    return model.misfireObservations[weight.observation]?.likelihood(weight.set) as number;
  }
  const [first = 0] = weight.faults;
  if (weight.kind === "prior") return model.odds[first] as number;
  const value = model.observations[weight.observation]?.value[first] as number;
  if (value < 0) throw new Error("flip: the fault is silent about this observation");
  return value;
}

/** How far down and up a number can go, in dB. */
function ends(weight: Weight, from: number, reachDb: number): readonly number[] {
  if (weight.kind === "prior") return [-reachDb, reachDb];
  const own = oddsDb(from);
  const low = Math.min(0, oddsDb(PROBABILITY_FLOOR) - own);
  const high = Math.max(0, oddsDb(1 - PROBABILITY_FLOOR) - own);
  return [low, high].filter((end) => Math.abs(end) > CLOSE_DB);
}

function moved(weight: Weight, from: number, db: number): number {
  if (db === 0) return from;
  if (weight.kind === "prior") return from * 10 ** (db / 10);
  const at = 10 ** ((oddsDb(from) + db) / 10);
  return at / (1 + at);
}

/** A number at 0 or 1 moves as if it stood at the floor. */
function oddsDb(probability: number): number {
  const inside = Math.min(1 - 1e-12, probability > 0 ? probability : PROBABILITY_FLOOR);
  return decibans(odds(inside));
}

function withWeight(model: DiagnosisModel, weight: Weight, value: number): DiagnosisModel {
  switch (weight.kind) {
    case "prior": {
      const times = value / numberOf(model, weight);
      const holds = new Set(weight.faults);
      return { ...model, odds: model.odds.map((own, f) => (holds.has(f) ? own * times : own)) };
    }
    case "sign": {
      const holds = new Set(weight.faults);
      const observations = model.observations.map((o, i) =>
        i === weight.observation
          ? { ...o, value: o.value.map((own, f) => (holds.has(f) ? value : own)) }
          : o,
      );
      return { ...model, observations };
    }
    case "set": {
      const misfireObservations = model.misfireObservations.map((o, i) =>
        i === weight.observation
          ? { ...o, likelihood: (set: number) => (set === weight.set ? value : o.likelihood(set)) }
          : o,
      );
      return { ...model, misfireObservations };
    }
  }
}
