// A whole plan, found by asking for the next step again after every answer: in words, and what it costs.
import { nextStep } from "../../packages/core/src/planning/next-step.ts";
import type {
  PlanOptions,
  PlanProblem,
  PlanState,
  Step,
} from "../../packages/core/src/planning/problem.ts";
import {
  afterOutcome,
  afterRepair,
  outcomeChances,
  startOf,
} from "../../packages/core/src/planning/state.ts";

/** Says what to do in a state; undefined: nothing is left to do. */
export type Policy = (problem: PlanProblem, state: PlanState) => Step | undefined;

export function planning(options: PlanOptions = {}): Policy {
  return (problem, state) => nextStep(problem, state, options).step;
}

/** The repair order alone, made up to date after each step. */
export const repairOrderOnly: Policy = (problem, state) =>
  nextStep(problem, state, { maxWork: 0 }).repairOrder[0]?.step;

export interface Unrolled {
  readonly cost: number;
  /** E.g. `t0(r0 call, r1-r2 call)`: by outcome, then what follows; `-` joins repairs before one trial. */
  readonly words: string;
}

/** Carries a policy out in every case that can come; its cost is exact. */
export function unroll(
  problem: PlanProblem,
  policy: Policy,
  state: PlanState = startOf(problem),
): Unrolled {
  const step = policy(problem, state);
  if (step === undefined) return { cost: 0, words: "" };
  if (step.kind === "call") return { cost: problem.callCost as number, words: "call" };
  if (step.kind === "test") {
    const chances = [...outcomeChances(problem, state, step.test)];
    const parts = chances.map((chance, o) =>
      chance > 1e-12
        ? unroll(problem, policy, afterOutcome(problem, state, step.test, o))
        : { cost: 0, words: "never" },
    );
    const cost = parts.reduce((sum, part, o) => sum + (chances[o] as number) * part.cost, 0);
    const words = `t${step.test}(${parts.map((part) => part.words).join(", ")})`;
    return { cost: cost + stepCost(problem, state, step), words };
  }
  const { cures } = problem.repairs[step.repair] as PlanProblem["repairs"][number];
  const cured = cures.reduce((sum, c, s) => sum + c * (state.chance[s] as number), 0);
  const left = step.thenTry ? 1 - state.mended - cured : 1;
  const own = stepCost(problem, state, step, cured);
  const name = `r${step.repair}`;
  if (left < 1e-12) return { cost: own, words: name };
  const after = afterRepair(problem, state, step.repair, step.thenTry);
  const rest = unroll(problem, policy, after);
  const words = rest.words === "" ? name : `${name}${step.thenTry ? " " : "-"}${rest.words}`;
  return { cost: own + left * rest.cost, words };
}

function stepCost(problem: PlanProblem, state: PlanState, step: Step, cured = 0): number {
  if (step.kind === "call") return problem.callCost as number;
  const trialCost = problem.trialCost ?? 0;
  const of = step.kind === "test" ? problem.tests[step.test] : problem.repairs[step.repair];
  const closed = (of?.access ?? []).filter((a) => !state.open[a]);
  const opening = closed.reduce((sum, a) => sum + (problem.accessCost?.[a] as number), 0);
  if (step.kind === "test") return opening + (of?.cost as number);
  const { cost, lookCost } = problem.repairs[step.repair] as PlanProblem["repairs"][number];
  if (lookCost !== undefined) return opening + lookCost + cured * (cost + trialCost);
  return opening + cost + (step.thenTry ? trialCost : 0);
}
