// The deliberately plain second answer to "what to do next?": every plan there is, by recursion over what
// has been done and seen. Slow and obvious; shares no code with the planning room.
import type { PlanAccess, PlanProblem } from "../../packages/core/src/planning/problem.ts";

/** What is known and done, spelled out; `weight` by state and `mended` add up to the chance of being here. */
interface Situation {
  readonly weight: readonly number[];
  readonly mended: number;
  readonly untried: boolean;
  readonly tested: ReadonlySet<number>;
  readonly repaired: ReadonlySet<number>;
  readonly open: ReadonlySet<number>;
}

export interface PlainStep {
  readonly name: string;
  /** Expected cost of the best plan that begins so. */
  readonly cost: number;
}

export interface PlainPlan {
  readonly cost: number;
  readonly steps: readonly PlainStep[];
}

const NOTHING = 1e-12;

/** The best plan and every first step with its cost; `mayTest` false: repairs and the call alone. */
export function plainPlan(problem: PlanProblem, mayTest = true): PlainPlan {
  const memory = new Map<string, number>();
  const start: Situation = {
    weight: [...problem.chance],
    mended: 0,
    untried: false,
    tested: new Set(),
    repaired: new Set(),
    open: new Set(),
  };
  const costToGo = (now: Situation): number => {
    if (sum(now.weight) + now.mended < NOTHING) return 0;
    const key = keyOf(now);
    const met = memory.get(key);
    if (met !== undefined) return met;
    const costs = steps(now).map(({ cost }) => cost);
    const best = costs.length > 0 ? Math.min(...costs) : now.untried ? 1e300 : 0;
    memory.set(key, best);
    return best;
  };
  const steps = (now: Situation): PlainStep[] => {
    const all: PlainStep[] = [];
    const here = sum(now.weight) + now.mended;
    for (const [r, repair] of problem.repairs.entries()) {
      const looks = repair.lookCost !== undefined;
      const helps = repair.cures.map((c, s) => c * (now.weight[s] as number));
      const turns = (repair.turns ?? []).map((t) => t.chance * (now.weight[t.from] as number));
      const useful = sum([...helps]) + sum(turns) > NOTHING * here;
      if (now.repaired.has(r) || !useful || (looks && now.untried)) continue;
      const weight = now.weight.map((w, s) => w - (helps[s] as number));
      for (const [i, { from, to }] of (repair.turns ?? []).entries()) {
        weight[from] = (weight[from] as number) - (turns[i] as number);
        weight[to] = (weight[to] as number) + (turns[i] as number);
      }
      const after = {
        ...now,
        weight,
        repaired: new Set([...now.repaired, r]),
        open: opened(now, repair),
      };
      const cured = sum([...helps]);
      const opening = openingOf(problem, now, repair);
      const trial = problem.trialCost ?? 0;
      const tried = { ...after, mended: 0, untried: false };
      const cost = looks
        ? here * ((repair.lookCost as number) + opening) + cured * (repair.cost + trial)
        : here * (repair.cost + opening + trial);
      all.push({ name: `repair ${r}`, cost: cost + costToGo(tried) });
      if (looks || trial === 0) continue;
      const later = { ...after, mended: now.mended + cured, untried: true };
      const put = here * (repair.cost + opening) + costToGo(later);
      if (put < 1e299) all.push({ name: `repair ${r}, no trial`, cost: put });
    }
    if (now.untried) return all;
    if (problem.callCost !== undefined) all.push({ name: "call", cost: here * problem.callCost });
    if (all.length === 0 || !mayTest) return all;
    for (const [t, test] of problem.tests.entries()) {
      if (now.tested.has(t)) continue;
      const known = { tested: new Set([...now.tested, t]), open: opened(now, test) };
      let cost = here * (test.cost + openingOf(problem, now, test));
      for (const row of test.outcomes) {
        const weight = now.weight.map((w, s) => w * (row[s] as number));
        cost += costToGo({ ...now, ...known, weight });
      }
      all.push({ name: `test ${t}`, cost });
    }
    return all;
  };
  return { cost: costToGo(start), steps: steps(start) };
}

function opened({ open }: Situation, step: PlanAccess): Set<number> {
  return new Set([...open, ...(step.access ?? []), ...(step.opens ?? [])]);
}

function openingOf(problem: PlanProblem, { open }: Situation, step: PlanAccess): number {
  const closed = [...new Set(step.access ?? [])].filter((a) => !open.has(a));
  return sum(closed.map((a) => problem.accessCost?.[a] as number));
}

/** Only to remember: what is done, and the weights to twelve digits. */
function keyOf(now: Situation): string {
  const lists = [now.tested, now.repaired, now.open].map((set) => [...set].sort().join(","));
  const weights = [...now.weight, now.mended].map((w) => w.toExponential(11)).join(" ");
  return `${lists.join("|")}|${now.untried}|${weights}`;
}

function sum(list: readonly number[]): number {
  return list.reduce((total, x) => total + x, 0);
}
