// Which plan is cheapest, as far as there is time to look?
//
// Every situation has two bounds: what a plan costs that was found (at first the repair order), and
// what no plan can undercut (at first the fault-known bound). Looking into a situation replaces them by
// those of its best step, so one only falls and the other only rises, and at the root they meet at the
// best plan. Where to look next: H. B. McMahan, M. Likhachev & G. J. Gordon, "Bounded real-time dynamic
// programming", ICML 2005; T. Smith & R. Simmons, "Heuristic search value iteration", UAI 2004.
import { keyOf } from "./belief-key.ts";
import { type KnownFault, knownFaultCost, knownFaultOf } from "./known-fault.ts";
import { type Option, optionsOf, repairOptions, testOption } from "./moves.ts";
import type { PlanState, Step } from "./problem.ts";
import { repairOrder } from "./repair-order.ts";
import { afterOutcome, afterRepair } from "./state.ts";
import type { Tables } from "./tables.ts";
import { groupsOf, tellingApartCost } from "./telling-apart.ts";
import { tellingTests } from "./telling-tests.ts";

/** A situation: what is known and done. */
export interface Node {
  /** What a plan costs that was found; what no plan can undercut. */
  upper: number;
  lower: number;
  readonly confirm: number;
  /** Steps that may still be the best; undefined until somebody looks into it. */
  moves: readonly Move[] | undefined;
  /** A few steps that look good, when there was no time for all. */
  hints: readonly Move[] | undefined;
}

export interface Move {
  readonly step: Step;
  readonly cost: number;
  /** What may follow, side by side: probability, outcome of a test, situation. */
  readonly chance: readonly number[];
  readonly outcome: readonly number[];
  readonly next: readonly Node[];
}

export interface Search {
  readonly tables: Tables;
  readonly known: KnownFault;
  readonly groups: Int32Array | undefined;
  readonly nodes: Map<number, Node[]>;
  readonly state: PlanState;
  readonly root: Node;
  /** All first steps, those too that cannot be the best. */
  readonly first: readonly Move[];
  /** Costs that differ by less are equal. */
  readonly slack: number;
  /** Situations weighed up so far. */
  work: number;
}

/** What rounding may do to a sum of costs. */
const ROUNDING = 1e-13;
/** Going deeper pays while this share of the root's doubt hangs on it. */
const SHARE = 0.05;

/** A search that has looked one step ahead. */
export function searchFrom(tables: Tables, state: PlanState): Search {
  const root = { upper: 0, lower: 0, confirm: 0, moves: undefined, hints: undefined };
  const base = {
    tables,
    known: knownFaultOf(tables),
    groups: groupsOf(tables),
    nodes: new Map<number, Node[]>(),
    state,
    work: 0,
  };
  const search: Search = { ...base, root, first: [], slack: 0 };
  Object.assign(root, bounds(search, state));
  const slack = ROUNDING * root.upper;
  const looked = { ...search, slack };
  const first = lookInto(looked, root, state);
  settle(root, slack);
  return { ...looked, first };
}

/**
 * One walk to where the doubt is, and back with what was found there. Careful, it goes where most is
 * promised and weighs up every step; bold, it goes where the plan goes and tries a few. It turns back
 * early when `isOver`. `via`: its first step.
 */
export function walk(search: Search, bold: boolean, isOver: () => boolean, via?: Move): void {
  const { root, slack } = search;
  const path: Node[] = [];
  let node = root;
  let state = search.state;
  let reach = 1;
  while (true) {
    path.push(node);
    const isNew = bold ? tryHints(search, node, state) : node.moves === undefined;
    if (isNew && !bold) lookInto(search, node, state);
    settle(node, slack);
    const move = node === root && via !== undefined ? via : moveToDoubt(node, slack, bold);
    const at = move === undefined ? -1 : mostDoubtful(move, slack);
    if (move === undefined || at < 0) {
      if (node.moves === undefined) lookInto(search, node, state);
      break;
    }
    const next = move.next[at] as Node;
    reach *= move.chance[at] as number;
    if (isNew && (reach * doubt(next) < SHARE * doubt(root) || isOver())) break;
    state = follow(search.tables, state, move, at);
    node = next;
  }
  for (const passed of path.reverse()) settle(passed, slack);
}

/** Fills in what can be done in a situation and what may follow. */
export function lookInto(search: Search, node: Node, state: PlanState): readonly Move[] {
  node.moves = optionsOf(search.tables, state).map((option) => moveOf(search, option));
  node.hints = undefined;
  return node.moves;
}

