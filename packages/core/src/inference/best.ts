// The likeliest hypotheses. A hypothesis cannot be likelier than its least likely member, so only faults
// whose own probability reaches that of the last one kept need to be combined.
import { type Scale, weigh } from "./weigh.ts";

export interface Hypothesis {
  readonly faults: readonly number[];
  readonly weight: number;
}

/** More faults than this are never combined; with so many alike none of the hypotheses stands out. */
const MOST_COMBINED = 24;

/** The `keep` heaviest hypotheses, given each fault's weight by itself and in all hypotheses. */
export function bestHypotheses(
  scale: Scale,
  singles: Float64Array,
  summed: Float64Array,
  { most, keep }: { readonly most: 1 | 2 | 3; readonly keep: number },
): readonly Hypothesis[] {
  const found: Hypothesis[] = Array.from(singles, (weight, f) => ({ faults: [f], weight }));
  const least = heaviest(found, keep).at(-1)?.weight ?? 0;
  const members = Array.from(singles.keys())
    .filter((f) => !scale.model.alone[f] && (summed[f] as number) >= least)
    .sort((f, g) => (summed[g] as number) - (summed[f] as number))
    .slice(0, MOST_COMBINED);
  for (let i = 0; most >= 2 && i < members.length; i++) {
    for (let j = i + 1; j < members.length; j++) {
      const pair = [members[i] as number, members[j] as number];
      found.push({ faults: pair, weight: weigh(scale, pair) });
      for (let k = j + 1; most >= 3 && k < members.length; k++) {
        const triple = [...pair, members[k] as number];
        found.push({ faults: triple, weight: weigh(scale, triple) });
      }
    }
  }
  return heaviest(found, keep);
}

function heaviest(found: readonly Hypothesis[], keep: number): readonly Hypothesis[] {
  return [...found].sort((a, b) => b.weight - a.weight).slice(0, keep);
}
