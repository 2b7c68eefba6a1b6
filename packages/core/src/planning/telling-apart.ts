// What must telling the faults apart cost at least? A lower bound of tests and of repairs in vain.
//
// K. R. Pattipati & M. G. Alexandridis, IEEE Transactions on Systems, Man and Cybernetics 20 (1990) 872: a
// plan that ends with one fault known is a code, so it takes at least the average length L of Huffman's;
// no path takes a step twice, so L steps cost at least the L cheapest. Here a fault is a group of
// states that no repair joins, and a repair in vain is a step too: it costs something only to those
// that it does not mend, so at least the share of the rarest state.
import type { PlanState } from "./problem.ts";
import type { Tables } from "./tables.ts";

/** By state: its group; −1 where no repair helps. Undefined where the bound does not hold. */
export function groupsOf(tables: Tables): Int32Array | undefined {
  const { callCost, trialCost, hasTurns, helpCure, states } = tables;
  if (callCost !== undefined || trialCost > 0 || hasTurns) return undefined;
  if (helpCure.some((cure) => cure !== 1)) return undefined;
  const group = Int32Array.from({ length: states }, (_, s) => s);
  const rootOf = (s: number): number => {
    let root = s;
    while (group[root] !== root) root = group[root] as number;
    return root;
  };
  const helped = new Uint8Array(states);
  for (let r = 0; r < tables.repairs; r++) {
    const start = tables.helpStart[r] as number;
    const end = tables.helpStart[r + 1] as number;
    for (let i = start; i < end; i++) {
      const s = tables.helpState[i] as number;
      helped[s] = 1;
      group[rootOf(s)] = rootOf(tables.helpState[start] as number);
    }
  }
  return group.map((_, s) => (helped[s] ? rootOf(s) : -1));
}

/** At least this much is spent on tests and on repairs that do not help. */
export function tellingApartCost(tables: Tables, groups: Int32Array, state: PlanState): number {
  const shares = new Map<number, number>();
  let rarest = 1;
  for (let s = 0; s < groups.length; s++) {
    const chance = state.chance[s] as number;
    if (chance === 0) continue;
    rarest = Math.min(rarest, chance);
    shares.set(groups[s] as number, (shares.get(groups[s] as number) ?? 0) + chance);
  }
  if (shares.size < 2) return 0;
  const costs: number[] = [];
  let branches = 2;
  for (const [t, test] of tables.problem.tests.entries()) {
    if (state.tested[t]) continue;
    costs.push(test.cost);
    branches = Math.max(branches, test.outcomes.length);
  }
  for (let r = 0; r < tables.repairs; r++) {
    if (!state.repaired[r]) costs.push((tables.fixed[r] as number) * rarest);
  }
  return costOfSteps(costs, huffmanLength([...shares.values()], branches));
}

/** Average length of Huffman's code with so many letters. */
export function huffmanLength(weights: readonly number[], letters: number): number {
  const rest = [...weights].sort((a, b) => a - b);
  while (rest.length > 1 && (rest.length - 1) % (letters - 1) !== 0) rest.unshift(0);
  let length = 0;
  while (rest.length > 1) {
    const joined = rest.splice(0, letters).reduce((sum, w) => sum + w, 0);
    length += joined;
    let at = rest.findIndex((w) => w > joined);
    if (at < 0) at = rest.length;
    rest.splice(at, 0, joined);
  }
  return length;
}

function costOfSteps(costs: readonly number[], steps: number): number {
  let sum = 0;
  let left = steps;
  for (const cost of [...costs].sort((a, b) => a - b)) {
    sum += Math.min(1, left) * cost;
    left -= Math.min(1, left);
  }
  return sum;
}
