// What must hold of any plan: it is as cheap as it says, and no plan is cheaper where it says so.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nextStep } from "../../../packages/core/src/planning/next-step.ts";
import type { PlanProblem, Step } from "../../../packages/core/src/planning/problem.ts";
import {
  afterOutcome,
  afterRepair,
  outcomeChances,
  startOf,
} from "../../../packages/core/src/planning/state.ts";
import { planProblems } from "../../helper/arbitrary-plan-problem.ts";
import { planning, repairOrderOnly, unroll } from "../../helper/plan-tree.ts";
import { plainPlan } from "../../reference/plain-planner.ts";

const SEED = 20271;
const CLOSE = 1e-9;
const SMALL = planProblems({ states: 4, tests: 2, repairs: 4 });
const TESTS_AND_REPAIRS = planProblems({ states: 5, tests: 3, repairs: 4, everything: false });
/** Repairs so dear that testing often comes first. */
const DEAR_REPAIRS = TESTS_AND_REPAIRS.map((problem) => ({
  ...problem,
  repairs: problem.repairs.map((repair) => ({ ...repair, cost: 10 * repair.cost })),
  ...(problem.callCost === undefined ? {} : { callCost: 10 * problem.callCost }),
}));
const EIGHT_CAUSES = planProblems({ states: 8, tests: 3, repairs: 6, everything: false });

function holds<T>(arbitrary: fc.Arbitrary<T>, numRuns: number, law: (value: T) => void): void {
  fc.assert(fc.property(arbitrary, law), { seed: SEED, numRuns });
}

function nameOf(step: Step): string {
  if (step.kind === "test") return `test ${step.test}`;
  if (step.kind === "call") return "call";
  return `repair ${step.repair}${step.thenTry ? "" : ", no trial"}`;
}

describe("given time, the plan", () => {
  it("costs what the best of all plans costs, and begins as those do", () => {
    holds(SMALL, 300, (problem) => {
      const plan = nextStep(problem, undefined, { settleTies: true });
      const plain = plainPlan(problem);
      expect(plan.isOptimal).toBe(true);
      expect(plan.expectedCost).toBeCloseTo(plain.cost, 9);
      const best = plain.steps.filter(({ cost }) => cost <= plain.cost * (1 + 1e-10));
      if (plan.step !== undefined) {
        expect(plan.ties.map(nameOf).sort()).toEqual(best.map(({ name }) => name).sort());
      }
    });
  });

  it("costs that when it is carried out, answer by answer", () => {
    holds(SMALL, 60, (problem) => {
      const { expectedCost } = nextStep(problem);
      expect(unroll(problem, planning()).cost).toBeCloseTo(expectedCost, 9);
    });
  });

  it("never tests where every answer leads to the same repair", () => {
    let tests = 0;
    holds(DEAR_REPAIRS, 200, (problem) => {
      const { step } = nextStep(problem);
      if (step?.kind !== "test") return;
      tests++;
      const start = startOf(problem);
      const after = [...outcomeChances(problem, start, step.test)].flatMap((chance, o) => {
        const next = () => nextStep(problem, afterOutcome(problem, start, step.test, o)).step;
        return chance > 1e-12 ? [next()] : [];
      });
      const isOne = after.every((next) => JSON.stringify(next) === JSON.stringify(after[0]));
      expect(isOne && after[0]?.kind === "repair").toBe(false);
    });
    expect(tests).toBeGreaterThan(20);
  });
});

describe("given little time, the plan", () => {
  it("lies between the best plan and the repair order", () => {
    holds(EIGHT_CAUSES, 40, (problem) => {
      const best = nextStep(problem);
      expect(best.isOptimal).toBe(true);
      const order = unroll(problem, repairOrderOnly).cost;
      expect(order).toBeCloseTo(best.repairOrderCost, 9);
      for (const maxWork of [0, 20, 200]) {
        const carriedOut = unroll(problem, planning({ maxWork })).cost;
        expect(carriedOut).toBeGreaterThan(best.expectedCost - CLOSE);
        expect(carriedOut).toBeLessThan(order + CLOSE);
      }
    });
  });

  it("only gets better with more", () => {
    holds(EIGHT_CAUSES, 60, (problem) => {
      const plans = [0, 10, 50, 100, 500, 5000].map((maxWork) =>
        nextStep(problem, undefined, { maxWork }),
      );
      expect(plans[0]?.expectedCost).toBeLessThan((plans[0]?.repairOrderCost as number) + CLOSE);
      for (const [i, plan] of plans.entries()) {
        const before = plans[i - 1] ?? plan;
        expect(plan.expectedCost).toBeLessThanOrEqual(before.expectedCost);
        expect(plan.atLeast).toBeGreaterThanOrEqual(before.atLeast);
        expect(plan.atLeast).toBeLessThanOrEqual(plan.expectedCost);
      }
    });
  });

  it("stops as soon as it is told that it is enough", () => {
    holds(EIGHT_CAUSES, 30, (problem) => {
      let told = 0;
      let asked = 0;
      const isEnough = () => {
        asked++;
        if (asked >= 3) told++;
        return asked >= 3;
      };
      const stopped = nextStep(problem, undefined, { isEnough });
      // Once on the way, and once more when it is back.
      expect(told).toBeLessThanOrEqual(2);
      expect(stopped.expectedCost).toBeLessThan(stopped.repairOrderCost + CLOSE);
    });
  });
});