/** The repair order's first step and the tests that tell most for their cost; true when they are new. */
function tryHints(search: Search, node: Node, state: PlanState): boolean {
  if (node.moves !== undefined || node.hints !== undefined) return false;
  const { tables } = search;
  const { length } = repairOrder(tables, state);
  const repair = length > 0 ? (tables.room.order[0] as number) : -1;
  const options = repair < 0 ? [] : [...repairOptions(tables, state, repair)];
  for (const test of tellingTests(tables, state)) {
    const option = testOption(tables, state, test);
    if (option !== undefined) options.push(option);
  }
  node.hints = options.map((option) => moveOf(search, option));
  return true;
}

function moveOf(search: Search, { step, cost, next }: Option): Move {
  return {
    step,
    cost,
    chance: next.map(({ chance }) => chance),
    outcome: next.map(({ outcome }) => outcome),
    next: next.map(({ state }) => weigh(search, state)),
  };
}

/** Takes over the bounds of the best step, and drops steps that cannot be it. */
export function settle(node: Node, slack: number): void {
  for (const move of node.hints ?? []) node.upper = Math.min(node.upper, upperOf(move));
  if (node.moves === undefined) return;
  let lower = Number.POSITIVE_INFINITY;
  for (const move of node.moves) {
    node.upper = Math.min(node.upper, upperOf(move));
    lower = Math.min(lower, lowerOf(move));
  }
  node.lower = Math.min(node.upper, Math.max(node.lower, lower));
  const most = node.upper + slack;
  if (node.moves.some((move) => lowerOf(move) > most)) {
    node.moves = node.moves.filter((move) => lowerOf(move) <= most);
  }
  // With no doubt left below, what is left here is rounding.
  if (!node.moves.some((move) => mostDoubtful(move, slack) >= 0)) node.lower = node.upper;
}

/** What a plan costs that begins with this step. */
export function upperOf(move: Move): number {
  let sum = move.cost;
  for (let i = 0; i < move.next.length; i++) {
    sum += (move.chance[i] as number) * (move.next[i] as Node).upper;
  }
  return sum;
}

/** What no plan can undercut that begins with this step. */
export function lowerOf(move: Move): number {
  let sum = move.cost;
  for (let i = 0; i < move.next.length; i++) {
    sum += (move.chance[i] as number) * (move.next[i] as Node).lower;
  }
  return sum;
}

/** The situation that follows. */
export function follow(
  tables: Tables,
  state: PlanState,
  { step, outcome }: Move,
  at: number,
): PlanState {
  if (step.kind === "test") {
    return afterOutcome(tables.problem, state, step.test, outcome[at] as number);
  }
  if (step.kind === "repair") {
    return afterRepair(tables.problem, state, step.repair, step.thenTry);
  }
  return state;
}

/** The step to look into: the one that promises most, or, when bold, the best one found so far. */
function moveToDoubt(node: Node, slack: number, bold: boolean): Move | undefined {
  let best: Move | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const move of node.moves ?? node.hints ?? []) {
    if (mostDoubtful(move, slack) < 0) continue;
    const cost = bold ? upperOf(move) : lowerOf(move);
    if (cost < least) {
      least = cost;
      best = move;
    }
  }
  return best;
}

/** Which of what may follow holds most of the doubt; −1 when nothing does. */
function mostDoubtful(move: Move, slack: number): number {
  let best = -1;
  let most = 0;
  for (let i = 0; i < move.next.length; i++) {
    const next = move.next[i] as Node;
    if (doubt(next) <= slack) continue;
    const share = (move.chance[i] as number) * doubt(next);
    if (share > most) {
      most = share;
      best = i;
    }
  }
  return best;
}

/** How far apart its bounds are. */
export function doubt(node: Node): number {
  return node.upper - node.lower;
}

/** The node of a situation, met before or new. */
function weigh(search: Search, state: PlanState): Node {
  const { find, confirm } = keyOf(state);
  let list = search.nodes.get(find);
  if (list === undefined) {
    list = [];
    search.nodes.set(find, list);
  }
  const met = list.find((node) => node.confirm === confirm);
  if (met !== undefined) return met;
  const node = { ...bounds(search, state), confirm, moves: undefined, hints: undefined };
  list.push(node);
  search.work++;
  return node;
}

function bounds({ tables, known, groups }: Search, state: PlanState) {
  const upper = repairOrder(tables, state).cost;
  const apart = groups === undefined ? 0 : tellingApartCost(tables, groups, state);
  const lower = knownFaultCost(tables, known, state) + apart;
  return { upper, lower: Math.min(upper, lower) };
}
