// What can be done in a situation, and which situations may follow?
import type { PlanState, Step } from "./problem.ts";
import { afterOutcome, afterRepair, outcomeChances, total } from "./state.ts";
import { NEVER, openingCost, type Tables } from "./tables.ts";

/** A step with its cost now. */
export interface Option {
  readonly step: Step;
  readonly cost: number;
  /** What may follow, each with its probability; the rest is the chance that it runs. */
  readonly next: readonly Following[];
}

export interface Following {
  readonly chance: number;
  /** Of a test; 0 after a repair. */
  readonly outcome: number;
  readonly state: PlanState;
}

/** Steps that can help or tell something: the call first, then repairs, then tests. */
export function optionsOf(tables: Tables, state: PlanState): readonly Option[] {
  const { callCost, problem } = tables;
  const repairs: Option[] = [];
  for (let r = 0; r < tables.repairs; r++) {
    if (!state.untried || !tables.looks[r]) repairs.push(...repairOptions(tables, state, r));
  }
  if (state.untried || (repairs.length === 0 && callCost === undefined)) return repairs;
  const tests = problem.tests.flatMap((_, t) => testOption(tables, state, t) ?? []);
  if (callCost === undefined) return [...repairs, ...tests];
  return [{ step: { kind: "call" }, cost: callCost, next: [] }, ...repairs, ...tests];
}

/** Can this repair mend anything now? */
export function isOfUse(tables: Tables, state: PlanState, repair: number): boolean {
  if (state.repaired[repair]) return false;
  const { helpStart, helpState, helpAny } = tables;
  const end = helpStart[repair + 1] as number;
  let sum = 0;
  for (let i = helpStart[repair] as number; i < end; i++) {
    sum += (helpAny[i] as number) * (state.chance[helpState[i] as number] as number);
  }
  return sum > NEVER * (1 - state.mended);
}

/** Cost of a test now, with what has to be opened for it. */
export function testCost(tables: Tables, state: PlanState, test: number): number {
  const of = tables.problem.tests[test];
  return of === undefined ? 0 : of.cost + openingCost(tables.accessCost, of, state.open);
}

/** A test now; undefined when it is done, or neither tells nor opens anything. */
export function testOption(tables: Tables, state: PlanState, test: number): Option | undefined {
  if (state.tested[test]) return undefined;
  const { problem } = tables;
  const of = problem.tests[test];
  const chances = outcomeChances(problem, state, test);
  const opensMore = of?.opens?.some((a) => !state.open[a]) ?? false;
  if (!opensMore && tellsNothing(of?.outcomes ?? [], state, chances)) return undefined;
  const next: Following[] = [];
  for (const [o, chance] of chances.entries()) {
    if (chance > NEVER)
      next.push({ chance, outcome: o, state: afterOutcome(problem, state, test, o) });
  }
  return { step: { kind: "test", test }, cost: testCost(tables, state, test), next };
}

/** Every outcome is as probable in each state that is left. */
function tellsNothing(
  outcomes: readonly Float64Array[],
  { chance }: PlanState,
  overall: Float64Array,
): boolean {
  return outcomes.every((row, o) => {
    const p = overall[o] as number;
    for (let s = 0; s < row.length; s++) {
      if ((chance[s] as number) > 0 && Math.abs((row[s] as number) - p) > NEVER) return false;
    }
    return true;
  });
}

/** A repair now: tried at once, and where a trial costs something, put off too. */
export function repairOptions(tables: Tables, state: PlanState, repair: number): readonly Option[] {
  if (!isOfUse(tables, state, repair)) return [];
  const of = tables.problem.repairs[repair];
  if (of === undefined) return [];
  const { problem, trialCost } = tables;
  const looks = tables.looks[repair] === 1;
  const cost = (tables.fixed[repair] as number) + openingCost(tables.accessCost, of, state.open);
  const cured = curedBy(tables, state, repair);
  const left = 1 - state.mended - cured;
  const found = cured * (tables.whenFound[repair] as number);
  const step = { kind: "repair", repair } as const;
  const next =
    left > NEVER ? [{ chance: left, outcome: 0, state: afterRepair(problem, state, repair) }] : [];
  const tried: Option = {
    step: { ...step, thenTry: true },
    cost: looks ? cost + found : cost + trialCost,
    next,
  };
  if (trialCost === 0 || looks || left <= NEVER) return [tried];
  const later = afterRepair(problem, state, repair, false);
  if (!canGoOn(tables, later)) return [tried];
  const goOn = [{ chance: 1, outcome: 0, state: later }];
  return [tried, { step: { ...step, thenTry: false }, cost, next: goOn }];
}

function curedBy(tables: Tables, { chance }: PlanState, repair: number): number {
  const { helpStart, helpState, helpCure } = tables;
  const end = helpStart[repair + 1] as number;
  let sum = 0;
  for (let i = helpStart[repair] as number; i < end; i++) {
    sum += (helpCure[i] as number) * (chance[helpState[i] as number] as number);
  }
  return sum;
}

/** Is there another repair to do before the trial? */
function canGoOn(tables: Tables, state: PlanState): boolean {
  if (total(state.chance) <= NEVER) return false;
  for (let r = 0; r < tables.repairs; r++) {
    if (!tables.looks[r] && isOfUse(tables, state, r)) return true;
  }
  return false;
}