describe("the same problem told otherwise", () => {
  it("with a test more that tells nothing has the same plan", () => {
    holds(TESTS_AND_REPAIRS, 60, (problem) => {
      const coin = problem.chance.map(() => 0.5);
      const idle = { cost: 1, outcomes: [coin, coin] };
      const told = nextStep({ ...problem, tests: [...problem.tests, idle] });
      const plan = nextStep(problem);
      expect(told.expectedCost).toBeCloseTo(plan.expectedCost, 9);
      expect(told.step).toEqual(plan.step);
      expect(told.byTest.at(-1)?.worth).toBeLessThan(0);
    });
  });

  it("in other units costs as much in those", () => {
    holds(SMALL, 60, (problem) => {
      const plan = nextStep(problem, undefined, { settleTies: true });
      const inSeconds = nextStep(timesCosts(problem, 60), undefined, { settleTies: true });
      expect(inSeconds.expectedCost).toBeCloseTo(60 * plan.expectedCost, 7);
      expect(inSeconds.ties).toEqual(plan.ties);
    });
  });

  it("in another order has the same plan in that order", () => {
    holds(SMALL, 60, (problem) => {
      const plan = nextStep(problem, undefined, { settleTies: true });
      const turned = nextStep(backwards(problem), undefined, { settleTies: true });
      expect(turned.expectedCost).toBeCloseTo(plan.expectedCost, 9);
      const back = turned.ties.map((step) => nameOf(mirrored(problem, step)));
      expect(back.sort()).toEqual(plan.ties.map(nameOf).sort());
    });
  });
});

describe("what is known after a step", () => {
  it("adds up to one, on whatever way", () => {
    holds(
      fc.tuple(SMALL, fc.array(fc.nat({ max: 30 }), { maxLength: 6 })),
      200,
      ([problem, way]) => {
        let state = startOf(problem);
        for (const pick of way) {
          const test = pick % Math.max(1, problem.tests.length);
          const repair = pick % problem.repairs.length;
          if (pick % 2 === 0 && problem.tests.length > 0 && !state.untried) {
            const chances = outcomeChances(problem, state, test);
            expect(chances.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
            state = afterOutcome(problem, state, test, chances.indexOf(Math.max(...chances)));
          } else {
            const later = afterRepair(problem, state, repair, false);
            const left = later.chance.reduce((a, b) => a + b, 0);
            state = left < 0.01 ? later : afterRepair(problem, state, repair, pick % 3 > 0);
          }
          expect(state.mended + state.chance.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
          expect(state.chance.every((p) => p >= 0)).toBe(true);
        }
      },
    );
  });
});

function timesCosts(problem: PlanProblem, by: number): PlanProblem {
  return {
    ...problem,
    tests: problem.tests.map((test) => ({ ...test, cost: by * test.cost })),
    repairs: problem.repairs.map((repair) => ({
      ...repair,
      cost: by * repair.cost,
      ...(repair.lookCost === undefined ? {} : { lookCost: by * repair.lookCost }),
    })),
    accessCost: (problem.accessCost ?? []).map((cost) => by * cost),
    trialCost: by * (problem.trialCost ?? 0),
    ...(problem.callCost === undefined ? {} : { callCost: by * problem.callCost }),
  };
}

function backwards(problem: PlanProblem): PlanProblem {
  const last = problem.chance.length - 1;
  return {
    ...problem,
    chance: problem.chance.toReversed(),
    tests: problem.tests.toReversed().map((test) => ({
      ...test,
      outcomes: test.outcomes.toReversed().map((row) => row.toReversed()),
    })),
    repairs: problem.repairs.toReversed().map(({ turns, ...repair }) => ({
      ...repair,
      cures: repair.cures.toReversed(),
      ...(turns === undefined
        ? {}
        : { turns: turns.map((t) => ({ ...t, from: last - t.from, to: last - t.to })) }),
    })),
  };
}

function mirrored(problem: PlanProblem, step: Step): Step {
  if (step.kind === "test") return { ...step, test: problem.tests.length - 1 - step.test };
  if (step.kind === "call") return step;
  return { ...step, repair: problem.repairs.length - 1 - step.repair };
}
