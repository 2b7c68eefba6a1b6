// Probabilities as people say them.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sayProbability } from "../../../packages/core/src/index.ts";
import { percent } from "../../../packages/server/src/command/text.ts";

/** The number behind the words. */
function meant(words: string): number {
  const [, over, under] = /(\d+) in (\d+)/.exec(words) ?? [];
  return over === undefined ? 1 : Number(over) / Number(under);
}

describe("a probability in words", () => {
  it.each([
    [1, "almost certain"],
    [0.98, "almost certain"],
    [0.95, "about 19 in 20"],
    [0.94, "about 19 in 20"],
    [0.88, "about 9 in 10"],
    [0.75, "about 3 in 4"],
    [0.67, "about 2 in 3"],
    [0.62, "about 6 in 10"],
    [0.5, "about 1 in 2"],
    [0.34, "about 1 in 3"],
    [0.3, "about 3 in 10"],
    [0.26, "about 1 in 4"],
    [0.25, "about 1 in 4"],
    [0.249, "about 1 in 4"],
    [0.2, "about 1 in 5"],
    [0.17, "about 1 in 6"],
    [0.14, "about 1 in 7"],
    [0.1, "about 1 in 10"],
    [0.083, "about 1 in 12"],
    [0.068, "about 1 in 15"],
    [0.05, "about 1 in 20"],
    [0.02, "about 1 in 50"],
    [0.01, "about 1 in 100"],
    [0.007, "less than 1 in 100"],
    [0.001, "less than 1 in 200"],
    [0, "less than 1 in 200"],
  ])("%d is %s", (probability, words) => {
    expect(sayProbability(probability)).toBe(words);
  });

  const probability = fc.integer({ min: 0, max: 1_000_000 }).map((millionths) => millionths / 1e6);
  const worthSaying = fc.integer({ min: 10_000, max: 1_000_000 }).map((n) => n / 1e6);
  const runs = { numRuns: 5000, seed: 20275 };

  it("never falls while the probability rises", () => {
    fc.assert(
      fc.property(worthSaying, worthSaying, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(meant(sayProbability(low))).toBeLessThanOrEqual(meant(sayProbability(high)));
      }),
      runs,
    );
  });

  it("is the same for what is printed the same", () => {
    const near = fc.integer({ min: -3_000, max: 3_000 }).map((millionths) => millionths / 1e6);
    let alike = 0;
    fc.assert(
      fc.property(probability, near, (a, step) => {
        const b = Math.min(1, Math.max(0, a + step));
        if (percent(a) !== percent(b)) return;
        alike++;
        expect(sayProbability(a)).toBe(sayProbability(b));
      }),
      runs,
    );
    expect(alike).toBeGreaterThan(1000);
  });

  it("is never further off than a fifth", () => {
    fc.assert(
      fc.property(worthSaying, (p) => {
        const ratio = meant(sayProbability(p)) / p;
        expect(ratio).toBeGreaterThan(1 / 1.2);
        expect(ratio).toBeLessThan(1.2);
      }),
      runs,
    );
  });
});
