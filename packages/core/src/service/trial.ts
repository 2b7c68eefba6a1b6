// How many clean trials until a repair may be believed? A fault that comes and goes may only be hiding.
// Setting as in J. de Kleer, "Diagnosing multiple persistent and intermittent faults" (IJCAI 2009): the
// part is bad or not, and a bad part still behaves well at some moments.
import { InputError, type Problem } from "../units/problem.ts";

/** Belief that a part is bad after clean trials: P = p·gⁿ/(p·gⁿ + 1 − p). */
export function stillBad(belief: number, goodChance: number, trials: number): number {
  const hidden = belief * goodChance ** trials;
  return hidden / (hidden + 1 - belief);
}

export interface TrialOptions {
  /** Doubt that may remain, 0..1. Default 0.05. */
  readonly doubt?: number;
}

const DOUBT = 0.05;

/**
 * Clean trials after which the repair is believed to have cured it: n ≥ ln[α·p/((1 − α)(1 − p))]/ln(1 − f),
 * at least one.
 *
 * @param belief that what was repaired was the fault, in (0, 1)
 * @param showChance that one trial would show the misfire if it were not, in (0, 1]
 *
 * Throws an `InputError` when a number is outside its range.
 */
export function trialsNeeded(
  belief: number,
  showChance: number,
  { doubt = DOUBT }: TrialOptions = {},
): number {
  const problems = [
    ...outside("belief", belief, belief > 0 && belief < 1),
    ...outside("showChance", showChance, showChance > 0 && showChance <= 1),
    ...outside("doubt", doubt, doubt > 0 && doubt < 1),
  ];
  if (problems.length > 0) throw new InputError(problems);
  if (showChance === 1) return 1;
  const odds = (doubt * belief) / ((1 - doubt) * (1 - belief));
  // Rounding must not ask for a trial more where the bound is met exactly.
  return Math.max(1, Math.ceil(Math.log(odds) / Math.log1p(-showChance) - 1e-9));
}

/** Belief that the repair cured it after so many clean trials. */
export function believedCured(belief: number, showChance: number, trials: number): number {
  return 1 - stillBad(1 - belief, 1 - showChance, trials);
}

function outside(name: string, value: number, isInside: boolean): readonly Problem[] {
  if (isInside) return [];
  return [
    {
      code: "chance-range",
      path: `/${name}`,
      message: `${name} is ${value}, which is no usable chance.`,
      hint: "Write a number between 0 and 1; neither certainty leaves anything to prove.",
    },
  ];
}
