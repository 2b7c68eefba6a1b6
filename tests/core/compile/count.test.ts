// What misfire counts tell of the cylinders that miss.
import { describe, expect, it } from "vitest";
import { countsLikelihood } from "../../../packages/core/src/compile/count.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import { rank } from "../../../packages/core/src/index.ts";
import { randomSet } from "../../../packages/core/src/model/diagnosis-model.ts";

const four = resolveEngine({ cylinders: 4, firingOrder: [1, 3, 4, 2], ignition: "rail" });
const sets = Array.from({ length: randomSet(4) + 1 }, (_, set) => set);

function likeliest(counts: readonly number[]): number {
  const likelihood = countsLikelihood(counts);
  return sets.reduce((best, set) => (likelihood(set) > likelihood(best) ? set : best), 0);
}

describe("misfire counts", () => {
  it("point at companions when they share the counts", () => {
    const companion = four.companions[0] as number;
    expect(four.names[companion]).toBe(4);
    expect(likeliest([300, 3, 2, 290])).toBe(1 | (1 << companion));
  });

  it("point at the one cylinder that has them", () => {
    expect(likeliest([2, 0, 410, 1])).toBe(0b0100);
  });

  it("that are alike everywhere point at no fixed set", () => {
    const likelihood = countsLikelihood([80, 90, 85, 82]);
    const fixed = [0b0001, 0b1001, 0b0110, 0b0111];
    for (const set of fixed) expect(likelihood(randomSet(4))).toBeGreaterThan(likelihood(set));
  });

  it("that are few tell only that little was counted", () => {
    const likelihood = countsLikelihood([2, 1, 0, 1]);
    expect(likelihood(0)).toBeGreaterThan(likelihood(0b0001));
    expect(likelihood(0b0001)).toBe(likelihood(0b1001));
    expect(likelihood(0b0001)).toBe(likelihood(randomSet(4)));
  });

  it("keep their digits where the gamma function changes its method", () => {
    // One more count in a cylinder multiplies the Pólya probability by (α + n)/(A + N), exactly.
    const alphas = { hit: (6 * 0.95) / 1, total: 6 };
    for (const n of [10, 62, 63, 64, 65, 500]) {
      const ratio = countsLikelihood([n + 1, 0, 0, 0])(1) / countsLikelihood([n, 0, 0, 0])(1);
      expect(ratio).toBeCloseTo((alphas.hit + n) / (alphas.total + n), 10);
    }
  });

  it("add up to what is left when little was counted", () => {
    // All ways in which eight counts fall on three cylinders.
    const ways: number[][] = [];
    for (let a = 0; a <= 8; a++) for (let b = 0; a + b <= 8; b++) ways.push([a, b, 8 - a - b]);
    const all = (set: number): number =>
      ways.reduce((sum, counts) => sum + countsLikelihood(counts)(set), 0);
    for (const set of [0b001, 0b011, 0b111, randomSet(3)]) expect(all(set)).toBeCloseTo(0.88, 12);
    expect(all(0)).toBeCloseTo(0.08, 12);
  });

  it("stay above zero for every set when a counter ran for hours", () => {
    const likelihood = countsLikelihood([40_000, 38_000, 12, 30]);
    for (const set of sets) expect(likelihood(set)).toBeGreaterThan(0);
    expect(likeliest([40_000, 38_000, 12, 30])).toBe(0b0011);
  });

  it("leave a ranking in numbers when a counter ran for hours", () => {
    const counts = { 1: 40_000, 2: 12, 3: 30, 4: 38_000 };
    const { ranking, cylinders } = rank(four.profile, [{ finding: "counts", answer: counts }]);
    for (const { probability } of ranking) expect(probability).toBeGreaterThanOrEqual(0);
    expect(cylinders.map(({ misses }) => misses > 0.5)).toEqual([true, false, false, true]);
  });
});
