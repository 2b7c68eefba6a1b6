// What to do next? The search's answer, and the reasons for it.
import { checkProblem } from "./check-problem.ts";
import { testCost } from "./moves.ts";
import type {
  OrderedStep,
  Plan,
  PlanOptions,
  PlanProblem,
  PlanState,
  Step,
  TestWorth,
} from "./problem.ts";
import { repairOrder } from "./repair-order.ts";
import {
  doubt,
  follow,
  lookInto,
  lowerOf,
  type Move,
  type Search,
  searchFrom,
  settle,
  upperOf,
  walk,
} from "./search.ts";
import { outcomeChances, startOf } from "./state.ts";
import { NEVER, type Tables, tablesOf } from "./tables.ts";

const MAX_WORK = 100_000;
/** Plans whose costs differ by less than this share are equally good. */
const EQUAL = 1e-10;
/**
 * From this part of the worth of the best test on, another is about as good: a search that ends early finds most
 * of that worth behind whichever it went into first.
 */
const AS_WORTHY = 0.9;

/**
 * The next step of the cheapest plan found, from nothing done yet or from what is known by now. Given
 * more time the expected cost only falls. Throws if the problem contradicts itself.
 */
export function nextStep(
  problem: PlanProblem,
  state: PlanState = startOf(problem),
  options: PlanOptions = {},
): Plan {
  const tables = tablesOf(checkProblem(problem));
  const search = searchFrom(tables, state);
  const { maxWork = MAX_WORK, isEnough } = options;
  const isOver = (): boolean => search.work >= maxWork || isEnough?.() === true;
  const rival = options.prefer && preferred(search, options.prefer);
  think(search, isOver, rival);
  if (options.settleTies) settleTies(search, isOver);
  const best = asGood(search, rival, bestMove(search));
  const { root, first, slack } = search;
  const untestedCost = costUntested(search);
  return {
    step: best?.step,
    ties: first.filter((move) => isBest(search, move)).map(({ step }) => step),
    expectedCost: root.upper,
    atLeast: root.lower,
    isOptimal: doubt(root) <= slack,
    work: search.work,
    ...orderOf(tables, state),
    untestedCost,
    byTest: worths(search, untestedCost),
  };
}

/**
 * Walks until the bounds meet or it is enough. Bold walks find good plans soon, careful ones prove them;
 * a careful one weighs up every step of a situation, so it waits until it takes no more than half.
 * `begin`: the first step of the first walk.
 */
function think(search: Search, isOver: () => boolean, begin: Move | undefined): void {
  const usual = search.work;
  let ahead = 0;
  let via = begin;
  while (doubt(search.root) > search.slack) {
    if (isOver()) return;
    const before = search.work;
    const isBold = ahead < usual;
    walk(search, isBold, isOver, via);
    via = undefined;
    const spent = search.work - before + 1;
    ahead += isBold ? spent : -spent;
  }
}

/** Cheapest plan found that begins with something else than a test. */
function costUntested({ first, root }: Search): number {
  const untested = first.filter(({ step }) => step.kind !== "test").map(upperOf);
  return untested.length > 0 ? Math.min(...untested) : root.upper;
}

/** What a plan may cost at most to be about as good as the best, which costs `least`. */
function stillGood(search: Search, least: number): number {
  return least + (1 - AS_WORTHY) * Math.max(0, costUntested(search) - least);
}

/** The preferred one of the tests that, one look ahead, are worth about as much as the best. */
function preferred(search: Search, prefer: (test: number) => number): Move | undefined {
  const most = stillGood(search, search.root.upper);
  const byPreference = search.first
    .flatMap((move) =>
      move.step.kind === "test" && upperOf(move) <= most
        ? [{ move, rank: prefer(move.step.test) }]
        : [],
    )
    .sort((a, b) => a.rank - b.rank);
  return byPreference[0]?.move;
}

