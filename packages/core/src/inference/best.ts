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
  let best = heaviest(
    Array.from(singles, (weight, f) => ({ faults: [f], weight })),
    keep,
  );
  for (let count = 2; count <= most; count++) {
    const least = best.at(-1)?.weight ?? 0;
    const members = Array.from(singles.keys())
      .filter((f) => !scale.model.alone[f] && (summed[f] as number) >= least)
      .sort((f, g) => (summed[g] as number) - (summed[f] as number))
      .slice(0, MOST_COMBINED);
    const found = combined(members, count)
      .map((faults) => ({ faults, weight: weigh(scale, faults) }))
      .filter(({ weight }) => weight >= least);
    best = heaviest([...best, ...found], keep);
  }
  return best;
}

/** All choices of so many, each in the order of the list. */
function combined(list: readonly number[], count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return list.flatMap((first, i) =>
    combined(list.slice(i + 1), count - 1).map((rest) => [first, ...rest]),
  );
}

function heaviest(found: readonly Hypothesis[], keep: number): readonly Hypothesis[] {
  return [...found].sort((a, b) => b.weight - a.weight).slice(0, keep);
}
