// What must hold of any planning problem? A violation is a programmer's mistake, so it throws.
import type { PlanAccess, PlanProblem, PlanRepair, PlanTest } from "./problem.ts";

const SLACK = 1e-9;

/** Throws with the first thing that does not hold; returns the problem otherwise. */
export function checkProblem(problem: PlanProblem): PlanProblem {
  const { chance, tests, repairs, accessCost, callCost, trialCost } = problem;
  demand(chance.length > 0, "at least one state is needed");
  demand(chance.every(isChance), "chances lie between 0 and 1");
  demand(isNear(sum(chance), 1), `chances add up to 1 (got ${sum(chance)})`);
  for (const [a, cost] of (accessCost ?? []).entries()) demandCost(cost, `access ${a}`);
  if (callCost !== undefined) demandCost(callCost, "the call");
  if (trialCost !== undefined) demandCost(trialCost, "a trial");
  for (const [t, test] of tests.entries()) checkTest(problem, test, `test ${t}`);
  for (const [r, repair] of repairs.entries()) checkRepair(problem, repair, `repair ${r}`);
  return problem;
}

function checkTest(problem: PlanProblem, test: PlanTest, name: string): void {
  const states = problem.chance.length;
  demandCost(test.cost, name);
  demandAccess(problem, test, name);
  demand(test.outcomes.length > 0, `${name}: at least one outcome`);
  const total = new Float64Array(states);
  for (const row of test.outcomes) {
    demand(row.length === states, `${name}: each outcome needs a number per state`);
    for (let s = 0; s < states; s++) {
      if (!isChance(row[s] as number)) demand(false, `${name}: outcomes are probabilities`);
      total[s] = (total[s] as number) + (row[s] as number);
    }
  }
  const odd = total.findIndex((sumOf) => !isNear(sumOf, 1));
  demand(odd < 0, `${name}: outcomes add up to 1 in state ${odd} (got ${total[odd]})`);
}

function checkRepair(problem: PlanProblem, repair: PlanRepair, name: string): void {
  const states = problem.chance.length;
  demandCost(repair.cost, name);
  if (repair.lookCost !== undefined) demandCost(repair.lookCost, `the look of ${name}`);
  demandAccess(problem, repair, name);
  demand(repair.cures.length === states, `${name}: cures needs a number per state`);
  const total = Float64Array.from(repair.cures);
  for (const { from, to, chance } of repair.turns ?? []) {
    demand(isIndex(from, states) && isIndex(to, states), `${name}: turns join two states`);
    demand(isChance(chance) && from !== to, `${name}: a turn has a chance and leads elsewhere`);
    total[from] = (total[from] as number) + chance;
  }
  demand(repair.cures.every(isChance), `${name}: cures are probabilities`);
  const odd = total.findIndex((sumOf) => sumOf > 1 + SLACK);
  demand(odd < 0, `${name}: cure and turns of state ${odd} add up to at most 1`);
}

function demandAccess(problem: PlanProblem, step: PlanAccess, name: string): void {
  const accesses = (problem.accessCost ?? []).length;
  for (const a of [...(step.access ?? []), ...(step.opens ?? [])]) {
    demand(isIndex(a, accesses), `${name}: access ${a} has no cost`);
  }
}

function demandCost(cost: number, name: string): void {
  demand(Number.isFinite(cost) && cost >= 0, `cost of ${name} at least 0 (got ${cost})`);
}

function demand(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(`planning problem: ${what}`);
}

function isChance(p: number): boolean {
  return p >= 0 && p <= 1 + SLACK;
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) < SLACK;
}

function isIndex(i: number, length: number): boolean {
  return Number.isInteger(i) && i >= 0 && i < length;
}

function sum(list: Iterable<number>): number {
  let total = 0;
  for (const x of list) total += x;
  return total;
}
