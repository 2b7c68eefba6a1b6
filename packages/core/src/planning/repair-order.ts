// What does it cost to repair without testing? Probability per cost, made up to date after each step.
//
// Heckerman, Breese & Rommelse, Communications of the ACM 38 (1995) 49: the repair with the largest chance
// per cost comes first. Where to stop and call, and before which repairs to put a trial off, is then
// the best for that order, found backwards. Its cost is that of a plan which can be carried out, so it
// is an upper bound of the best plan's.
import type { PlanState } from "./problem.ts";
import { NEVER, openFor, openingCost, type Room, type Tables } from "./tables.ts";

/** Weight left that is rounding and nothing else, as a share of the weight at the start. */
const ROUNDING = 1e-15;

/**
 * Expected cost of the repair order from a state. The order itself is left in the room of the tables:
 * the first `length` places of `order`, `left`, `cost`, `cured`, `until`.
 */
export function repairOrder(
  tables: Tables,
  state: PlanState,
): { readonly cost: number; readonly length: number } {
  const length = lineUp(tables, state);
  return { cost: workBack(tables, length, state), length };
}

/** Fills the order; returns its length. */
function lineUp(tables: Tables, state: PlanState): number {
  const { room } = tables;
  const start = takeOver(tables, state);
  const least = ROUNDING * start;
  let left = start;
  let length = 0;
  while (left > 1e3 * least) {
    const onlyBlind = state.untried && length === 0;
    const best = largest(tables, Math.max(NEVER * left, 4 * least), onlyBlind);
    if (best < 0 || (!onlyBlind && !canPay(tables, left))) break;
    room.order[length] = best;
    room.left[length] = left;
    room.cost[length] = (room.price[best] as number) - trialOf(tables, best);
    const cured = mend(tables, best);
    room.cured[length] = cured;
    left -= cured;
    length++;
  }
  room.left[length] = Math.max(0, left);
  return length;
}

/** Copies a state into the room, with the repairs that help there; returns its weight. */
function takeOver(tables: Tables, state: PlanState): number {
  const { room } = tables;
  const { chance } = state;
  room.weight.set(chance);
  room.done.set(state.repaired);
  room.open.set(state.open);
  room.isActive.fill(0);
  room.actives = 0;
  let sum = 0;
  for (let s = 0; s < chance.length; s++) {
    const weight = chance[s] as number;
    if (weight === 0) continue;
    sum += weight;
    addHelp(tables, s, weight);
  }
  return sum;
}

/** Weight that comes to a state, or leaves it, changes what every repair of that state helps. */
function addHelp(tables: Tables, state: number, weight: number): void {
  const { room, byStart, byRepair, byAny } = tables;
  const { helps, done, isActive, active } = room;
  const end = byStart[state + 1] as number;
  for (let i = byStart[state] as number; i < end; i++) {
    const r = byRepair[i] as number;
    if (isActive[r]) {
      helps[r] = (helps[r] as number) + weight * (byAny[i] as number);
    } else if (!done[r]) {
      isActive[r] = 1;
      active[room.actives++] = r;
      helps[r] = weight * (byAny[i] as number);
      priceNow(tables, r);
    }
  }
}

function priceNow(tables: Tables, repair: number): void {
  const { room, problem, fixed } = tables;
  const of = problem.repairs[repair];
  const opening = of && tables.hasAccess ? openingCost(tables.accessCost, of, room.open) : 0;
  room.price[repair] = (fixed[repair] as number) + trialOf(tables, repair) + opening;
}

/** A trial follows every repair but a look that finds nothing. */
function trialOf(tables: Tables, repair: number): number {
  return tables.looks[repair] ? 0 : tables.trialCost;
}

/** The repair with the largest chance per cost; −1 when none has a chance above `least`. */
function largest(tables: Tables, least: number, onlyBlind: boolean): number {
  const { helps, price, active, actives } = tables.room;
  let best = -1;
  let bestHelp = 0;
  let bestPrice = 0;
  for (let i = 0; i < actives; i++) {
    const r = active[i] as number;
    const help = helps[r] as number;
    if (!(help > least) || (onlyBlind && tables.looks[r])) continue;
    const gain = help * bestPrice - bestHelp * (price[r] as number);
    if (best >= 0 && (gain < 0 || (gain === 0 && r > best))) continue;
    best = r;
    bestHelp = help;
    bestPrice = price[r] as number;
  }
  return best;
}

