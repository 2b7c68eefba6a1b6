// Which tests tell most about what to repair, for their cost? A guess where to look first.
//
// The measure is information gained per cost, about the repair that would be the cheapest if the fault
// were known: states with the same repair need not be told apart.
import { testCost } from "./moves.ts";
import type { PlanState } from "./problem.ts";
import type { Tables } from "./tables.ts";

/** How many tests are worth a closer look. */
const MOST = 2;

/** The best tests not done yet, best first. */
export function tellingTests(tables: Tables, state: PlanState, most = MOST): readonly number[] {
  if (state.untried) return [];
  const need = needs(tables, state);
  const share = new Float64Array(tables.repairs + 1);
  for (let s = 0; s < need.length; s++) {
    share[need[s] as number] = (share[need[s] as number] as number) + (state.chance[s] as number);
  }
  const before = negentropy(share);
  const ranked: { readonly test: number; readonly gain: number }[] = [];
  for (let t = 0; t < tables.problem.tests.length; t++) {
    if (state.tested[t]) continue;
    const bits = gained(tables, state, t, need, share) - before;
    if (bits > 1e-9) ranked.push({ test: t, gain: bits / testCost(tables, state, t) });
  }
  ranked.sort((a, b) => b.gain - a.gain);
  return ranked.slice(0, most).map(({ test }) => test);
}

/** By state: the cheapest repair per chance, the number of repairs where calling is cheaper. */
function needs(tables: Tables, state: PlanState): Int32Array {
  const { byStart, byRepair, byAny, fixed, whenFound, callCost } = tables;
  const need = new Int32Array(tables.states).fill(tables.repairs);
  for (let s = 0; s < tables.states; s++) {
    const end = byStart[s + 1] as number;
    for (let i = byStart[s] as number; i < end; i++) {
      const r = byRepair[i] as number;
      if (state.repaired[r]) continue;
      const cost = (fixed[r] as number) / (byAny[i] as number) + (whenFound[r] as number);
      if (callCost === undefined || cost < callCost) need[s] = r;
      break;
    }
  }
  return need;
}

/** Negative entropy after the test, averaged over its outcomes; `share` is written over. */
function gained(
  { problem }: Tables,
  { chance }: PlanState,
  test: number,
  need: Int32Array,
  share: Float64Array,
): number {
  let sum = 0;
  for (const row of problem.tests[test]?.outcomes ?? []) {
    share.fill(0);
    let total = 0;
    for (let s = 0; s < need.length; s++) {
      const weight = (row[s] as number) * (chance[s] as number);
      share[need[s] as number] = (share[need[s] as number] as number) + weight;
      total += weight;
    }
    sum += negentropy(share) - plogp(total);
  }
  return sum;
}

function negentropy(share: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < share.length; k++) sum += plogp(share[k] as number);
  return sum;
}

function plogp(p: number): number {
  return p > 0 ? p * Math.log2(p) : 0;
}
