import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { priorTotal } from "../../packages/core/src/inference/prior-total.ts";
import { checkModel } from "../../packages/core/src/model/invariant.ts";
import { smallModel } from "../helper/arbitrary-model.ts";
import { bruteForce } from "../reference/brute-force.ts";

const RUNS = { numRuns: 400, seed: 20261 };
const CLOSE = 1e-9;

function apart(a: ArrayLike<number>, b: ArrayLike<number>): number {
  expect(a.length).toBe(b.length);
  return Array.from(a).reduce((most, x, i) => Math.max(most, Math.abs(x - (b[i] as number))), 0);
}

describe("the posterior", () => {
  it.each([1, 2, 3] as const)("equals brute force with up to %i faults together", (most) => {
    fc.assert(
      fc.property(smallModel, (model) => {
        checkModel(model);
        const fast = posterior(model, { tolerance: 0, most });
        const plain = bruteForce(model, most);
        expect(fast.unsearched).toBe(0);
        expect(apart(fast.fault, plain.fault)).toBeLessThan(CLOSE);
        expect(apart(fast.component, plain.component)).toBeLessThan(CLOSE);
        expect(apart(fast.set, plain.set)).toBeLessThan(CLOSE);
        expect(Math.abs(fast.total / plain.total - 1)).toBeLessThan(CLOSE);
        expect(fast.best[0]?.probability).toBeCloseTo(plain.best.probability, 9);
      }),
      RUNS,
    );
  });

  it.each([1, 2, 3] as const)("is measured by the prior of up to %i faults together", (most) => {
    fc.assert(
      fc.property(smallModel, (model) => {
        const asked = { ...model, observations: [], misfireObservations: [] };
        const plain = bruteForce(asked, most);
        expect(Math.abs(priorTotal(model, most) / plain.total - 1)).toBeLessThan(CLOSE);
      }),
      RUNS,
    );
  });
});
