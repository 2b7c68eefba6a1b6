// The probability of a part, whatever has failed in it: its faults' probabilities added up, less what
// two or three of them share.
import { type Scale, weigh } from "./weigh.ts";

/** Faults whose summed weight is below this part of all cannot make a shared weight that matters. */
const NEGLIGIBLE = 1e-8;

/** By component: weight of all hypotheses that hold at least one of its faults. */
export function componentWeights(
  scale: Scale,
  summed: Float64Array,
  total: number,
  most: 1 | 2 | 3,
): Float64Array {
  const { model } = scale;
  const members: number[][] = Array.from({ length: model.components }, () => []);
  for (let f = 0; f < model.faults; f++) members[model.component[f] as number]?.push(f);
  return Float64Array.from(members, (faults) => {
    const sum = faults.reduce((weight, f) => weight + (summed[f] as number), 0);
    if (most === 1) return sum;
    const joinable = faults.filter(
      (f) => !model.alone[f] && (summed[f] as number) > NEGLIGIBLE * total,
    );
    return sum - sharedWeight(scale, joinable, most);
  });
}

/** Σ over hypotheses of (members in the component − 1). */
function sharedWeight(scale: Scale, members: readonly number[], most: 2 | 3): number {
  let shared = 0;
  for (let i = 0; i < members.length; i++) {
    for (let j = i + 1; j < members.length; j++) {
      const pair = [members[i] as number, members[j] as number];
      shared += weigh(scale, pair);
      if (most === 3) shared += sharedByTriples(scale, members, pair, j);
    }
  }
  return shared;
}

/** Triples that hold this pair; three members of one component are counted once, as 2. */
function sharedByTriples(
  scale: Scale,
  members: readonly number[],
  pair: readonly number[],
  last: number,
): number {
  let shared = 0;
  for (let h = 0; h < scale.model.faults; h++) {
    if (scale.model.alone[h] || pair.includes(h)) continue;
    const position = members.indexOf(h);
    if (position >= 0 && position < last) continue;
    shared += weigh(scale, [...pair, h]) * (position < 0 ? 1 : 2);
  }
  return shared;
}
