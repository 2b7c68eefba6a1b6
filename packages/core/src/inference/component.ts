// The probability of a part, whatever has failed in it: its faults' probabilities added up, less what
// two or three of them share.
import type { Pair } from "./triples.ts";
import { type Scale, weighPair } from "./weigh.ts";

export interface Summed {
  /** By fault: weight of all hypotheses that hold it. */
  readonly fault: Float64Array;
  readonly total: number;
  /** A pair with its thirds; undefined where there are none. */
  readonly pairOf: ((a: number, b: number) => Pair) | undefined;
  /** By so much each part's probability may be off: faults that weigh no more together share nothing. */
  readonly spare: number;
}

/** By component: weight of all hypotheses that hold at least one of its faults. */
export function componentWeights(scale: Scale, summed: Summed, most: 1 | 2 | 3): Float64Array {
  const { model } = scale;
  const members: number[][] = Array.from({ length: model.components }, () => []);
  for (let f = 0; f < model.faults; f++) members[model.component[f] as number]?.push(f);
  return Float64Array.from(members, (faults) => {
    const sum = faults.reduce((weight, f) => weight + (summed.fault[f] as number), 0);
    if (most === 1) return sum;
    const joinable = faults.filter((f) => !model.alone[f]);
    return sum - sharedWeight(scale, heavy(joinable, summed), summed.pairOf);
  });
}

/** Without the lightest, as long as they weigh no more together than is to spare. */
function heavy(faults: readonly number[], { fault, total, spare }: Summed): readonly number[] {
  const byWeight = [...faults].sort((a, b) => (fault[a] as number) - (fault[b] as number));
  let passed = 0;
  const first = byWeight.findIndex((f) => {
    passed += fault[f] as number;
    return passed > spare * total;
  });
  return first < 0 ? [] : byWeight.slice(first);
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
