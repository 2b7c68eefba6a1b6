// Units both ways, against their definitions and published rounded values.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convert, type Unit } from "../../../packages/core/src/units/convert.ts";
import { InputError } from "../../../packages/core/src/units/problem.ts";

const KINDS: readonly (readonly Unit[])[] = [
  ["mm", "thou", "in", "km", "mi"],
  ["N·m", "lb·ft", "lb·in", "kgf·m"],
  ["kPa", "bar", "psi"],
  ["°C", "°F"],
];

/** As a caller without types would write it. */
const loosely = convert as (value: number, from: string, to: string) => number;

describe("convert", () => {
  // Values and digits as printed in NIST Special Publication 811, appendix B (6.894 757 kPa, 1.355 818 N·m,
  // 0.112 984 8 N·m, 1.609 344 km, 9.806 65 N·m); temperatures by their definition.
  it.each([
    [1, "psi", "kPa", 6.894757, 5e-7],
    [1, "lb·ft", "N·m", 1.355818, 5e-7],
    [1, "lb·in", "N·m", 0.1129848, 5e-8],
    [1, "mi", "km", 1.609344, 1e-12],
    [1, "kgf·m", "N·m", 9.80665, 1e-12],
    [1, "thou", "mm", 0.0254, 1e-15],
    [1, "in", "mm", 25.4, 1e-12],
    [1, "bar", "kPa", 100, 0],
    [0, "°C", "°F", 32, 0],
    [100, "°C", "°F", 212, 1e-12],
    [-40, "°F", "°C", -40, 1e-12],
  ] as const)("%s %s is so many %s", (value, from, to, expected, within) => {
    expect(Math.abs(loosely(value, from, to) - expected)).toBeLessThanOrEqual(within);
  });

  it("comes back to where it started, by any way round", () => {
    const trip = fc
      .constantFrom(...KINDS)
      .chain((kind) => fc.tuple(...[0, 1, 2].map(() => fc.constantFrom(...kind))));
    fc.assert(
      fc.property(trip, fc.double({ min: -1e6, max: 1e6, noNaN: true }), ([a, b, c], value) => {
        const there = loosely(loosely(value, a as Unit, b as Unit), b as Unit, c as Unit);
        const back = loosely(there, c as Unit, a as Unit);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      }),
      { seed: 811 },
    );
  });

  it("leaves a value in its own unit alone", () => {
    expect(convert(0.1, "mm", "mm")).toBe(0.1);
    expect(convert(70.7, "°F", "°F")).toBe(70.7);
  });

  it.each([
    [Number.NaN, "mm", "in", "value-not-finite", "/value"],
    [Number.POSITIVE_INFINITY, "mm", "in", "value-not-finite", "/value"],
    [1, "mm", "psi", "unit-mismatch", "/to"],
    [1, "furlong", "mm", "unit-unknown", "/from"],
    [1, "mm", "toString", "unit-unknown", "/to"],
  ])("refuses %s %s to %s: %s at %s", (value, from, to, code, path) => {
    let thrown: unknown;
    try {
      loosely(value, from, to);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(InputError);
    expect((thrown as InputError).problems).toMatchObject([{ code, path }]);
  });
});
