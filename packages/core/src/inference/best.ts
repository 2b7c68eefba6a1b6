// The likeliest hypotheses. A hypothesis cannot be likelier than its least likely member, so only faults
// whose own probability reaches that of the last one kept need to be combined.
import type { Pair } from "./triples.ts";
import { type Scale, weighPair } from "./weigh.ts";

export interface Hypothesis {
  readonly faults: readonly number[];
  readonly weight: number;
}

/** More faults than this are never combined; with so many alike none of the hypotheses stands out. */
const MOST_COMBINED = 24;

export interface Weights {
  /** By fault: by itself, and in all hypotheses. */
  readonly single: Float64Array;
  readonly fault: Float64Array;
  /** Undefined where there are no hypotheses of two. */
  readonly hasPairs: boolean;
  /** A pair with its thirds; undefined where there are none. */
  readonly pairOf: ((a: number, b: number) => Pair) | undefined;
}

/** The `keep` heaviest hypotheses. */
export function bestHypotheses(
  scale: Scale,
  { single, fault, hasPairs, pairOf }: Weights,
  keep: number,
): readonly Hypothesis[] {
  let best: readonly Hypothesis[] = [];
  const add = (found: readonly Hypothesis[]): void => {
    best = [...best, ...found].sort((a, b) => b.weight - a.weight).slice(0, keep);
  };
  add(Array.from(single, (weight, f) => ({ faults: [f], weight })));
  if (hasPairs) add(pairsOf(scale, likely(scale, fault, best)));
  if (pairOf) add(triplesOf(pairOf, likely(scale, fault, best), best.at(-1)?.weight ?? 0));
  return best;
}

/** Faults that can be part of a hypothesis better than the last, likeliest first. */
function likely(
  { model }: Scale,
  fault: Float64Array,
  best: readonly Hypothesis[],
): readonly number[] {
  const least = best.at(-1)?.weight ?? 0;
  return Array.from(fault.keys())
    .filter((f) => !model.alone[f] && (fault[f] as number) >= least)
    .sort((f, g) => (fault[g] as number) - (fault[f] as number))
    .slice(0, MOST_COMBINED);
}

function pairsOf(scale: Scale, members: readonly number[]): readonly Hypothesis[] {
  return members.flatMap((f, i) =>
    members.slice(i + 1).map((g) => ({ faults: [f, g], weight: weighPair(scale, f, g) })),
  );
}

function triplesOf(
  pairOf: (a: number, b: number) => Pair,
  members: readonly number[],
  least: number,
): readonly Hypothesis[] {
  const found: Hypothesis[] = [];
  members.forEach((f, i) => {
    for (let j = i + 1; j < members.length - 1; j++) {
      const g = members[j] as number;
      const { weightWith } = pairOf(f, g);
      for (let k = j + 1; k < members.length; k++) {
        const h = members[k] as number;
        const weight = weightWith(h);
        if (weight >= least) found.push({ faults: [f, g, h], weight });
      }
    }
  });
  return found;
}
