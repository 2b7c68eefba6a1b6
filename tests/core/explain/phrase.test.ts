// Probabilities as people say them.
import { describe, expect, it } from "vitest";
import { sayProbability } from "../../../packages/core/src/index.ts";

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
    [0.94, "about 9 in 10"],
    [0.62, "about 6 in 10"],
    [0.5, "about 5 in 10"],
    [0.15, "about 2 in 10"],
    [0.14, "about 1 in 7"],
    [0.1, "about 1 in 10"],
    [0.083, "about 1 in 12"],
    [0.08, "about 1 in 15"],
    [0.05, "about 1 in 20"],
    [0.02, "about 1 in 50"],
    [0.01, "about 1 in 100"],
    [0.007, "less than 1 in 100"],
    [0.001, "less than 1 in 200"],
    [0, "less than 1 in 200"],
  ])("%d is %s", (probability, words) => {
    expect(sayProbability(probability)).toBe(words);
  });

  const steps = Array.from({ length: 1991 }, (_, i) => 0.01 + i * 0.0005).filter((p) => p <= 1);

  it("never falls while the probability rises", () => {
    const said = steps.map((p) => meant(sayProbability(p)));
    const falls = steps.filter((_, i) => i > 0 && (said[i] ?? 0) < (said[i - 1] ?? 0));
    expect(falls).toEqual([]);
  });

  it("is never further off than a third", () => {
    for (const p of steps) {
      const ratio = meant(sayProbability(p)) / p;
      expect(ratio).toBeGreaterThan(0.75);
      expect(ratio).toBeLessThan(4 / 3 + 1e-9);
    }
  });
});
