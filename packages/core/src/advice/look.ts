// One look at one thing: the answers it can have, and the chance of each in every state.
import { type Answered, answeredOf } from "../compile/answered.ts";
import { type Observed, observe } from "../compile/likelihood.ts";
import type { CylinderName } from "../engine/profile.ts";
import { chanceOf } from "../inference/state.ts";
import type { Answer, Finding } from "../knowledge/answer.ts";
import { MISFIRE_CODES } from "../knowledge/code.ts";
import type { FindingRow } from "../knowledge/schema.ts";
import { randomSet } from "../model/diagnosis-model.ts";
import type { Outlook, Prospect } from "./outlook.ts";

export interface Look {
  readonly row: FindingRow;
  /** Where the finding asks for one. */
  readonly cylinder?: CylinderName;
}

/** An answer, or several that come together, and its chance by state. */
export interface Outcome {
  /** Empty for "anything else". */
  readonly answers: readonly Finding[];
  readonly chance: Float64Array;
}

/** All answers to a look that are worth telling apart, once `given` came out; by state their chances add up to 1. */
export function outcomesOf(
  prospect: Prospect,
  look: Look,
  given: readonly Finding[] = [],
): readonly Outcome[] {
  const outcomes = answersTo(prospect, look.row).map((answer): Outcome => {
    const cylinder = look.cylinder === undefined ? {} : { cylinder: look.cylinder };
    const finding = { finding: look.row.id, answer, ...cylinder };
    const chance = new Float64Array(prospect.chance.length);
    for (const outlook of prospect.outlooks) fill(chance, outlook, [...given, finding], prospect);
    return { answers: [finding], chance };
  });
  // Finer answers than these exist (two smells at once): what is listed shares out the whole.
  for (let s = 0; s < prospect.chance.length; s++) {
    const sum = outcomes.reduce((total, { chance }) => total + (chance[s] as number), 0);
    for (const { chance } of outcomes) chance[s] = (chance[s] as number) / sum;
  }
  return outcomes;
}

function fill(
  chance: Float64Array,
  { engine, subjects, states, start, known }: Outlook,
  findings: readonly Finding[],
  { knowledge }: Prospect,
): void {
  const given = answeredOf(engine, findings, knowledge);
  const said = observe(subjects, given.at(-1) as Answered, [...known, ...given.slice(0, -1)]);
  const isBySet = said.misfireObservations.length > 0;
  // Many states share a set.
  const bySet = new Map<number, number>();
  states.forEach(({ faults, set }, i) => {
    const likelihood = bySet.get(set) ?? setLikelihood(said, set);
    bySet.set(set, likelihood);
    let product = likelihood;
    for (const observation of said.observations) {
      const told = chanceOf(observation, faults);
      // Where the set has its say already, a fault adds only how much likelier than usual it makes this.
      product *= isBySet && observation.form === "choice" ? told / observation.background : told;
    }
    chance[start + i] = product;
  });
}

function setLikelihood({ misfireObservations }: Observed, set: number): number {
  return misfireObservations.reduce((product, { likelihood }) => product * likelihood(set), 1);
}

function answersTo(prospect: Prospect, row: FindingRow): readonly Answer[] {
  const options = Object.keys(row.options);
  switch (row.kind) {
    case "choice":
      return options;
    case "presence":
      return ["yes", "no"];
    case "several":
      return [[], ...options.map((option) => [option])];
    case "codes":
      return codeAnswers(prospect);
    case "counts":
      return countAnswers(prospect);
  }
}

/** Sets of missing cylinders that are told apart by name. */
const SETS_TOLD = 6;

function codeAnswers(prospect: Prospect): readonly Answer[] {
  const sets = likelySets(prospect).filter((names) => names.every(Number.isInteger));
  const codeOf = (name: CylinderName): string => `P0${MISFIRE_CODES.minus + Number(name)}`;
  return [[], [MISFIRE_CODES.several], ...sets.map((names) => names.map(codeOf))];
}

/** Counts as a reader shows them after a few minutes: many where it misses, next to none elsewhere. */
const MANY_COUNTS = 60;

function countAnswers(prospect: Prospect): readonly Answer[] {
  const names = prospect.outlooks[0]?.engine.names ?? [];
  const counts = (many: readonly CylinderName[], count: number): Answer =>
    Object.fromEntries(names.map((name) => [String(name), many.includes(name) ? count : 0]));
  const sets = likelySets(prospect).map((missing) => counts(missing, MANY_COUNTS));
  return [counts([], 0), counts(names, MANY_COUNTS / 4), ...sets];
}

/** The likeliest sets of cylinders that miss steadily, as names. */
function likelySets({ outlooks, chance }: Prospect): readonly (readonly CylinderName[])[] {
  const byNames = new Map<string, { names: readonly CylinderName[]; probability: number }>();
  for (const { engine, states, start } of outlooks) {
    const random = randomSet(engine.names.length);
    states.forEach(({ set }, i) => {
      if (set === 0 || set === random) return;
      const names = engine.names.filter((_, c) => ((set >> c) & 1) === 1);
      const key = names.join(" ");
      const before = byNames.get(key)?.probability ?? 0;
      byNames.set(key, { names, probability: before + (chance[start + i] as number) });
    });
  }
  return [...byNames.values()]
    .sort((a, b) => b.probability - a.probability)
    .slice(0, SETS_TOLD)
    .map(({ names }) => names);
}
