// How far must one number move before the first place changes hands? (What-if of H. Chan & A. Darwiche,
// "When do numbers really matter?", Journal of Artificial Intelligence Research 17 (2002) 265.)
//
// The weight of a fault or part, Σ w over the hypotheses that hold it, is a polynomial in any single number of
// the model: linear, or of a degree up to the faults of a hypothesis where faults of one type share the number.
// A few posteriors give that polynomial for all at once, and looking for the change of hands on it
// costs next to nothing.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { decibans, odds, PROBABILITY_FLOOR } from "../units/weight.ts";
import { type Posterior, posterior } from "./posterior.ts";

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
  /** Number of the fault, or of the part, that then comes first. */
  readonly first: number;
}

export interface FlipOptions {
  /** Prior odds are moved this far each way at most, in dB. Default 40, a factor of 10,000. */
  readonly reachDb?: number;
  /** Faults present together at most. Default 3. */
  readonly most?: Most;
  /** Posterior of the model as it is, if it is known, with tolerance 0 and the same `most`. */
  readonly now?: Weights;
  /** What is ranked: faults, unless given, or parts whatever has failed in them. */
  readonly of?: Ranked;
  /** Of these, those that cannot hold a place, such as "something else" where it is told apart. */
  readonly leaveOut?: readonly number[];
}

type Most = 1 | 2 | 3;
type Ranked = "fault" | "component";
type Weights = Pick<Posterior, Ranked | "total">;

/** Bisection ends when the move is known to this many dB. */
const CLOSE_DB = 0.01;
const REACH_DB = 40;
/** The change of hands is looked for in steps of this many dB. */
const STEP_DB = 0.25;

/**
 * The nearest value of a weight at which another fault, or part, takes the first place; `undefined` when no
 * value does (probabilities between the floor and 1 − floor). Costs as many calls of `posterior` as the weight
 * has a degree, one to three, and one more without `now`. Two changes of hands closer to one another
 * than a quarter of a dB may be missed.
 */
export function flip(
  model: DiagnosisModel,
  weight: Weight,
  options: FlipOptions = {},
): Flip | undefined {
  const { most = 3, leaveOut = [], of = "fault" } = options;
  const now = options.now ?? posterior(model, { tolerance: 0, most });
  const from = numberOf(model, weight);
  const weightsAt = polynomials(model, weight, { most, now, from, of });
  const atDb = (db: number): Float64Array => {
    const weights = weightsAt(argumentOf(weight, from, moved(weight, from, db)));
    for (const f of leaveOut) weights[f] = 0;
    return weights;
  };
  const holder = firstOf(atDb(0));
  const lead = (db: number): number => {
    const weights = atDb(db);
    return (weights[holder] as number) - (weights[firstOf(weights, holder)] as number);
  };
  const flips = ends(weight, from, options.reachDb ?? REACH_DB).flatMap((end) => {
    const db = firstCrossing(lead, end);
    return db === undefined ? [] : [db];
  });
  const [nearest] = flips.sort((a, b) => Math.abs(a) - Math.abs(b));
  if (nearest === undefined) return undefined;
  const first = firstOf(atDb(nearest), holder);
  return { from, to: moved(weight, from, nearest), moveDb: nearest, first };
}

/** Where a lead is lost first on the way from 0 to an end; the end where it is lost only there. */
function firstCrossing(lead: (db: number) => number, end: number): number | undefined {
  const steps = Math.ceil(Math.abs(end) / STEP_DB);
  let before = 0;
  for (let step = 1; step <= steps; step++) {
    const db = (end * step) / steps;
    if (lead(db) <= 0) return crossing(lead, before, db, CLOSE_DB) ?? db;
    before = db;
  }
  return undefined;
}

/** In what the weights of faults are polynomials: a multiplier of odds, or the probability itself. */
function argumentOf(weight: Weight, from: number, value: number): number {
  return weight.kind === "prior" ? value / from : value;
}

interface Known {
  readonly most: Most;
  readonly now: Weights;
  readonly from: number;
  readonly of: Ranked;
}

/** By fault or part: its weight, as a function of the moved number; Lagrange's form through a few posteriors. */
function polynomials(
  model: DiagnosisModel,
  weight: Weight,
  { most, now, from, of }: Known,
): (x: number) => Float64Array {
  const own = argumentOf(weight, from, from);
  const others = NODES[weight.kind === "prior" ? "odds" : "chance"]
    .filter((node) => Math.abs(node - own) > 0.05)
    .slice(0, degreeOf(model, weight, most));
  const values = others.map((x) => {
    const value = weight.kind === "prior" ? x * from : x;
    return weightsOf(posterior(withWeight(model, weight, value), { tolerance: 0, most }), of);
  });
  const nodes = [own, ...others];
  const known = [weightsOf(now, of), ...values];
  return (x) => {
    const sums = new Float64Array(now[of].length);
    nodes.forEach((node, i) => {
      const basis = nodes.reduce((p, at, j) => (j === i ? p : (p * (x - at)) / (node - at)), 1);
      const at = known[i] as Float64Array;
      for (let f = 0; f < sums.length; f++)
        sums[f] = (sums[f] as number) + basis * (at[f] as number);
    });
    return sums;
  };
}

/** Where posteriors are asked for: spread as far as the number can go, so that rounding stays small. */
const NODES = { odds: [0, 1000, 30, 5], chance: [0.999, 0.001, 0.5, 0.25] } as const;

function weightsOf(now: Weights, of: Ranked): Float64Array {
  return now[of].map((probability) => probability * now.total);
}

/** Hypotheses hold several faults of a type; of a choice they tell the mean, and so stay linear. */
function degreeOf({ observations }: DiagnosisModel, weight: Weight, most: Most): number {
  if (weight.kind === "set") return 1;
  if (weight.kind === "sign" && observations[weight.observation]?.form === "choice") return 1;
  return Math.min(most, weight.faults.length);
}

/** The likeliest, of equals the one with the lowest number. */
function firstOf(weights: Float64Array, besides?: number): number {
  let first = -1;
  for (let f = 0; f < weights.length; f++) {
    if (f === besides) continue;
    if (first < 0 || (weights[f] as number) > (weights[first] as number)) first = f;
  }
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
