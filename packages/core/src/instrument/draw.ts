// Draws what is wrong with an engine from a diagnosis model: the faults, then the cylinders that miss.
//
// P(H) ∝ Π odds · Π links over one to `most` faults, or one that stands alone. Without links a subset is
// drawn by going through the faults once: with e_j(i) the sum over all j-subsets of faults i, i+1, …,
// fault i joins with chance odds_i·e_{j−1}(i+1) / e_j(i). Links are put in by rejection: a draw is kept
// with chance Π links / bound. All of it is additions, and shares no code with the inference room.
import { type DiagnosisModel, randomSet } from "../model/diagnosis-model.ts";
import type { Random } from "../units/random.ts";

export type Most = 1 | 2 | 3;

/** Faults that are present together, ascending; drawn from the prior of the model. */
export function drawFaults(model: DiagnosisModel, most: Most, random: Random): readonly number[] {
  const links = linksOf(model);
  const highest = Math.max(1, ...links.values());
  const bound = highest ** ((most * (most - 1)) / 2);
  const sums = subsetSums(model, most);
  for (;;) {
    const faults = drawStrangers(model, sums, most, random);
    if (random.uniform() * bound < linked(model, links, faults)) return faults;
  }
}

/** The set of cylinders that faults make miss: one atom of each, united. */
export function drawSet(model: DiagnosisModel, faults: readonly number[], random: Random): number {
  const any = randomSet(model.cylinders);
  return faults.reduce((union, fault) => {
    const start = model.atomStart[fault] as number;
    const chances = model.atomChance.subarray(start, model.atomStart[fault + 1]);
    const set = model.atomSet[start + random.choice(chances)] as number;
    return union === any || set === any ? any : union | set;
  }, 0);
}

/** [j][i]: e_j(i), over faults that can have company. */
function subsetSums({ faults, odds, alone }: DiagnosisModel, most: Most): readonly Float64Array[] {
  const sums = [new Float64Array(faults + 1).fill(1)];
  for (let j = 1; j <= most; j++) {
    const fewer = sums[j - 1] as Float64Array;
    const row = new Float64Array(faults + 1);
    for (let i = faults - 1; i >= 0; i--) {
      const own = alone[i] ? 0 : (odds[i] as number) * (fewer[i + 1] as number);
      row[i] = (row[i + 1] as number) + own;
    }
    sums.push(row);
  }
  return sums;
}

function drawStrangers(
  { faults, odds, alone }: DiagnosisModel,
  sums: readonly Float64Array[],
  most: Most,
  random: Random,
): readonly number[] {
  const sizes = Array.from({ length: most }, (_, j) => sums[j + 1]?.[0] as number);
  const single = Float64Array.from(odds, (weight, f) => (alone[f] ? weight : 0));
  const aloneSum = single.reduce((sum, weight) => sum + weight, 0);
  let left = random.choice([aloneSum, ...sizes]);
  if (left === 0) return [random.choice(single)];
  const drawn: number[] = [];
  for (let i = 0; i < faults && left > 0; i++) {
    if (alone[i]) continue;
    const joins = (odds[i] as number) * (sums[left - 1]?.[i + 1] as number);
    if (random.uniform() * (sums[left]?.[i] as number) >= joins) continue;
    drawn.push(i);
    left--;
  }
  return drawn;
}

/** By pair, the two numbers in one: multipliers of doubled links multiplied. */
function linksOf({ faults, links, alone }: DiagnosisModel): ReadonlyMap<number, number> {
  const byPair = new Map<number, number>();
  for (const { a, b, times } of links) {
    if (alone[a] || alone[b]) continue;
    const key = Math.min(a, b) * faults + Math.max(a, b);
    byPair.set(key, (byPair.get(key) ?? 1) * times);
  }
  return byPair;
}

function linked(
  { faults }: DiagnosisModel,
  links: ReadonlyMap<number, number>,
  members: readonly number[],
): number {
  return members.reduce(
    (product, f, i) =>
      members.slice(i + 1).reduce((p, g) => p * (links.get(f * faults + g) ?? 1), product),
    1,
  );
}
