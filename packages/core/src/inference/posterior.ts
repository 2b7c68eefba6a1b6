// The exact sum over hypotheses: every fault by itself, every pair, every triple.
// w(H) = Π odds · Π links · P(observations | H) · Σ over sets P(set | H)·P(misfire findings | set), and
// P(H) = w(H) / Σ w. The sum is made in closed form (rings.ts), so nothing needs to be left out but
// groups of triples below the tolerance, whose weight is bounded and told.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { entropyBits } from "../units/weight.ts";
import { bestHypotheses } from "./best.ts";
import { addLinks } from "./company.ts";
import { componentWeights } from "./component.ts";
import { evidenceOf } from "./evidence.ts";
import { exactlyOf, insideOf, insideWeights, latticeSize, reachableSets } from "./lattice.ts";
import { linkTable } from "./link-table.ts";
import { type KindSums, kindSums, type Rings, sumRings, thirdSums } from "./rings.ts";
import { type Scale, weigh } from "./weigh.ts";

export interface Posterior {
  /** By fault: that it is present. */
  readonly fault: Float64Array;
  /** By component: that at least one of its faults is present. */
  readonly component: Float64Array;
  /** By set of misfiring cylinders; the last is random. */
  readonly set: Float64Array;
  /** The likeliest hypotheses, best first. */
  readonly best: readonly { readonly faults: readonly number[]; readonly probability: number }[];
  /** Proven upper bound on the probability of all hypotheses left out. */
  readonly unsearched: number;
  /** Hypotheses summed. */
  readonly visited: number;
  /** Of "which fault is it": probabilities of the faults scaled to add up to 1. */
  readonly entropyBits: number;
  /** Σ w, relative to the background of the observations. */
  readonly total: number;
}

export interface PosteriorOptions {
  /** Probability that may stay out. Default 1e-7; 0 leaves nothing out. */
  readonly tolerance?: number;
  /** Faults present together at most. Default 3. */
  readonly most?: 1 | 2 | 3;
}

const DEFAULT_TOLERANCE = 1e-7;
const HYPOTHESES_KEPT = 10;

/** Posterior of a model; every probability is exact up to `unsearched`. */
export function posterior(model: DiagnosisModel, options: PosteriorOptions = {}): Posterior {
  const { tolerance = DEFAULT_TOLERANCE, most = 3 } = options;
  const scale = scaleOf(model);
  const { evidence, sums } = scale;
  const singles = Float64Array.from({ length: model.faults }, (_, f) => weigh(scale, [f]));
  const atLeast = singles.reduce((sum, weight) => sum + weight, 0);
  const bestSet = evidence.bySet.reduce((best, likelihood) => Math.max(best, likelihood), 0);
  const rings = sumRings(evidence, sums, scale.thirds, {
    most,
    allowed: tolerance * atLeast,
    bestSet,
  });
  const linked = addLinks(scale, sums, rings, most);
  const canBe = reachableSets(model, most);
  const set = setWeights(scale, rings, canBe);
  const total = set.reduce((sum, weight) => sum + weight, 0);
  const fault = Float64Array.from(singles, (single, f) =>
    model.alone[f] ? single : takesPart(scale, rings, canBe, linked.get(f), f),
  );
  const component = componentWeights(scale, fault, total, most);
  const share = (weight: number): number => Math.min(1, Math.max(0, weight / total));
  const faultShares = fault.map(share);
  return {
    fault: faultShares,
    component: component.map(share),
    set: set.map(share),
    best: bestHypotheses(scale, fault, most, HYPOTHESES_KEPT).map(({ faults, weight }) => ({
      faults,
      probability: share(weight),
    })),
    unsearched: rings.leftOut / (total + rings.leftOut),
    visited: hypothesesUpTo(model, most),
    entropyBits: entropyBits(faultShares),
    total,
  };
}

/** Number of hypotheses of up to `most` faults. */
function hypothesesUpTo({ faults, alone }: DiagnosisModel, most: number): number {
  const n = alone.reduce((count, isAlone) => count - isAlone, faults);
  const pairs = (n * (n - 1)) / 2;
  return faults + (most >= 2 ? pairs : 0) + (most >= 3 ? (pairs * (n - 2)) / 3 : 0);
}

function scaleOf(model: DiagnosisModel): Scale & { readonly sums: KindSums } {
  const evidence = evidenceOf(model);
  const inside = insideOf(model);
  const size = latticeSize(model.cylinders);
  const sums = kindSums(model, evidence, inside, size);
  return {
    model,
    evidence,
    links: linkTable(model),
    inside,
    weights: insideWeights(evidence.bySet),
    size,
    sums,
    thirds: thirdSums(evidence, sums),
  };
}

/** By set: weight of all hypotheses whose union is exactly that set. */
function setWeights({ model, evidence }: Scale, rings: Rings, canBe: Uint8Array): Float64Array {
  const exactly = exactlyOf(Float64Array.from(rings.inside));
  const set = exactly.map((weight, t) =>
    canBe[t] ? Math.max(0, weight) * (evidence.bySet[t] as number) : 0,
  );
  for (let f = 0; f < model.faults; f++) {
    if (!model.alone[f]) continue;
    const said =
      (model.odds[f] as number) * (evidence.solo[evidence.kindOf[f] as number] as number);
    for (let a = model.atomStart[f] as number; a < (model.atomStart[f + 1] as number); a++) {
      const t = model.atomSet[a] as number;
      const weight = said * (model.atomChance[a] as number) * (evidence.bySet[t] as number);
      set[t] = (set[t] as number) + weight;
    }
  }
  return set;
}

/**
 * Weight of all hypotheses that hold a fault. Taken from "inside" to "exactly" before it meets the
 * likelihoods: sharp evidence on many cylinders would cancel too many digits otherwise.
 */
function takesPart(
  { evidence, inside, size }: Scale,
  { c0, c1, c2 }: Rings,
  canBe: Uint8Array,
  linked: Float64Array | undefined,
  f: number,
): number {
  const start = (evidence.kindOf[f] as number) * size;
  const vector = new Float64Array(size);
  for (let t = 0; t < size; t++) {
    const x = inside[f * size + t] as number;
    const at = start + t;
    const company = (c0[at] as number) + x * ((c1[at] as number) + x * (c2[at] as number));
    vector[t] = x * company + (linked?.[t] ?? 0);
  }
  return exactlyOf(vector).reduce(
    (sum, weight, t) =>
      canBe[t] ? sum + Math.max(0, weight) * (evidence.bySet[t] as number) : sum,
    0,
  );
}