/** The preferred test instead of the best one, where looking further left it about as good. */
function asGood(search: Search, rival: Move | undefined, best: Move | undefined) {
  if (rival === undefined || best?.step.kind !== "test") return best;
  return upperOf(rival) <= stillGood(search, search.root.upper) ? rival : best;
}

/** Walks on through first steps that might turn out to be as good as the best. */
function settleTies(search: Search, isOver: () => boolean): void {
  for (const move of search.first) {
    const mightBe = (): boolean =>
      lowerOf(move) <= search.root.upper + tolerance(search) && !isBest(search, move);
    while (mightBe() && move.next.some((next) => doubt(next) > search.slack)) {
      if (isOver()) return;
      walk(search, false, isOver, move);
    }
  }
}

function tolerance({ root, slack }: Search): number {
  return Math.max(slack, EQUAL * root.upper);
}

function isBest(search: Search, move: Move): boolean {
  return upperOf(move) <= search.root.upper + tolerance(search);
}

/** Of equal steps the first: the call before repairs, repairs before tests. */
function bestMove(search: Search): Move | undefined {
  const best = search.first.find((move) => isBest(search, move));
  if (best?.step.kind !== "test") return best;
  // Where every answer leads to the same repair, that repair comes first and the test is for later.
  const repair = sameRepairAfter(search, best);
  if (repair === undefined) return best;
  const before = search.root.upper;
  for (const [i, next] of repair.next.entries()) {
    if (next.moves === undefined) {
      lookInto(search, next, follow(search.tables, search.state, repair, i));
    }
    settle(next, search.slack);
  }
  settle(search.root, search.slack);
  return search.root.upper < before ? bestMove(search) : best;
}

/** The first step that begins every plan after this test, if it is one repair. */
function sameRepairAfter(search: Search, test: Move): Move | undefined {
  const steps = test.next.map((next, i) => {
    const state = follow(search.tables, search.state, test, i);
    const tried = next.moves ?? next.hints ?? [];
    const best = tried.find((move) => upperOf(move) <= next.upper + tolerance(search));
    return best?.step ?? orderOf(search.tables, state).repairOrder[0]?.step;
  });
  const [one] = steps;
  if (one?.kind !== "repair" || !steps.every((step) => isSame(step, one))) return undefined;
  return search.first.find(({ step }) => isSame(step, one));
}

function isSame(a: Step | undefined, b: Step): boolean {
  return (
    a?.kind === "repair" && b.kind === "repair" && a.repair === b.repair && a.thenTry === b.thenTry
  );
}

/** The repair order in words of the problem. */
function orderOf(tables: Tables, state: PlanState) {
  const { cost, length } = repairOrder(tables, state);
  const { order, left, cured, until } = tables.room;
  const steps: OrderedStep[] = [];
  let at = 0;
  while (at < length && (until[at] as number) > at) {
    const next = until[at] as number;
    const reached = (left[at] as number) + (at === 0 ? state.mended : 0);
    for (let k = at; k < next; k++) {
      const repair = order[k] as number;
      const step = { kind: "repair", repair, thenTry: k === next - 1 } as const;
      steps.push({ step, reached, cured: cured[k] as number });
    }
    at = next;
  }
  const rest = (left[at] as number) > NEVER ? (left[at] as number) : 0;
  const canCall = tables.callCost !== undefined;
  if (canCall && rest > 0) steps.push({ step: { kind: "call" }, reached: rest, cured: rest });
  return { repairOrder: steps, repairOrderCost: cost, unmended: canCall ? 0 : rest };
}

function worths({ tables, state, root, first }: Search, untestedCost: number): TestWorth[] {
  const { problem } = tables;
  return [...problem.tests.keys()]
    .filter((test) => !state.tested[test] && !state.untried)
    .map((test) => {
      const move = first.find(({ step }) => step.kind === "test" && step.test === test);
      const cost = move ? upperOf(move) : testCost(tables, state, test) + root.upper;
      const outcomeChance = outcomeChances(problem, state, test);
      return { test, worth: untestedCost - cost, outcomeChance };
    });
}
