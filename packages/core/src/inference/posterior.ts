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
import type { Crowd, Ring } from "./crowd.ts";
import { evidenceOf } from "./evidence.ts";
import { linkTable } from "./link-table.ts";
import { sumPairs } from "./pairs.ts";
import { reachOf } from "./reach.ts";
import { sumTriples } from "./triples.ts";
import { expectedOfSingle, type Scale, saidOfSingle } from "./weigh.ts";
import { traitsOf } from "./wide.ts";

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
  const { scale, crowd } = scaleOf(model);
  const singles = sumSingles(scale);
  const atLeast = singles.fault.reduce((sum, weight) => sum + weight, 0);
  const pairs = most >= 2 ? sumPairs(crowd) : undefined;
  const allowed = (tolerance * atLeast) / (OFF * (1 + tolerance));
  const triples = most >= 3 ? sumTriples(crowd, allowed) : undefined;
  const { fault, set } = added([singles, pairs, triples?.ring]);
  set.forEach((weight, at) => {
    if (weight !== 0) set[at] = Math.max(0, weight) * scale.reach.likelihood(at);
  });
  const total = set.reduce((sum, weight) => sum + weight, 0);
  const summed = { fault, total, withThird: triples?.withThird };
  const component = componentWeights(scale, summed, most);
  const share = (weight: number): number => Math.min(1, Math.max(0, weight / total));
  const faultShares = fault.map(share);
  const best = bestHypotheses(scale, singles.fault, fault, { most, keep: HYPOTHESES_KEPT });
  const leftOut = triples?.ring.leftOut ?? 0;
  return {
    fault: faultShares,
    component: component.map(share),
    set: set.map(share),
    best: best.map(({ faults, weight }) => ({ faults, probability: share(weight) })),
    unsearched: (OFF * leftOut) / (total - leftOut),
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

/** Number of hypotheses of up to `most` faults. */
function hypothesesUpTo({ faults, alone }: DiagnosisModel, most: number): number {
  const n = alone.reduce((count, isAlone) => count - isAlone, faults);
  const pairs = (n * (n - 1)) / 2;
  return faults + (most >= 2 ? pairs : 0) + (most >= 3 ? (pairs * (n - 2)) / 3 : 0);
}

function scaleOf(model: DiagnosisModel): { readonly scale: Scale; readonly crowd: Crowd } {
  const evidence = evidenceOf(model);
  const links = linkTable(model);
  const company = companyOf(model.faults, evidence, links);
  const reach = reachOf(model, company.weight);
  const { faults, alone } = model;
  const { wide } = evidence;
  const traits = traitsOf(wide, faults);
  return {
    scale: { model, evidence, links, reach, company },
    crowd: { faults, sets: randomSet(model.cylinders) + 1, alone, wide, traits, company, reach },
  };
}

/** Faults by themselves, those that stand alone among them. */
function sumSingles(scale: Scale): Ring {
  const { faults, atomStart, atomChance, atomSet, cylinders } = scale.model;
  const said = Float64Array.from({ length: faults }, (_, f) => saidOfSingle(scale, f));
  const set = new Float64Array(randomSet(cylinders) + 1);
  for (let f = 0; f < faults; f++) {
    for (let a = atomStart[f] as number; a < (atomStart[f + 1] as number); a++) {
      const at = atomSet[a] as number;
      set[at] = (set[at] as number) + (said[f] as number) * (atomChance[a] as number);
    }
  }
  return { fault: said.map((own, f) => own * expectedOfSingle(scale, f)), set, leftOut: 0 };
}

function added(rings: readonly (Ring | undefined)[]): Pick<Ring, "fault" | "set"> {
  const [first, ...rest] = rings.filter((ring) => ring !== undefined);
  const { fault, set } = first as Ring;
  const sum = { fault: Float64Array.from(fault), set: Float64Array.from(set) };
  for (const ring of rest) {
    ring.fault.forEach((weight, f) => {
      sum.fault[f] = (sum.fault[f] as number) + weight;
    });
    ring.set.forEach((weight, t) => {
      sum.set[t] = (sum.set[t] as number) + weight;
    });
  }
  return sum;
}
