// What does the planner read again and again? The problem in flat arrays, with room to work in.
import type { PlanAccess, PlanProblem, PlanRepair } from "./problem.ts";

/** A probability below this share of what is left counts as none. */
export const NEVER = 1e-12;

export interface Tables {
  readonly problem: PlanProblem;
  readonly states: number;
  readonly repairs: number;
  /** Undefined when nobody can be called. */
  readonly callCost: number | undefined;
  readonly trialCost: number;
  /** By repair: paid in any case, without access and trial; paid when looking finds it; 1 if it looks. */
  readonly fixed: Float64Array;
  readonly whenFound: Float64Array;
  readonly looks: Uint8Array;
  /** By repair, from helpStart[r] to helpStart[r + 1]: states that it helps, and how. */
  readonly helpStart: Int32Array;
  readonly helpState: Int32Array;
  readonly helpCure: Float64Array;
  /** Chance that it mends something: cure or turn. */
  readonly helpAny: Float64Array;
  readonly turns: readonly (readonly FlatTurn[])[];
  /** By state, from byStart[s] to byStart[s + 1]: repairs that help it, cheapest per chance first. */
  readonly byStart: Int32Array;
  readonly byRepair: Int32Array;
  readonly byAny: Float64Array;
  readonly byCure: Float64Array;
  readonly hasAccess: boolean;
  /** By access. */
  readonly accessCost: readonly number[];
  readonly hasTurns: boolean;
  readonly hasLooks: boolean;
  readonly room: Room;
}

/** A turn of a repair whose state of departure is entry `at` of its help list. */
export interface FlatTurn {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly chance: number;
}

/** Arrays that are written over by each use. */
export interface Room {
  readonly weight: Float64Array;
  readonly before: Float64Array;
  readonly helps: Float64Array;
  readonly price: Float64Array;
  readonly done: Uint8Array;
  readonly open: Uint8Array;
  /** The first `actives` places: repairs that help somewhere. */
  readonly active: Int32Array;
  readonly isActive: Uint8Array;
  actives: number;
  readonly order: Int32Array;
  /** By place in the order: weight not mended before it, what it costs, what of it is mended by it. */
  readonly left: Float64Array;
  readonly cost: Float64Array;
  readonly cured: Float64Array;
  /** By place in the order: cost to go, by weight; where the next trial is (−1: call or stop). */
  readonly toGo: Float64Array;
  readonly until: Int32Array;
  readonly known: Float64Array;
}

interface Help {
  readonly repair: number;
  readonly state: number;
  readonly cure: number;
  readonly any: number;
}

/** Flat arrays of a problem that `checkProblem` let through. */
export function tablesOf(problem: PlanProblem): Tables {
  const states = problem.chance.length;
  const trialCost = problem.trialCost ?? 0;
  const { repairs } = problem;
  const fixed = Float64Array.from(repairs, (r) => r.lookCost ?? r.cost);
  const whenFound = Float64Array.from(repairs, (r) => {
    return r.lookCost === undefined ? 0 : r.cost + trialCost;
  });
  const helps = repairs.map((repair, r) => helpOf(repair, r, states));
  const perChance = ({ repair, any }: Help): number =>
    (fixed[repair] as number) / any + (whenFound[repair] as number);
  const byState = Array.from({ length: states }, (): Help[] => []);
  for (const help of helps.flat()) byState[help.state]?.push(help);
  for (const list of byState) list.sort((a, b) => perChance(a) - perChance(b));
  const flat = helps.flat();
  const flatByState = byState.flat();
  return {
    problem,
    states,
    repairs: repairs.length,
    callCost: problem.callCost,
    trialCost,
    fixed,
    whenFound,
    looks: Uint8Array.from(repairs, (r) => (r.lookCost === undefined ? 0 : 1)),
    helpStart: starts(helps),
    helpState: Int32Array.from(flat, (h) => h.state),
    helpCure: Float64Array.from(flat, (h) => h.cure),
    helpAny: Float64Array.from(flat, (h) => h.any),
    turns: repairs.map((repair, r) => flatTurns(repair, helps[r] as readonly Help[])),
    byStart: starts(byState),
    byRepair: Int32Array.from(flatByState, (h) => h.repair),
    byAny: Float64Array.from(flatByState, (h) => h.any),
    byCure: Float64Array.from(flatByState, (h) => h.cure),
    accessCost: problem.accessCost ?? [],
    hasAccess: [...problem.tests, ...repairs].some(({ access }) => (access ?? []).length > 0),
    hasTurns: repairs.some(({ turns }) => (turns ?? []).length > 0),
    hasLooks: repairs.some(({ lookCost }) => lookCost !== undefined),
    room: roomFor(states, repairs.length, (problem.accessCost ?? []).length),
  };
}

/** What opening the accesses costs that a step needs and that are still closed, each once. */
export function openingCost(
  costs: ArrayLike<number>,
  { access = [] }: PlanAccess,
  open: Uint8Array,
): number {
  let sum = 0;
  for (const [i, a] of access.entries()) {
    if (!open[a] && access.indexOf(a) === i) sum += costs[a] as number;
  }
  return sum;
}

/** Marks as open what a step needed or opens; true when something was closed before. */
export function openFor(step: PlanAccess, open: Uint8Array): boolean {
  const opens = leavesMoreOpen(step, open);
  for (const a of step.access ?? []) open[a] = 1;
  for (const a of step.opens ?? []) open[a] = 1;
  return opens;
}

/** Is something closed that will be open after this step? */
export function leavesMoreOpen({ access, opens }: PlanAccess, open: Uint8Array): boolean {
  const isClosed = (a: number): boolean => !open[a];
  return (access?.some(isClosed) ?? false) || (opens?.some(isClosed) ?? false);
}

function helpOf(repair: PlanRepair, r: number, states: number): readonly Help[] {
  const turned = new Float64Array(states);
  for (const { from, chance } of repair.turns ?? []) {
    turned[from] = (turned[from] as number) + chance;
  }
  return Array.from(repair.cures, (cure, state) => {
    return { repair: r, state, cure, any: cure + (turned[state] as number) };
  }).filter(({ any }) => any > 0);
}

function flatTurns({ turns }: PlanRepair, helps: readonly Help[]): readonly FlatTurn[] {
  return (turns ?? [])
    .filter(({ chance }) => chance > 0)
    .map((turn) => ({ ...turn, at: helps.findIndex(({ state }) => state === turn.from) }));
}

function starts(lists: readonly (readonly unknown[])[]): Int32Array {
  const start = new Int32Array(lists.length + 1);
  for (const [i, list] of lists.entries()) start[i + 1] = (start[i] as number) + list.length;
  return start;
}

function roomFor(states: number, repairs: number, accesses: number): Room {
  return {
    weight: new Float64Array(states),
    before: new Float64Array(states),
    helps: new Float64Array(repairs),
    price: new Float64Array(repairs),
    done: new Uint8Array(repairs),
    open: new Uint8Array(accesses),
    active: new Int32Array(repairs),
    isActive: new Uint8Array(repairs),
    actives: 0,
    order: new Int32Array(repairs),
    left: new Float64Array(repairs + 1),
    cost: new Float64Array(repairs),
    cured: new Float64Array(repairs),
    toGo: new Float64Array(repairs + 1),
    until: new Int32Array(repairs + 1),
    known: new Float64Array(states),
  };
}
