// How much do all hypotheses weigh before anything is found? The sum over faults, pairs and triples of their
// odds is a matter of their power sums; links are added on top of it: with 1 + d for each link the product
// over a triple is 1 + Σ d + Σ d·d + d·d·d.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { linkTable } from "./link-table.ts";

/** Σ w of a model without its observations, over hypotheses of up to `most` faults. */
export function priorTotal(model: DiagnosisModel, most: 1 | 2 | 3): number {
  const { odds, alone, faults } = model;
  let all = 0;
  let sum = 0;
  let squares = 0;
  let cubes = 0;
  for (let f = 0; f < faults; f++) {
    const own = odds[f] as number;
    all += own;
    if (alone[f]) continue;
    sum += own;
    squares += own ** 2;
    cubes += own ** 3;
  }
  if (most === 1) return all;
  const linked = linkedWeight(model, sum, most);
  const pairs = (sum ** 2 - squares) / 2;
  if (most === 2) return all + pairs + linked;
  return all + pairs + linked + (sum ** 3 - 3 * sum * squares + 2 * cubes) / 6;
}

/** What the links add to pairs and triples. */
function linkedWeight(model: DiagnosisModel, sum: number, most: number): number {
  const { odds, faults } = model;
  const { links, times } = linkTable(model);
  const known: { readonly other: number; readonly extra: number }[][] = Array.from(
    { length: faults },
    () => [],
  );
  let weight = 0;
  for (const { a, b, times } of links) {
    const x = odds[a] as number;
    const y = odds[b] as number;
    const extra = times - 1;
    weight += extra * x * y * (most === 2 ? 1 : 1 + sum - x - y);
    known[a]?.push({ other: b, extra: extra * y });
    known[b]?.push({ other: a, extra: extra * x });
  }
  if (most === 2) return weight;
  known.forEach((own, f) => {
    own.forEach((first, i) => {
      for (const second of own.slice(i + 1)) {
        // a triangle of links is met at each of its three corners
        const third = (times(first.other, second.other) - 1) / 3;
        weight += (odds[f] as number) * first.extra * second.extra * (1 + third);
      }
    });
  });
  return weight;
}
