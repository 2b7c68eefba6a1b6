// Is a problem that contradicts itself refused, with the place named?
import { describe, expect, it } from "vitest";
import { nextStep } from "../../../packages/core/src/planning/next-step.ts";
import type { PlanProblem } from "../../../packages/core/src/planning/problem.ts";

const row = (...p: number[]): Float64Array => Float64Array.from(p);
const SOUND: PlanProblem = {
  chance: row(0.4, 0.6),
  tests: [{ cost: 1, outcomes: [row(1, 0), row(0, 1)] }],
  repairs: [{ cost: 3, cures: row(1, 0) }],
  callCost: 20,
};

describe("a planning problem", () => {
  it("is taken when it is sound", () => {
    expect(nextStep(SOUND).isOptimal).toBe(true);
  });

  it.each<[string, Partial<PlanProblem>, RegExp]>([
    ["no states", { chance: row() }, /at least one state/],
    ["chances above 1", { chance: row(1.5, -0.5) }, /between 0 and 1/],
    ["chances that add up to .9", { chance: row(0.4, 0.5) }, /add up to 1/],
    ["a negative cost", { callCost: -1 }, /the call at least 0/],
    ["no number as a cost", { trialCost: Number.NaN }, /a trial at least 0/],
    ["an infinite cost", { callCost: Number.POSITIVE_INFINITY }, /the call at least 0/],
    [
      "a test of too few states",
      { tests: [{ cost: 1, outcomes: [row(1)] }] },
      /test 0: each outcome/,
    ],
    ["a test without outcomes", { tests: [{ cost: 1, outcomes: [] }] }, /test 0: at least one/],
    [
      "outcomes that do not add up",
      { tests: [{ cost: 1, outcomes: [row(1, 0.5), row(0, 0.4)] }] },
      /test 0: outcomes add up to 1 in state 1/,
    ],
    [
      "outcomes that are no probabilities",
      { tests: [{ cost: 1, outcomes: [row(2, 1), row(-1, 0)] }] },
      /test 0: outcomes are probabilities/,
    ],
    ["a repair of too few states", { repairs: [{ cost: 1, cures: row(1) }] }, /repair 0: cures/],
    ["a cure of 2", { repairs: [{ cost: 1, cures: row(2, 0) }] }, /repair 0: cures are/],
    [
      "a repair that cures and turns too much",
      { repairs: [{ cost: 1, cures: row(0.8, 0), turns: [{ from: 0, to: 1, chance: 0.5 }] }] },
      /cure and turns of state 0/,
    ],
    [
      "a turn to nowhere",
      { repairs: [{ cost: 1, cures: row(0, 0), turns: [{ from: 0, to: 2, chance: 0.5 }] }] },
      /repair 0: turns join two states/,
    ],
    [
      "an access without a cost",
      { repairs: [{ cost: 1, cures: row(1, 0), access: [0] }] },
      /repair 0: access 0 has no cost/,
    ],
  ])("is refused with %s", (_, change, says) => {
    expect(() => nextStep({ ...SOUND, ...change })).toThrow(says);
  });
});
