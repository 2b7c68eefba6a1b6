// Do the findings agree with one another? Jensen's conflict measure: 10·log10(Π P(e_i) / P(e_1..n))
// (F. V. Jensen et al., "Analysis in HUGIN of data conflict", UAI 1990/91). Above 0 they disagree.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { decibans } from "../units/weight.ts";
import { likelihoodRow } from "./evidence.ts";

/** Answers that say something, in order. */
export function answersOf(model: DiagnosisModel): readonly number[] {
  const answers = new Set([
    ...model.observations.map((o) => o.answer),
    ...model.misfireObservations.map((o) => o.answer),
  ]);
  return [...answers].sort((a, b) => a - b);
}

/**
 * Conflict in dB. All probabilities, joint and single, are taken over hypotheses of one fault, so that
 * they are of one kind; findings that only two faults together explain show as conflict, and should.
 */
export function conflictDb(model: DiagnosisModel): number {
  const singles = singlesOf(model);
  const { answers } = singles;
  return conflictOf(singles, answers.keys(), total(singles, answers.keys()));
}

/** The answer without which the rest agree best, with the conflict that then remains. */
export function mostConflicting(
  model: DiagnosisModel,
): { readonly answer: number; readonly conflictDb: number } | undefined {
  const singles = singlesOf(model);
  let best: { answer: number; conflictDb: number } | undefined;
  singles.answers.forEach((answer, without) => {
    const rest = [...singles.answers.keys()].filter((other) => other !== without);
    const conflict = conflictOf(singles, rest, total(singles, rest));
    if (!best || conflict < best.conflictDb) best = { answer, conflictDb: conflict };
  });
  return best;
}

/** Faults by themselves, and what each answer says of them; answers by their place in the list. */
interface Singles {
  readonly model: DiagnosisModel;
  readonly answers: readonly number[];
  /** By answer: what its observations say of each fault. */
  readonly said: readonly Float64Array[];
  /** By answer: what its misfire observations say of each atom; undefined where it has none. */
  readonly ofAtom: readonly (Float64Array | undefined)[];
  /** By answer: 10·log10 of the probability of that answer alone. */
  readonly aloneDb: readonly number[];
}

function singlesOf(model: DiagnosisModel): Singles {
  const answers = answersOf(model);
  const said = answers.map(() => new Float64Array(model.faults).fill(1));
  const at = new Map(answers.map((answer, place) => [answer, place]));
  for (let f = 0; f < model.faults; f++) {
    likelihoodRow(model, f).forEach((ratio, i) => {
      const own = said[at.get(model.observations[i]?.answer as number) as number] as Float64Array;
      own[f] = (own[f] as number) * ratio;
    });
  }
  const ofAtom = answers.map((answer) => saidOfAtoms(model, answer));
  const sofar = { model, answers, said, ofAtom, aloneDb: [] };
  const prior = total(sofar, []);
  const aloneDb = answers.map((_, i) => decibans(total(sofar, [i]) / prior));
  return { ...sofar, aloneDb };
}

function saidOfAtoms(model: DiagnosisModel, answer: number): Float64Array | undefined {
  const own = model.misfireObservations.filter((o) => o.answer === answer);
  if (own.length === 0) return undefined;
  const known = new Map<number, number>();
  return Float64Array.from(model.atomSet, (set) => {
    const before = known.get(set) ?? own.reduce((p, { likelihood }) => p * likelihood(set), 1);
    known.set(set, before);
    return before;
  });
}

function conflictOf(singles: Singles, answers: Iterable<number>, joint: number): number {
  let alone = 0;
  for (const i of answers) alone += singles.aloneDb[i] as number;
  return alone - decibans(joint / total(singles, []));
}

/** Σ w over hypotheses of one fault, given some of the answers. */
function total({ model, said, ofAtom }: Singles, answers: Iterable<number>): number {
  const { faults, odds, atomStart, atomChance } = model;
  const weight = Float64Array.from(odds);
  const chance = Float64Array.from(atomChance);
  for (const i of answers) {
    multiply(weight, said[i] as Float64Array);
    const atoms = ofAtom[i];
    if (atoms) multiply(chance, atoms);
  }
  let sum = 0;
  for (let f = 0; f < faults; f++) {
    let expected = 0;
    for (let a = atomStart[f] as number; a < (atomStart[f + 1] as number); a++) {
      expected += chance[a] as number;
    }
    sum += (weight[f] as number) * expected;
  }
  return sum;
}

function multiply(to: Float64Array, by: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = (to[i] as number) * (by[i] as number);
}