/**
 * May going on cost less than calling now? Not when every repair costs more than twice the call per
 * chance: chances fall as the order goes on, so k repairs with the chances p spend at least
 * 2·call·Σp(1 − Σ of those before) ≥ call·Σp, and that is all they can save. (Where a repair turns states
 * into others a chance may rise; then this is a guess, and the order ends too soon at worst.)
 */
function canPay({ room, fixed, callCost }: Tables, left: number): boolean {
  if (callCost === undefined) return true;
  const saved = 2 * callCost;
  for (let i = 0; i < room.actives; i++) {
    const r = room.active[i] as number;
    if ((room.helps[r] as number) * saved > (fixed[r] as number) * left) return true;
  }
  return false;
}

/** Takes away what a repair mends, everywhere; returns the weight that runs now. */
function mend(tables: Tables, repair: number): number {
  const { room, helpStart, helpState, helpCure, helpAny } = tables;
  const start = helpStart[repair] as number;
  const end = helpStart[repair + 1] as number;
  leave(room, repair);
  let cured = 0;
  for (let i = start; i < end; i++) {
    room.before[i - start] = room.weight[helpState[i] as number] as number;
  }
  for (let i = start; i < end; i++) {
    const weight = room.before[i - start] as number;
    if (weight === 0) continue;
    cured += weight * (helpCure[i] as number);
    shift(tables, helpState[i] as number, -weight * (helpAny[i] as number));
  }
  for (const { at, to, chance } of tables.turns[repair] ?? []) {
    shift(tables, to, (room.before[at] as number) * chance);
  }
  const of = tables.problem.repairs[repair];
  if (tables.hasAccess && of !== undefined && openFor(of, room.open)) {
    for (let i = 0; i < room.actives; i++) priceNow(tables, room.active[i] as number);
  }
  return cured;
}

/** A repair that is done helps no more. */
function leave(room: Room, repair: number): void {
  room.done[repair] = 1;
  room.isActive[repair] = 0;
  const last = room.active[--room.actives] as number;
  const at = room.active.indexOf(repair);
  if (at <= room.actives) room.active[at] = last;
}

function shift(tables: Tables, state: number, by: number): void {
  const { weight } = tables.room;
  weight[state] = (weight[state] as number) + by;
  addHelp(tables, state, by);
}

/** Costs to go from the end backwards: go on, put the trial off, or call. */
function workBack(tables: Tables, length: number, state: PlanState): number {
  const { room, callCost } = tables;
  room.until[length] = -1;
  room.toGo[length] = (callCost ?? 0) * (room.left[length] as number);
  const first = state.untried ? 1 : 0;
  for (let k = length - 1; k >= first; k--) {
    room.toGo[k] = Number.POSITIVE_INFINITY;
    repairsFrom(tables, k, length, room.left[k] as number);
    if (callCost === undefined) continue;
    const calling = callCost * (room.left[k] as number);
    if (calling > (room.toGo[k] as number)) continue;
    room.toGo[k] = calling;
    room.until[k] = -1;
  }
  if (!state.untried || length === 0) return room.toGo[0] as number;
  // What may run already is worked on too, until somebody tries.
  room.toGo[0] = Number.POSITIVE_INFINITY;
  repairsFrom(tables, 0, length, state.mended + (room.left[0] as number));
  return room.toGo[0] as number;
}

/** Best place of the next trial when repairs from place `k` on are done to `weight`. */
function repairsFrom(tables: Tables, k: number, length: number, weight: number): void {
  const { room, trialCost, whenFound } = tables;
  let spent = 0;
  for (let next = k + 1; next <= length; next++) {
    const repair = room.order[next - 1] as number;
    const looks = tables.looks[repair];
    if (looks && next > k + 1) return;
    spent += room.cost[next - 1] as number;
    const found = looks ? (whenFound[repair] as number) * (room.cured[k] as number) : 0;
    const trial = looks ? 0 : trialCost;
    const cost = weight * (spent + trial) + found + (room.toGo[next] as number);
    if (cost < (room.toGo[k] as number)) {
      room.toGo[k] = cost;
      room.until[k] = next;
    }
    if (looks || trialCost === 0) return;
  }
}
