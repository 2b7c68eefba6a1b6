// The likeliest complete states of a model: which faults, and which cylinders miss because of them. Given
// a state all observations are independent, so a state can be asked what any further look would show.
import { type DiagnosisModel, type Observation, unionOf } from "../model/diagnosis-model.ts";

export interface State {
  /** One or two fault numbers, ascending. */
  readonly faults: readonly number[];
  /** Set of cylinders that miss, see `DiagnosisModel`. */
  readonly set: number;
  /** Of all states told; adds up to 1. */
  readonly probability: number;
}

/** Single faults that are paired with one another. */
const PAIRED = 24;

/**
 * The `most` likeliest states of one fault or of two of the likeliest faults, best first. Three faults at
 * once and unlikely pairs are left out: a plan does not turn on them.
 */
export function likeliestStates(model: DiagnosisModel, most: number): readonly State[] {
  const bySet = setLikelihood(model);
  const singles = Array.from({ length: model.faults }, (_, fault) => [fault] as const);
  const all = singles.flatMap((faults) => statesOf(model, faults, bySet));
  const weightOf = new Float64Array(model.faults);
  for (const { faults, probability } of all) {
    const fault = faults[0] as number;
    weightOf[fault] = (weightOf[fault] as number) + probability;
  }
  const likely = [...weightOf.keys()]
    .filter((fault) => !model.alone[fault])
    .sort((a, b) => (weightOf[b] as number) - (weightOf[a] as number))
    .slice(0, PAIRED)
    .sort((a, b) => a - b);
  likely.forEach((a, i) => {
    for (const b of likely.slice(i + 1)) all.push(...statesOf(model, [a, b], bySet));
  });
  const best = all.sort((a, b) => b.probability - a.probability).slice(0, most);
  const total = best.reduce((sum, { probability }) => sum + probability, 0);
  return best.map((state) => ({ ...state, probability: state.probability / total }));
}

/** P(answers), over single faults only and up to a constant of the prior. */
export function singleFaultEvidence(model: DiagnosisModel): number {
  const bySet = setLikelihood(model);
  let before = 0;
  let after = 0;
  for (let fault = 0; fault < model.faults; fault++) {
    before += model.odds[fault] as number;
    for (const { probability } of statesOf(model, [fault], bySet)) after += probability;
  }
  return after / before;
}

/** Chance of an answer when exactly these faults are present. */
export function chanceOf(
  { form, background, value }: Observation,
  faults: readonly number[],
): number {
  if (form === "choice") {
    let sum = 0;
    let speakers = 0;
    for (const fault of faults) {
      const said = value[fault] as number;
      if (said < 0) continue;
      sum += said;
      speakers++;
    }
    return speakers > 0 ? sum / speakers : background;
  }
  let none = 1 - background;
  for (const fault of faults) none *= 1 - (value[fault] as number);
  return form === "seen" ? 1 - none : none;
}

/** Weights of the states of some faults together. */
function statesOf(
  model: DiagnosisModel,
  faults: readonly number[],
  bySet: (set: number) => number,
): State[] {
  const said = model.observations.reduce((product, o) => product * chanceOf(o, faults), 1);
  const weight = said * linked(model, faults);
  const sets = faults.reduce<ReadonlyMap<number, number>>(
    (before, fault) => joined(model, before, fault),
    new Map([[0, 1]]),
  );
  return [...sets].map(([set, chance]) => ({
    faults,
    set,
    probability: weight * chance * bySet(set),
  }));
}

function joined(
  { cylinders, atomStart, atomChance, atomSet }: DiagnosisModel,
  before: ReadonlyMap<number, number>,
  fault: number,
): ReadonlyMap<number, number> {
  const sets = new Map<number, number>();
  for (let a = atomStart[fault] as number; a < (atomStart[fault + 1] as number); a++) {
    for (const [set, chance] of before) {
      const union = unionOf(cylinders, set, atomSet[a] as number);
      sets.set(union, (sets.get(union) ?? 0) + chance * (atomChance[a] as number));
    }
  }
  return sets;
}

/** Prior odds of the faults, with what breeds what. */
function linked({ odds, links }: DiagnosisModel, faults: readonly number[]): number {
  const own = faults.reduce((product, fault) => product * (odds[fault] as number), 1);
  if (faults.length < 2) return own;
  return links.reduce(
    (product, { a, b, times }) =>
      faults.includes(a) && faults.includes(b) ? product * times : product,
    own,
  );
}

/** Product of the misfire observations, worked out once for each set that is asked for. */
function setLikelihood({ misfireObservations }: DiagnosisModel): (set: number) => number {
  const known = new Map<number, number>();
  return (set) => {
    const before = known.get(set);
    if (before !== undefined) return before;
    const likelihood = misfireObservations.reduce((p, o) => p * o.likelihood(set), 1);
    known.set(set, likelihood);
    return likelihood;
  };
}
