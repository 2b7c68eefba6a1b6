// How cheap could it be at best, if somebody told what is wrong? A lower bound for every plan.
//
// The "fault known" bound of M. Vomlelová & J. Vomlel for troubleshooting, widened to repairs that may
// fail, mend a part only, or need an access. For one known state no plan beats its repairs in the order
// of cost per chance, stopping where calling is cheaper.
import type { PlanState } from "./problem.ts";
import { openingCost, type Tables } from "./tables.ts";

/** What the bound needs besides the tables, the same for all situations of a problem. */
export interface KnownFault {
  /** By access: the least that opening it can cost, since another step may open it on the way. */
  readonly accessFloor: Float64Array;
  /** All states; those that a turn leads to come before those that it comes from. */
  readonly order: Int32Array;
  /** By state: the turns that leave it. */
  readonly turns: readonly (readonly Leaving[])[];
}

interface Leaving {
  readonly repair: number;
  readonly to: number;
  readonly chance: number;
}

export function knownFaultOf(tables: Tables): KnownFault {
  const turns = Array.from({ length: tables.states }, (): Leaving[] => []);
  for (const [repair, list] of tables.turns.entries()) {
    for (const { from, to, chance } of list) turns[from]?.push({ repair, to, chance });
  }
  return { accessFloor: accessFloor(tables), order: turnOrder(turns), turns };
}

/** No plan from this state can cost less. */
export function knownFaultCost(tables: Tables, known: KnownFault, state: PlanState): number {
  const cost = tables.room.known;
  cost.fill(0);
  for (let i = 0; i < known.order.length; i++) {
    const s = known.order[i] as number;
    if ((known.turns[s] as readonly Leaving[]).length > 0) {
      cost[s] = partlyMended(tables, known, state, s);
    } else if (tables.hasTurns || (state.chance[s] as number) > 0) {
      cost[s] = inOrder(tables, known, state, s);
    }
  }
  // What runs already still waits for somebody to try.
  let sum = state.mended * tables.trialCost;
  for (let s = 0; s < tables.states; s++) sum += (state.chance[s] as number) * (cost[s] as number);
  return sum;
}

/** The repairs of one state in the order of cost per chance. */
function inOrder(tables: Tables, known: KnownFault, state: PlanState, s: number): number {
  const { byStart, byRepair, byAny, fixed, whenFound, callCost } = tables;
  const call = callCost ?? Number.POSITIVE_INFINITY;
  let spent = 0;
  let left = 1;
  let opening = Number.POSITIVE_INFINITY;
  const end = byStart[s + 1] as number;
  for (let i = byStart[s] as number; i < end; i++) {
    const r = byRepair[i] as number;
    if (state.repaired[r]) continue;
    opening = Math.min(opening, leastOpening(tables, known, state, r));
    const chance = byAny[i] as number;
    const perChance = (fixed[r] as number) / chance + (whenFound[r] as number);
    if (left > 0 && perChance < call) {
      spent += left * chance * perChance;
      left *= Math.max(0, 1 - chance);
    }
    if (opening === 0 && (left <= 0 || perChance >= call)) break;
  }
  if (opening === Number.POSITIVE_INFINITY) return callCost ?? 0;
  const trial = tables.hasLooks ? 0 : tables.trialCost;
  const repairing = spent + opening + trial;
  return callCost === undefined ? repairing : Math.min(callCost, repairing + left * callCost);
}

/** A state that repairs can turn into others: as if they could be tried again and again. */
function partlyMended(tables: Tables, known: KnownFault, state: PlanState, s: number): number {
  const { byStart, byRepair, byAny, byCure, fixed, whenFound, callCost, room } = tables;
  let best = callCost ?? Number.POSITIVE_INFINITY;
  const end = byStart[s + 1] as number;
  for (let i = byStart[s] as number; i < end; i++) {
    const r = byRepair[i] as number;
    if (state.repaired[r]) continue;
    let cost = (fixed[r] as number) + (byCure[i] as number) * (whenFound[r] as number);
    // With nobody to call, a repair in vain may be the last thing to do, so nothing is added to it.
    if (callCost !== undefined) {
      for (const { repair, to, chance } of known.turns[s] as readonly Leaving[]) {
        if (repair === r) cost += chance * (room.known[to] as number);
      }
      cost /= byAny[i] as number;
    }
    best = Math.min(best, cost);
  }
  return best === Number.POSITIVE_INFINITY ? 0 : best;
}

function leastOpening(tables: Tables, known: KnownFault, state: PlanState, repair: number): number {
  const of = tables.problem.repairs[repair];
  return of && tables.hasAccess ? openingCost(known.accessFloor, of, state.open) : 0;
}

function accessFloor({ problem, fixed }: Tables): Float64Array {
  const floor = Float64Array.from(problem.accessCost ?? []);
  const lower = (opens: readonly number[] | undefined, cost: number): void => {
    for (const a of opens ?? []) floor[a] = Math.min(floor[a] as number, cost);
  };
  for (const { opens, cost } of problem.tests) lower(opens, cost);
  for (const [r, { opens }] of problem.repairs.entries()) lower(opens, fixed[r] as number);
  return floor;
}

/** Turns that go in circles count as leading to a state that costs nothing. */
function turnOrder(turns: readonly (readonly Leaving[])[]): Int32Array {
  const order: number[] = [];
  const seen = new Uint8Array(turns.length);
  const visit = (state: number): void => {
    if (seen[state]) return;
    seen[state] = 1;
    for (const { to } of turns[state] ?? []) visit(to);
    order.push(state);
  };
  for (let s = 0; s < turns.length; s++) visit(s);
  return Int32Array.from(order);
}
