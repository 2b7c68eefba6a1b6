// Two plugs on one double coil: outcomes as trade training texts describe them.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Leg, seriesPair } from "../../../packages/core/src/physics/series-pair.ts";

const compression: Leg = { plugV: 9600, state: "sound" };
const exhaust: Leg = { plugV: 2000, state: "sound" };

describe("a pair of plugs on one coil", () => {
  it("sparks twice, and the plug on compression takes most", () => {
    const { sparks, share, neededV } = seriesPair([compression, exhaust], 30e3);
    expect(sparks).toEqual([true, true]);
    expect(neededV).toBe(11_600);
    expect(share[0]).toBeCloseTo(9.6 / 11.6, 12);
  });

  it("with one leg shorted loses that spark and leaves its companion more", () => {
    const wide: Leg = { plugV: 29e3, state: "sound" };
    expect(seriesPair([wide, exhaust], 30e3).sparks).toEqual([false, false]);
    const { sparks, share } = seriesPair([wide, { ...exhaust, state: "shorted" }], 30e3);
    expect(sparks).toEqual([true, false]);
    expect(share).toEqual([1, 0]);
  });

  it("with one leg wide open has no spark at all", () => {
    const result = seriesPair([{ ...compression, state: "open" }, exhaust], 40e3);
    expect(result).toEqual({ sparks: [false, false], share: [0, 0], neededV: undefined });
  });

  it("arcs over a small break while the coil has the voltage", () => {
    const broken: Leg = { ...compression, state: "open", breakV: 8000 };
    expect(seriesPair([broken, exhaust], 30e3)).toMatchObject({
      sparks: [true, true],
      neededV: 19_600,
    });
    expect(seriesPair([broken, exhaust], 15e3).sparks).toEqual([false, false]);
  });

  it("with both legs shorted sparks nowhere", () => {
    const short: Leg = { plugV: 9000, state: "shorted" };
    expect(seriesPair([short, short], 30e3)).toEqual({
      sparks: [false, false],
      share: [0, 0],
      neededV: 0,
    });
  });

  it("shares out the whole voltage, and never sparks with less than it did with more", () => {
    const leg = fc.record({
      plugV: fc.double({ min: 1000, max: 30e3, noNaN: true }),
      state: fc.constantFrom("sound" as const, "shorted" as const, "open" as const),
      breakV: fc.double({ min: 0, max: 20e3, noNaN: true }),
    });
    const volts = fc.double({ min: 0, max: 50e3, noNaN: true });
    fc.assert(
      fc.property(leg, leg, volts, volts, (a, b, first, second) => {
        const low = seriesPair([a, b], Math.min(first, second));
        const high = seriesPair([a, b], Math.max(first, second));
        expect([0, 1]).toContain(Math.round((low.share[0] + low.share[1]) * 1e9) / 1e9);
        if (low.sparks[0]) expect(high.sparks[0]).toBe(true);
        const swapped = seriesPair([b, a], first);
        expect([...swapped.sparks].reverse()).toEqual([...seriesPair([a, b], first).sparks]);
      }),
    );
  });
});
