// The weight of single hypotheses, one by one: only products and additions, so it keeps every digit.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import type { Company } from "./company.ts";
import { type Evidence, said } from "./evidence.ts";
import type { LinkTable } from "./link-table.ts";
import type { Reach } from "./reach.ts";

export interface Scale {
  readonly model: DiagnosisModel;
  readonly evidence: Evidence;
  readonly links: LinkTable;
  /** Built with the weights of the company. */
  readonly reach: Reach;
  readonly company: Company;
}

/** Odds of a fault times what the observations say of it by itself. */
export function saidOfSingle({ evidence }: Scale, f: number): number {
  return (evidence.plain[f] as number) * saidOf(evidence, [f]);
}

/** What the misfire findings say of a fault by itself. */
export function expectedOfSingle({ model, reach }: Scale, f: number): number {
  let sum = 0;
  for (let a = model.atomStart[f] as number; a < (model.atomStart[f + 1] as number); a++) {
    sum += (model.atomChance[a] as number) * reach.likelihood(model.atomSet[a] as number);
  }
  return sum;
}

/** w of two or three faults that can have company, links included. */
export function weigh(scale: Scale, faults: readonly number[]): number {
  const { evidence, links, reach, company } = scale;
  const f = faults[0] as number;
  const g = faults[1] as number;
  const h = faults[2];
  let product = saidOf(evidence, faults) * links.times(f, g);
  // the atoms of the reach hold what is said of each by itself
  for (const fault of faults) product /= company.solo[fault] as number;
  if (h === undefined) return product * expected(reach, f, g);
  return product * links.times(f, h) * links.times(g, h) * expectedOfThree(reach, [f, g, h]);
}

/** What all rows say of faults together. */
function saidOf({ wide, local }: Evidence, faults: readonly number[]): number {
  let product = 1;
  for (const row of wide) product *= said(row, faults);
  for (const row of local) product *= said(row, faults);
  return product;
}

/** Expected likelihood of the union of two, times their weights. */
function expected(reach: Reach, f: number, g: number): number {
  const { first, atomMask, atomWeight, unionSet, joined } = reach;
  const row = g * unionSet.length;
  const end = first[f + 1] as number;
  let sum = 0;
  // a mask is a union by itself, of the same number
  for (let a = first[f] as number; a < end; a++) {
    sum += (atomWeight[a] as number) * (joined[row + (atomMask[a] as number)] as number);
  }
  return sum;
}

function expectedOfThree(reach: Reach, [f, g, h]: readonly [number, number, number]): number {
  const { masks, first, atomMask, atomWeight, unionOf, unionSet, joined } = reach;
  let sum = 0;
  for (let a = first[f] as number; a < (first[f + 1] as number); a++) {
    let inner = 0;
    for (let b = first[g] as number; b < (first[g + 1] as number); b++) {
      const union = unionOf[(atomMask[a] as number) * masks + (atomMask[b] as number)] as number;
      inner += (atomWeight[b] as number) * (joined[h * unionSet.length + union] as number);
    }
    sum += (atomWeight[a] as number) * inner;
  }
  return sum;
}
