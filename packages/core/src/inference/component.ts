// The probability of a part, whatever has failed in it: its faults' probabilities added up, less what
// two or three of them share.
import { type Scale, weigh } from "./weigh.ts";

/** Faults whose summed weight is below this part of all cannot make a shared weight that matters. */
const NEGLIGIBLE = 1e-10;

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

/**
 * Σ over hypotheses of (members in the component − 1): the weight of every pair of them, where a
 * hypothesis with three of them is met in three pairs and must count twice.
 */
function sharedWeight(scale: Scale, members: readonly number[], most: 2 | 3): number {
  let shared = 0;
  members.forEach((f, i) => {
    members.slice(i + 1).forEach((g, j) => {
      shared += weigh(scale, [f, g]);
      if (most === 2) return;
      shared += withAnyThird(scale, f, g);
      for (const h of members.slice(i + j + 2)) shared -= weigh(scale, [f, g, h]);
    });
  });
  return shared;
}

/** Weight of all triples that hold f and g: strangers summed by kind, then what links add. */
function withAnyThird(scale: Scale, f: number, g: number): number {
  const { evidence, links, inside, weights, size } = scale;
  const [a, b] = [evidence.kindOf[f] as number, evidence.kindOf[g] as number];
  const third = scale.thirds(a, b);
  const [sa, sb] = [evidence.triple(a, b, a), evidence.triple(a, b, b)];
  let sum = 0;
  for (let t = 0; t < size; t++) {
    const xf = inside[f * size + t] as number;
    const xg = inside[g * size + t] as number;
    // neither f nor g is the third of its own pair
    sum += (weights[t] as number) * xf * xg * ((third[t] as number) - sa * xf - sb * xg);
  }
  let weight = Math.max(0, sum) * links.times(f, g);
  for (const h of new Set([...links.near(f), ...links.near(g)])) {
    if (h === f || h === g) continue;
    const factor = links.times(f, h) * links.times(g, h);
    weight += weigh(scale, [f, g, h]) * (1 - 1 / factor);
  }
  return weight;
}
