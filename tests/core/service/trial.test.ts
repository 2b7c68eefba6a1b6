// Clean trials and belief, against numbers worked by hand from the formula and against plain simulation of
// Bayes' rule, one trial at a time.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { believedCured, type InputError, trialsNeeded } from "../../../packages/core/src/index.ts";
import { stillBad } from "../../../packages/core/src/service/trial.ts";

describe("a part that behaved well", () => {
  // P = p·gⁿ/(p·gⁿ + 1 − p), worked apart from this code and rounded to six digits.
  it.each([
    [0.01, 0.9, [0.009009, 0.008115, 0.00731, 0.005929, 0.00351, 0.000428]],
    [0.05, 0.5, [0.025641, 0.012987, 0.006536, 0.001642, 0.000051, 0]],
    [0.5, 0.9, [0.473684, 0.447514, 0.421631, 0.371263, 0.258533, 0.040667]],
  ] as const)("with p %s and g %s is believed bad by the formula", (p, g, expected) => {
    const trials = [1, 2, 3, 5, 10, 30];
    for (const [i, n] of trials.entries()) {
      expect(Math.abs(stillBad(p, g, n) - (expected[i] as number))).toBeLessThanOrEqual(5.1e-7);
    }
  });

  it("is what Bayes' rule gives trial by trial", () => {
    const chance = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(chance, chance, fc.nat(40), (p, g, n) => {
        let belief = p;
        for (let i = 0; i < n; i++) belief = (belief * g) / (belief * g + (1 - belief));
        expect(stillBad(p, g, n)).toBeCloseTo(belief, 10);
      }),
      { seed: 2009 },
    );
  });
});

describe("trialsNeeded", () => {
  it.each([
    [0.5, 0.3, 9, 0.9612],
    [0.7, 0.3, 6, 0.952],
    [0.5, 0.1, 28, 0.9503],
  ])("for belief %s and a show chance of %s are %s", (p, f, trials, believed) => {
    expect(trialsNeeded(p, f)).toBe(trials);
    expect(Math.abs(believedCured(p, f, trials) - believed)).toBeLessThanOrEqual(5e-5);
  });

  it("are enough, and one fewer is not", () => {
    const chance = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    fc.assert(
      fc.property(
        chance,
        chance,
        fc.double({ min: 0.01, max: 0.4, noNaN: true }),
        (p, f, doubt) => {
          const n = trialsNeeded(p, f, { doubt });
          expect(n).toBeGreaterThanOrEqual(1);
          expect(believedCured(p, f, n)).toBeGreaterThanOrEqual(1 - doubt - 1e-9);
          if (n > 1) expect(believedCured(p, f, n - 1)).toBeLessThan(1 - doubt);
        },
      ),
      { seed: 2009 },
    );
  });

  it("are one for a fault that always shows, and more the rarer it shows", () => {
    expect(trialsNeeded(0.01, 1)).toBe(1);
    const rarer = [0.9, 0.5, 0.3, 0.1, 0.05].map((f) => trialsNeeded(0.5, f));
    expect(rarer).toEqual([...rarer].sort((a, b) => a - b));
    // exactly at the bound: (1 − f)ⁿ = 1/19 for p = 0.5 and n = 3
    expect(trialsNeeded(0.5, 1 - (1 / 19) ** (1 / 3))).toBe(3);
  });

  it.each([
    [0, 0.3, 0.05, "/belief"],
    [1, 0.3, 0.05, "/belief"],
    [Number.NaN, 0.3, 0.05, "/belief"],
    [0.5, 0, 0.05, "/showChance"],
    [0.5, 1.1, 0.05, "/showChance"],
    [0.5, 0.3, 0, "/doubt"],
    [0.5, 0.3, 1, "/doubt"],
  ])("refuses belief %s, show chance %s, doubt %s at %s", (p, f, doubt, path) => {
    try {
      trialsNeeded(p, f, { doubt });
      expect.unreachable();
    } catch (error) {
      expect((error as InputError).problems.map((each) => each.path)).toEqual([path]);
    }
  });
});
