// Does a rounded column still add up?
import fc from "fast-check";
import { expect, it } from "vitest";
import { addingUp } from "../../packages/server/src/command/ledger-text.ts";

it("adds up to the rounded total, each figure off by less than a tenth", () => {
  const decibans = fc.integer({ min: -60_000, max: 60_000 }).map((n) => n / 1000);
  fc.assert(
    fc.property(fc.array(decibans, { minLength: 1, maxLength: 30 }), (values) => {
      const total = values.reduce((sum, value) => sum + value, 0);
      const printed = addingUp(values, total);
      const tenths = printed.map((value) => Math.round(value * 10));
      printed.forEach((value, i) => {
        expect(value * 10).toBeCloseTo(tenths[i] as number, 6);
        expect(Math.abs(value - (values[i] as number))).toBeLessThan(0.1);
      });
      const sum = tenths.reduce((before, n) => before + n, 0);
      expect(Math.abs(sum / 10 - total)).toBeLessThan(0.05 + 1e-9);
    }),
    { numRuns: 1000, seed: 20276 },
  );
});

it("raises what lost most", () => {
  expect(addingUp([1.04, 2.06, 3.08], 6.18)).toEqual([1, 2.1, 3.1]);
  expect(addingUp([1.02, 2.04, 3.03], 6.09)).toEqual([1, 2.1, 3]);
  expect(addingUp([-1.04, 0.52], -0.52)).toEqual([-1, 0.5]);
});
