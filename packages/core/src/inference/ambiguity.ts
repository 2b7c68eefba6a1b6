// Faults that no answer so far tells apart.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { decibans } from "../units/weight.ts";
import { expectedSetLikelihood, likelihoodRow } from "./evidence.ts";

/** Faults whose likelihoods differ by less than this in all, in decibans, stand in one group. */
const APART_DB = 1;

/**
 * Groups of two or more of the given faults whose rows of likelihoods differ by less than 1 dB in
 * total from the first of their group.
 */
export function ambiguityGroups(
  model: DiagnosisModel,
  faults: readonly number[],
): readonly (readonly number[])[] {
  const groups: { readonly row: readonly number[]; readonly members: number[] }[] = [];
  for (const fault of faults) {
    const row = decibanRow(model, fault);
    const home = groups.find((group) => isNear(group.row, row));
    if (home) home.members.push(fault);
    else groups.push({ row, members: [fault] });
  }
  return groups.map(({ members }) => members).filter(({ length }) => length > 1);
}

/** What each finding says of a fault that is present by itself; the misfire findings together, last. */
function decibanRow(model: DiagnosisModel, fault: number): readonly number[] {
  const sets = expectedSetLikelihood(model, fault);
  return [...likelihoodRow(model, fault), sets].map(decibans);
}

function isNear(a: readonly number[], b: readonly number[]): boolean {
  let apart = 0;
  for (let i = 0; i < a.length && apart < APART_DB; i++) {
    apart += Math.abs((a[i] as number) - (b[i] as number));
  }
  return apart < APART_DB;
}
