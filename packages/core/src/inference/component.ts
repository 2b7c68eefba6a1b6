// The probability of a part, whatever has failed in it: its faults' probabilities added up, less what
// two or three of them share.
import type { Pair } from "./triples.ts";
import { type Scale, weighPair } from "./weigh.ts";

/** Faults whose summed weight is below this part of all cannot make a shared weight that matters. */
const NEGLIGIBLE = 1e-10;

export interface Summed {
  /** By fault: weight of all hypotheses that hold it. */
  readonly fault: Float64Array;
  readonly total: number;
  /** A pair with its thirds; undefined where there are none. */
  readonly pairOf: ((a: number, b: number) => Pair) | undefined;
}

/** By component: weight of all hypotheses that hold at least one of its faults. */
export function componentWeights(scale: Scale, summed: Summed, most: 1 | 2 | 3): Float64Array {
  const { model } = scale;
  const members: number[][] = Array.from({ length: model.components }, () => []);
  for (let f = 0; f < model.faults; f++) members[model.component[f] as number]?.push(f);
  return Float64Array.from(members, (faults) => {
    const sum = faults.reduce((weight, f) => weight + (summed.fault[f] as number), 0);
    if (most === 1) return sum;
    const joinable = faults.filter(
      (f) => !model.alone[f] && (summed.fault[f] as number) > NEGLIGIBLE * summed.total,
    );
    return sum - sharedWeight(scale, joinable, summed.pairOf);
  });
}

/**
 * Σ over hypotheses of (members in the component − 1): the weight of every pair of them, where a
 * hypothesis with three of them is met in three pairs and must count twice.
 */
function sharedWeight(scale: Scale, members: readonly number[], pairOf: Summed["pairOf"]): number {
  let shared = 0;
  members.forEach((f, i) => {
    members.slice(i + 1).forEach((g, j) => {
      shared += weighPair(scale, f, g);
      if (!pairOf) return;
      const pair = pairOf(f, g);
      shared += pair.withAnyThird();
      for (const h of members.slice(i + j + 2)) shared -= pair.weightWith(h);
    });
  });
  return shared;
}
