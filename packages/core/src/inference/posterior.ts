// The exact sum over hypotheses: every fault by itself, every pair, every triple.
// w(H) = Π odds · Π links · P(observations | H) · Σ over sets P(set | H)·P(misfire findings | set), and
// P(H) = w(H) / Σ w. Triples are summed without being visited (triples.ts), so nothing needs to be left
// out but terms below the tolerance, which are bounded and told.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { randomSet } from "../model/diagnosis-model.ts";
import { entropyBits } from "../units/weight.ts";
import { bestHypotheses } from "./best.ts";
import { companyOf } from "./company.ts";
import { componentWeights } from "./component.ts";
import { type Crowd, type Ring, workOf } from "./crowd.ts";
import { linkTable } from "./link-table.ts";
import { sumPairs } from "./pairs.ts";
import { reachOf } from "./reach.ts";
import { addOffered } from "./strangers.ts";
import { pairOf, sumTriples } from "./triples.ts";
import { expectedOfSingle, type Scale, saidOfSingle } from "./weigh.ts";
import { evidenceOf, traitsOf } from "./wide.ts";

export interface Posterior {
  /** By fault: that it is present. */
  readonly fault: Float64Array;
  /** By component: that at least one of its faults is present. */
  readonly component: Float64Array;
  /** By set of misfiring cylinders; the last is random. */
  readonly set: Float64Array;
  /** The likeliest hypotheses, best first. */
  readonly best: readonly { readonly faults: readonly number[]; readonly probability: number }[];
  /** Proven upper bound on how far what was left out moves any of these probabilities. */
  readonly unsearched: number;
  /** Hypotheses summed. */
  readonly visited: number;
  /** Of "which fault is it": probabilities of the faults scaled to add up to 1. */
  readonly entropyBits: number;
  /** Σ w, relative to the background of the observations. */
  readonly total: number;
}

export interface PosteriorOptions {
  /** Probability that may stay out. Default 1e-6; 0 leaves nothing out. */
  readonly tolerance?: number;
  /** Faults present together at most. Default 3. */
  readonly most?: 1 | 2 | 3;
}

const DEFAULT_TOLERANCE = 1e-6;
const HYPOTHESES_KEPT = 10;

/** Posterior of a model; every probability is exact up to `unsearched`. */
export function posterior(model: DiagnosisModel, options: PosteriorOptions = {}): Posterior {
  const { tolerance = DEFAULT_TOLERANCE, most = 3 } = options;
  const { scale, crowd } = scaleOf(model, most);
  const singles = sumSingles(scale);
  const atLeast = singles.fault.reduce((sum, weight) => sum + weight, 0);
  const forParts = FOR_PARTS * tolerance;
  const forSums = tolerance - forParts;
  const work = workOf(crowd, (forSums * atLeast) / (OFF * (1 + forSums)));
  if (most >= 2) sumPairs(work);
  if (most >= 3) sumTriples(work);
  if (most >= 2) addOffered(work);
  const fault = added(singles.fault, work.ring.fault);
  const set = added(singles.set, work.ring.set);
  set.forEach((weight, at) => {
    if (weight !== 0) set[at] = Math.max(0, weight) * scale.reach.likelihood(at);
  });
  const total = set.reduce((sum, weight) => sum + weight, 0);
  const share = (weight: number): number => Math.min(1, Math.max(0, weight / total));
  const faultShares = fault.map(share);
  const pairs = most >= 3 ? (a: number, b: number) => pairOf(work, a, b) : undefined;
  const { leftOut } = work.ring;
  let component: Float64Array | undefined;
  let best: Posterior["best"] | undefined;
  return {
    fault: faultShares,
    // most callers never ask for these two
    get component() {
      component ??= componentWeights(
        scale,
        { fault, total, pairOf: pairs, spare: forParts },
        most,
      ).map(share);
      return component;
    },
    get best() {
      const weights = { single: singles.fault, fault, hasPairs: most >= 2, pairOf: pairs };
      best ??= bestHypotheses(scale, weights, HYPOTHESES_KEPT).map(({ faults, weight }) => ({
        faults,
        probability: share(weight),
      }));
      return best;
    },
    set: set.map(share),
    unsearched: (OFF * leftOut) / (total - leftOut) + forParts,
    visited: hypothesesUpTo(model, most),
    entropyBits: entropyBits(faultShares),
    total,
  };
}

/**
 * A term that is left out is missed in the sum and in up to three faults of one part, so a probability
 * is off by at most so many times the part of the terms in the whole.
 */
const OFF = 4;

/** So much of what may stay out is for the faults that a part's sum passes over, see component.ts. */
const FOR_PARTS = 0.01;

/** Number of hypotheses of up to `most` faults. */
function hypothesesUpTo({ faults, alone }: DiagnosisModel, most: number): number {
  const n = alone.reduce((count, isAlone) => count - isAlone, faults);
  const pairs = (n * (n - 1)) / 2;
  return faults + (most >= 2 ? pairs : 0) + (most >= 3 ? (pairs * (n - 2)) / 3 : 0);
}

function scaleOf(
  model: DiagnosisModel,
  most: number,
): { readonly scale: Scale; readonly crowd: Crowd } {
  const evidence = evidenceOf(model, most);
  const links = linkTable(model);
  const company = companyOf(model.faults, evidence, links);
  const reach = reachOf(model, company.weight, most);
  const { faults, alone } = model;
  const { wide } = evidence;
  const traits = traitsOf(wide, faults);
  return {
    scale: { model, evidence, reach, company },
    crowd: { faults, sets: randomSet(model.cylinders) + 1, alone, wide, traits, company, reach },
  };
}

/** Faults by themselves, those that stand alone among them. */
function sumSingles(scale: Scale): Pick<Ring, "fault" | "set"> {
  const { faults, atomStart, atomChance, atomSet, cylinders } = scale.model;
  const said = Float64Array.from({ length: faults }, (_, f) => saidOfSingle(scale, f));
  const set = new Float64Array(randomSet(cylinders) + 1);
  for (let f = 0; f < faults; f++) {
    for (let a = atomStart[f] as number; a < (atomStart[f + 1] as number); a++) {
      const at = atomSet[a] as number;
      set[at] = (set[at] as number) + (said[f] as number) * (atomChance[a] as number);
    }
  }
  return { fault: said.map((own, f) => own * expectedOfSingle(scale, f)), set };
}

function added(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((weight, i) => weight + (b[i] as number));
}
