// The weight of single hypotheses, one by one: for links, for the list of the best, for parts.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import type { Evidence } from "./evidence.ts";
import type { LinkTable } from "./link-table.ts";

export interface Scale {
  readonly model: DiagnosisModel;
  readonly evidence: Evidence;
  readonly links: LinkTable;
  /** [fault·size + T], see lattice.ts. */
  readonly inside: Float64Array;
  /** What makes "inside" an expected likelihood, see lattice.ts. */
  readonly weights: Float64Array;
  readonly size: number;
  /** By set: Σ over kinds of what a third fault of any kind adds beside two of these kinds. */
  readonly thirds: (a: number, b: number) => Float64Array;
}

/** w of a hypothesis of one to three faults, links included. */
export function weigh(scale: Scale, faults: readonly number[]): number {
  const { evidence, links, inside, weights, size } = scale;
  const [f = 0, g, h] = faults;
  const kind = (fault: number): number => evidence.kindOf[fault] as number;
  if (g === undefined) return weighSingle(scale, f);
  const both = links.times(f, g);
  const said =
    h === undefined
      ? evidence.pair(kind(f), kind(g)) * both
      : evidence.triple(kind(f), kind(g), kind(h)) * both * links.times(f, h) * links.times(g, h);
  let sum = 0;
  for (let t = 0; t < size; t++) {
    const two = (inside[f * size + t] as number) * (inside[g * size + t] as number);
    sum +=
      (weights[t] as number) * (h === undefined ? two : two * (inside[h * size + t] as number));
  }
  return said * Math.max(0, sum);
}

/** A single fault's weight straight from its atoms: only additions, so it keeps every digit. */
function weighSingle({ model, evidence }: Scale, f: number): number {
  let sum = 0;
  const end = model.atomStart[f + 1] as number;
  for (let a = model.atomStart[f] as number; a < end; a++) {
    const likelihood = evidence.bySet[model.atomSet[a] as number] as number;
    sum += (model.atomChance[a] as number) * likelihood;
  }
  return sum * (model.odds[f] as number) * (evidence.solo[evidence.kindOf[f] as number] as number);
}
