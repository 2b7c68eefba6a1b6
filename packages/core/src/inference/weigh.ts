// The weight of single hypotheses, one by one: only products and additions, so it keeps every digit.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { type Company, factorOf } from "./company.ts";
import { type Evidence, said } from "./evidence.ts";
import type { Reach } from "./reach.ts";
import { saidOfTwo } from "./third.ts";

export interface Scale {
  readonly model: DiagnosisModel;
  readonly evidence: Evidence;
  /** Built with the weights of the company. */
  readonly reach: Reach;
  readonly company: Company;
}

/** Odds of a fault times what the observations say of it by itself. */
export function saidOfSingle({ evidence }: Scale, f: number): number {
  let product = evidence.plain[f] as number;
  for (const row of evidence.wide) product *= said(row, [f]);
  for (const row of evidence.local) product *= said(row, [f]);
  return product;
}

/** What the misfire findings say of a fault by itself. */
export function expectedOfSingle({ model, reach }: Scale, f: number): number {
  let sum = 0;
  for (let a = model.atomStart[f] as number; a < (model.atomStart[f + 1] as number); a++) {
    sum += (model.atomChance[a] as number) * reach.likelihood(model.atomSet[a] as number);
  }
  return sum;
}

/** w of two faults that can have company, links included. */
export function weighPair({ evidence, reach, company }: Scale, f: number, g: number): number {
  const { first, atomMask, atomWeight, rows, joined } = reach;
  const row = g * rows;
  let sum = 0;
  // a mask is a union by itself, of the same number
  for (let a = first[f] as number; a < (first[f + 1] as number); a++) {
    sum += (atomWeight[a] as number) * (joined[row + (atomMask[a] as number)] as number);
  }
  return sum * saidOfTwo(evidence.wide, f, g) * factorOf(company, f, g);
}
