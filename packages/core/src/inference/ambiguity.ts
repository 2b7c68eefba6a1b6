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
  const rows = new Map(faults.map((f) => [f, decibanRow(model, f)]));
  const groups: number[][] = [];
  for (const fault of faults) {
    const row = rows.get(fault) ?? [];
    const home = groups.find((group) => {
      const first = rows.get(group[0] as number) ?? [];
      return distance(first, row) < APART_DB;
    });
    if (home) home.push(fault);
    else groups.push([fault]);
  }
  return groups.filter((group) => group.length > 1);
}

/** What each finding says of a fault that is present by itself; the misfire findings together, last. */
function decibanRow(model: DiagnosisModel, fault: number): readonly number[] {
  const sets = expectedSetLikelihood(model, fault);
  return [...likelihoodRow(model, fault), sets].map(decibans);
}

function distance(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + Math.abs(value - (b[i] ?? 0)), 0);
}
