// Does the plan fit what a person can see: nothing left, two faults at once, covers, trials put off?
import { describe, expect, it } from "vitest";
import { nextStep } from "../../../packages/core/src/planning/next-step.ts";
import type { PlanProblem } from "../../../packages/core/src/planning/problem.ts";
import {
  afterOutcome,
  afterRepair,
  outcomeChances,
  startOf,
} from "../../../packages/core/src/planning/state.ts";
import { planning, unroll } from "../../helper/plan-tree.ts";

const row = (...p: number[]): Float64Array => Float64Array.from(p);

describe("when nothing is left to try", () => {
  const problem: PlanProblem = {
    chance: row(0.7, 0.2, 0.1),
    tests: [{ cost: 1, outcomes: [row(1, 0, 0), row(0, 1, 1)] }],
    repairs: [{ cost: 10, cures: row(0.9, 0, 0) }],
  };

  it("says how likely that is, in plain numbers", () => {
    const plan = nextStep(problem);
    expect(plan.unmended).toBeCloseTo(1 - 0.63, 12);
    // A test for 1 saves a repair for 10 in three of ten cases.
    expect(plan.expectedCost).toBeCloseTo(1 + 0.7 * 10, 12);
    expect(plan.step).toEqual({ kind: "test", test: 0 });
  });

  it("has no step, costs nothing more and tests no more", () => {
    const state = afterRepair(problem, afterOutcome(problem, startOf(problem), 0, 0), 0);
    const plan = nextStep(problem, state);
    expect(plan).toMatchObject({ step: undefined, expectedCost: 0, unmended: 1, repairOrder: [] });
    const hopeless = nextStep(problem, afterOutcome(problem, startOf(problem), 0, 1));
    expect(hopeless).toMatchObject({ step: undefined, expectedCost: 0, unmended: 1 });
  });

  it("calls where there is somebody to call, and nothing stays unmended", () => {
    const called = { ...problem, callCost: 30 };
    const state = afterOutcome(called, startOf(called), 0, 1);
    const plan = nextStep(called, state);
    expect(plan).toMatchObject({ step: { kind: "call" }, expectedCost: 30, unmended: 0 });
    expect(plan.repairOrder).toEqual([{ step: { kind: "call" }, reached: 1, cured: 1 }]);
  });
});

describe("two faults at once", () => {
  // States: the first alone, the second alone, both. What one repair leaves of both is the other.
  const problem: PlanProblem = {
    chance: row(0.5, 0.3, 0.2),
    tests: [],
    repairs: [
      { cost: 4, cures: row(1, 0, 0), turns: [{ from: 2, to: 1, chance: 1 }] },
      { cost: 6, cures: row(0, 1, 0), turns: [{ from: 2, to: 0, chance: 1 }] },
    ],
  };

  it("takes both repairs when it must, in the cheaper order", () => {
    const plan = nextStep(problem);
    expect(plan.expectedCost).toBeCloseTo(4 + 0.5 * 6, 12);
    expect(plan.repairOrderCost).toBeCloseTo(7, 12);
    expect(plan.unmended).toBe(0);
    expect(unroll(problem, planning()).words).toBe("r0 r1");
  });

  it("leaves the other fault after the first repair", () => {
    expect([...afterRepair(problem, startOf(problem), 0).chance]).toEqual([0, 1, 0]);
  });
});

describe("an access", () => {
  it("is paid once, by the first step that needs it", () => {
    const problem: PlanProblem = {
      chance: row(0.5, 0.5),
      tests: [{ cost: 1, outcomes: [row(1, 0), row(0, 1)], access: [0] }],
      repairs: [
        { cost: 20, cures: row(1, 0), access: [0] },
        // Named twice, opened once.
        { cost: 20, cures: row(0, 1), access: [0, 0] },
      ],
      accessCost: [7],
    };
    const plan = nextStep(problem);
    expect(plan.expectedCost).toBeCloseTo(7 + 1 + 20, 12);
    expect(plan.repairOrderCost).toBeCloseTo(7 + 20 + 0.5 * 20, 12);
    expect(plan.byTest[0]?.worth).toBeCloseTo(9, 12);
    expect([...(plan.byTest[0]?.outcomeChance ?? [])]).toEqual([0.5, 0.5]);
  });
});

