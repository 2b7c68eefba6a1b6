import { describe, expect, it } from "vitest";
import { randomFrom, randomOf } from "../../packages/core/src/units/random.ts";

const DRAWS = 20_000;

function draws(of: () => number): readonly number[] {
  return Array.from({ length: DRAWS }, of);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** xoshiro128** as its authors write it, on integers that never overflow. */
function plainWords(state: readonly bigint[], count: number): readonly number[] {
  const low = (x: bigint): bigint => x & 0xffffffffn;
  const rotate = (x: bigint, by: bigint): bigint => low((x << by) | (x >> (32n - by)));
  const s = [...state] as [bigint, bigint, bigint, bigint];
  return Array.from({ length: count }, () => {
    const result = low(rotate(low(s[1] * 5n), 7n) * 9n);
    const shifted = low(s[1] << 9n);
    s[2] ^= s[0];
    s[3] ^= s[1];
    s[1] ^= s[2];
    s[0] ^= s[3];
    s[2] ^= shifted;
    s[3] = rotate(s[3], 11n);
    return Number(result);
  });
}

describe("the generator", () => {
  it("follows the published recurrence, worked out in whole numbers without limit", () => {
    const { word } = randomFrom([1, 2, 3, 4]);
    const words = Array.from({ length: 1000 }, word);
    expect(words).toEqual(plainWords([1n, 2n, 3n, 4n], 1000));
    expect(words.slice(0, 4)).toEqual([11520, 0, 5927040, 70819200]);
  });

  it("gives the same stream for a seed and others for its neighbours", () => {
    const of = (seed: number) => Array.from({ length: 5 }, randomOf(seed).word);
    expect(of(7)).toEqual(of(7));
    expect(new Set([7, 8, 9, 0, -1].map((seed) => of(seed)[0])).size).toBe(5);
  });

  // Deviations of five standard errors: a good generator fails one seed in a million.
  it("is even between 0 and 1", () => {
    const values = draws(randomOf(1).uniform);
    expect(Math.abs(mean(values) - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / DRAWS));
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values)).toBeLessThan(1);
  });

  it("has a normal of mean 0, deviation 1 and no skew", () => {
    const values = draws(randomOf(2).normal);
    expect(Math.abs(mean(values))).toBeLessThan(5 / Math.sqrt(DRAWS));
    expect(Math.abs(mean(values.map((x) => x * x)) - 1)).toBeLessThan(5 * Math.sqrt(2 / DRAWS));
    expect(Math.abs(mean(values.map((x) => x ** 3)))).toBeLessThan(5 * Math.sqrt(15 / DRAWS));
  });

  it("chooses in proportion to weights, never what weighs nothing", () => {
    const random = randomOf(3);
    const values = draws(() => random.choice([1, 0, 3]));
    const third = mean(values.map((index) => Number(index === 2)));
    expect(values).not.toContain(1);
    expect(Math.abs(third - 0.75)).toBeLessThan(5 * Math.sqrt(0.1875 / DRAWS));
    expect(() => random.choice([0, 0])).toThrow("no weight");
  });
});
