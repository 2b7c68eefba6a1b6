// How much do all hypotheses weigh before anything is found? The sum over faults, pairs and triples of their
// odds is a matter of their power sums; links are added on top of it: with 1 + d for each link the product
// over a triple is 1 + Σ d + Σ d·d + d·d·d.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { linkTable } from "./link-table.ts";

/** Σ w of a model without its observations, over hypotheses of up to `most` faults. */
export function priorTotal(model: DiagnosisModel, most: 1 | 2 | 3): number {
  let total = 0;
  let sum = 0;
  let squares = 0;
  let cubes = 0;
  model.odds.forEach((own, f) => {
    total += own;
    if (model.alone[f]) return;
    sum += own;
    squares += own ** 2;
    cubes += own ** 3;
  });
  if (most > 1) total += (sum ** 2 - squares) / 2 + linkedWeight(model, most > 2 ? sum : 0);
  if (most > 2) total += (sum ** 3 - 3 * sum * squares + 2 * cubes) / 6;
  return total;
}

/** What the links add to pairs, and to triples where the odds of all add up to `sum`; 0 for pairs alone. */
function linkedWeight(model: DiagnosisModel, sum: number): number {
  const { links, times } = linkTable(model);
  const extra = (a: number, b: number): number => times(a, b) - 1;
  const odds = (f: number): number => model.odds[f] as number;
  const linked = new Float64Array(model.faults);
  const squares = new Float64Array(model.faults);
  const add = (to: number, weight: number): void => {
    linked[to] = (linked[to] as number) + weight;
    squares[to] = (squares[to] as number) + weight ** 2;
  };
  let weight = 0;
  for (const { a, b } of links) {
    const own = extra(a, b);
    const pair = own * odds(a) * odds(b);
    weight += pair;
    if (sum === 0) continue;
    weight += pair * (sum - odds(a) - odds(b));
    add(a, own * odds(b));
    add(b, own * odds(a));
    // of three that are all linked, met at the first two
    for (let c = b + 1; c < model.faults; c++) weight += pair * extra(a, c) * extra(b, c) * odds(c);
  }
  // two links that meet at a fault
  linked.forEach((own, f) => {
    weight += (odds(f) * (own ** 2 - (squares[f] as number))) / 2;
  });
  return weight;
}