describe("between a repair and its trial", () => {
  const problem: PlanProblem = {
    chance: row(0.5, 0.3, 0.2),
    tests: [{ cost: 0.1, outcomes: [row(1, 0, 0), row(0, 1, 1)] }],
    repairs: [
      { cost: 1, cures: row(1, 0, 0) },
      { cost: 1, cures: row(0, 1, 0) },
      { cost: 1, cures: row(0, 0, 1) },
    ],
    trialCost: 4,
  };

  it("it may run already, and only further repairs come into question", () => {
    const state = afterRepair(problem, startOf(problem), 0, false);
    expect(state).toMatchObject({ untried: true, mended: 0.5 });
    const plan = nextStep(problem, state);
    expect(plan.step?.kind).toBe("repair");
    expect(plan.byTest).toEqual([]);
    expect(() => afterOutcome(problem, state, 0, 0)).toThrow(/try whether it runs/);
    expect([...outcomeChances(problem, state, 0)].reduce((a, b) => a + b)).toBeCloseTo(0.5, 12);
  });

  it("a trial in vain shows that it does not run", () => {
    const state = afterRepair(problem, afterRepair(problem, startOf(problem), 0, false), 1);
    expect(state).toMatchObject({ untried: false, mended: 0 });
    expect([...state.chance]).toEqual([0, 0, 1]);
  });
});

describe("what cannot be", () => {
  const problem: PlanProblem = {
    chance: row(1, 0),
    tests: [{ cost: 1, outcomes: [row(1, 0), row(0, 1)] }],
    repairs: [{ cost: 1, cures: row(1, 1) }],
  };
  const start = startOf(problem);

  it.each([
    ["an outcome of probability 0", () => afterOutcome(problem, start, 0, 1), /probability is 0/],
    ["a certain cure in vain", () => afterRepair(problem, start, 0), /probability is 0/],
    ["a test that is not there", () => afterOutcome(problem, start, 1, 0), /no test 1/],
    ["an outcome that is not there", () => afterOutcome(problem, start, 0, 2), /no outcome 2/],
    ["a repair that is not there", () => afterRepair(problem, start, 1), /no repair 1/],
  ])("%s is refused", (_, act, says) => {
    expect(act).toThrow(says);
  });
});

describe("the repair order", () => {
  it("is made up to date after each step: what shares a cause falls back", () => {
    const problem: PlanProblem = {
      chance: row(0.5, 0.2, 0.3),
      tests: [],
      repairs: [
        { cost: 10, cures: row(1, 0, 0) },
        // Second by its chance at the start, and nearly useless once the first was in vain.
        { cost: 12, cures: row(1, 0.01, 0) },
        { cost: 12, cures: row(0, 1, 0) },
        { cost: 10, cures: row(0, 0, 1) },
      ],
      callCost: 60,
    };
    const { repairOrder, repairOrderCost } = nextStep(problem);
    const repairs = repairOrder.flatMap(({ step }) => (step.kind === "repair" ? step.repair : []));
    expect(repairs).toEqual([0, 3, 2]);
    expect(repairOrderCost).toBeCloseTo(10 + 0.5 * 10 + 0.2 * 12, 12);
    expect(repairOrder.map(({ reached }) => reached)).toEqual([1, 0.5, expect.closeTo(0.2, 12)]);
    expect(repairOrder.map(({ cured }) => cured)).toEqual([0.5, 0.3, expect.closeTo(0.2, 12)]);
  });
});

describe("tests that are worth about the same", () => {
  // Three faults with a dear repair each; either test tells one of them, for about the same cost.
  const problem = (cost: number): PlanProblem => ({
    chance: row(0.4, 0.4, 0.2),
    tests: [
      { cost: 1, outcomes: [row(1, 0, 0), row(0, 1, 1)] },
      { cost, outcomes: [row(0, 1, 0), row(1, 0, 1)] },
    ],
    repairs: [
      { cost: 50, cures: row(1, 0, 0) },
      { cost: 50, cures: row(0, 1, 0) },
      { cost: 50, cures: row(0, 0, 1) },
    ],
  });
  const second = (test: number): number => (test === 1 ? 0 : 1);
  const first = (cost: number, prefer?: (test: number) => number) =>
    nextStep(problem(cost), undefined, { maxWork: 0, ...(prefer ? { prefer } : {}) }).step;

  it("begin with the one that is preferred, the others with the one that is worth more", () => {
    expect(first(1.5)).toEqual({ kind: "test", test: 0 });
    expect(first(1.5, second)).toEqual({ kind: "test", test: 1 });
    expect(first(15, second)).toEqual({ kind: "test", test: 0 });
  });
});
