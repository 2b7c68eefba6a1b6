// Copper against temperature, and ranges that hang together.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import {
  copperAt,
  copperAt20C,
  RESISTANCE_RANGES,
  type ResistanceRange,
} from "../../../packages/core/src/physics/resistance.ts";
import { published } from "./published-physics.ts";

const { compare, left } = published("resistance");
afterAll(() => expect(left()).toEqual([]));

describe("copper", () => {
  it.each([
    [0.5, 100],
    [13, 90],
    [14, 90],
  ])("of %s at 20 °C reads as published at %s °C", (ohm, celsius) => {
    compare(`copper.${ohm}.${celsius}`, copperAt(ohm, 273.15 + celsius));
  });

  it("follows the other form of the rule", () => {
    compare("copper.ratio", copperAt(1, 373.15));
  });

  it("comes back to what it was, and reads more when hotter", () => {
    const ohm = fc.double({ min: 0.1, max: 20e3, noNaN: true });
    fc.assert(
      fc.property(ohm, fc.double({ min: 233, max: 423, noNaN: true }), (r, kelvin) => {
        expect(copperAt20C(copperAt(r, kelvin), kelvin) / r).toBeCloseTo(1, 12);
        expect(copperAt(r, kelvin + 1)).toBeGreaterThan(copperAt(r, kelvin));
        expect(copperAt(r, 293.15)).toBe(r);
      }),
    );
  });
});

describe("the handbook ranges", () => {
  const rows: readonly (readonly [string, ResistanceRange])[] = Object.entries(RESISTANCE_RANGES);

  it.each(rows)("of %s go upwards and say where they come from", (_, { ohm, grounds, source }) => {
    expect(ohm[0]).toBeGreaterThan(0);
    expect(ohm[1]).toBeGreaterThan(ohm[0]);
    expect(source === undefined).toBe(grounds === "from memory");
  });
});
