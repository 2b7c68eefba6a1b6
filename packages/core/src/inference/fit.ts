// Do the findings agree with one another? Jensen's conflict measure: 10·log10(Π P(e_i) / P(e_1..n))
// (F. V. Jensen et al., "Analysis in HUGIN of data conflict", UAI 1990/91). Above 0 they disagree.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { decibans } from "../units/weight.ts";
import { expectedSetLikelihood, likelihoodRow } from "./evidence.ts";

/** Answers that say something, in order. */
export function answersOf(model: DiagnosisModel): readonly number[] {
  const answers = new Set([
    ...model.observations.map((o) => o.answer),
    ...model.misfireObservations.map((o) => o.answer),
  ]);
  return [...answers].sort((a, b) => a - b);
}

/** The model with only the answers that pass. */
export function withAnswers(
  model: DiagnosisModel,
  keep: (answer: number) => boolean,
): DiagnosisModel {
  return {
    ...model,
    observations: model.observations.filter((o) => keep(o.answer)),
    misfireObservations: model.misfireObservations.filter((o) => keep(o.answer)),
  };
}

/**
 * Conflict in dB. All probabilities, joint and single, are taken over hypotheses of one fault, so that
 * they are of one kind; findings that only two faults together explain show as conflict, and should.
 */
export function conflictDb(model: DiagnosisModel): number {
  const prior = singlesTotal(withAnswers(model, () => false));
  const answers = answersOf(model);
  const alone = answers.reduce(
    (sum, answer) =>
      sum + decibans(singlesTotal(withAnswers(model, (other) => other === answer)) / prior),
    0,
  );
  return alone - decibans(singlesTotal(model) / prior);
}

/** Σ w over hypotheses of one fault. */
function singlesTotal(model: DiagnosisModel): number {
  let total = 0;
  for (let f = 0; f < model.faults; f++) {
    const said = likelihoodRow(model, f).reduce((product, ratio) => product * ratio, 1);
    total += (model.odds[f] as number) * said * expectedSetLikelihood(model, f);
  }
  return total;
}

/** The answer without which the rest agree best, with the conflict that then remains. */
export function mostConflicting(
  model: DiagnosisModel,
): { readonly answer: number; readonly conflictDb: number } | undefined {
  let best: { answer: number; conflictDb: number } | undefined;
  for (const answer of answersOf(model)) {
    const rest = conflictDb(withAnswers(model, (other) => other !== answer));
    if (!best || rest < best.conflictDb) best = { answer, conflictDb: rest };
  }
  return best;
}
