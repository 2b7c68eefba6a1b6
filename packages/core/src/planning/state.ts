// What is known after a step? Beliefs move by Bayes' rule; what has been repaired is wrong no longer.
import type { PlanAccess, PlanProblem, PlanState } from "./problem.ts";
import { leavesMoreOpen, openFor } from "./tables.ts";

/** Nothing done yet. */
export function startOf(problem: PlanProblem): PlanState {
  return {
    chance: Float64Array.from(problem.chance),
    mended: 0,
    untried: false,
    tested: new Uint8Array(problem.tests.length),
    repaired: new Uint8Array(problem.repairs.length),
    open: new Uint8Array((problem.accessCost ?? []).length),
  };
}

/** By outcome of a test: its probability now. */
export function outcomeChances(problem: PlanProblem, state: PlanState, test: number): Float64Array {
  const { outcomes } = problem.tests[test] ?? missing("test", test);
  return Float64Array.from(outcomes, (row) => {
    let sum = 0;
    for (let s = 0; s < row.length; s++) sum += (row[s] as number) * (state.chance[s] as number);
    return sum;
  });
}

/**
 * After a test gave this outcome. Throws if the outcome cannot be, or if a repair waits for its trial.
 */
export function afterOutcome(
  problem: PlanProblem,
  state: PlanState,
  test: number,
  outcome: number,
): PlanState {
  const of = problem.tests[test] ?? missing("test", test);
  const row = of.outcomes[outcome] ?? missing("outcome", outcome);
  if (state.untried) throw new Error("planning: try whether it runs before testing on");
  const tested = new Uint8Array(state.tested);
  tested[test] = 1;
  const open = opened(state.open, of);
  const chance = new Float64Array(row.length);
  for (let s = 0; s < row.length; s++) chance[s] = (row[s] as number) * (state.chance[s] as number);
  const { mended, untried, repaired } = state;
  return { chance: normalised(chance), mended, untried, tested, repaired, open };
}

/**
 * After a repair: tried (it does not run), or with `thenTry` false not tried yet. Throws if it must run.
 */
export function afterRepair(
  problem: PlanProblem,
  state: PlanState,
  repair: number,
  thenTry = true,
): PlanState {
  const of = problem.repairs[repair] ?? missing("repair", repair);
  const repaired = new Uint8Array(state.repaired);
  repaired[repair] = 1;
  const open = opened(state.open, of);
  const chance = new Float64Array(state.chance);
  for (let s = 0; s < chance.length; s++) {
    chance[s] = (chance[s] as number) * (1 - (of.cures[s] as number));
  }
  for (const { from, to, chance: turned } of of.turns ?? []) {
    const moved = turned * (state.chance[from] as number);
    chance[from] = Math.max(0, (chance[from] as number) - moved);
    chance[to] = (chance[to] as number) + moved;
  }
  const now = { tested: state.tested, repaired, open };
  if (thenTry) return { chance: normalised(chance), mended: 0, untried: false, ...now };
  return { chance, mended: 1 - total(chance), untried: true, ...now };
}

/** States share what a step leaves as it is. */
function opened(open: Uint8Array, step: PlanAccess): Uint8Array {
  if (!leavesMoreOpen(step, open)) return open;
  const now = new Uint8Array(open);
  openFor(step, now);
  return now;
}

/** Sum of the entries. */
export function total(chance: Float64Array): number {
  let sum = 0;
  for (let s = 0; s < chance.length; s++) sum += chance[s] as number;
  return sum;
}

function normalised(chance: Float64Array): Float64Array {
  const sum = total(chance);
  if (!(sum > 0)) throw new Error("planning: this cannot have been seen, its probability is 0");
  for (let s = 0; s < chance.length; s++) chance[s] = (chance[s] as number) / sum;
  return chance;
}

function missing(what: string, index: number): never {
  throw new Error(`planning: there is no ${what} ${index}`);
}
