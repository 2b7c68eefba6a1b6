// Leak-down and compression rules on published vectors.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import {
  compressionSpread,
  humpDeficits,
  leakage,
  leakGrade,
} from "../../../packages/core/src/physics/leak.ts";
import { published } from "./published-physics.ts";

const { compare, left } = published("leak");
afterAll(() => expect(left()).toEqual([]));

describe("leak-down", () => {
  it("of 60 over 80 lets a quarter through", () => {
    compare("leak-down", leakage(80, 60));
    expect(leakGrade(leakage(80, 60))).toBe("worn");
  });

  it("is graded at its steps", () => {
    expect([0, 0.099, 0.1, 0.2, 0.201, 0.3, 0.301, 1].map(leakGrade)).toEqual([
      "good",
      "good",
      "acceptable",
      "acceptable",
      "worn",
      "worn",
      "repair",
      "repair",
    ]);
  });
});

describe("compression", () => {
  it.each([
    [110, false, false, [4]],
    [116, true, true, []],
  ])("with one cylinder at %s", (low, passesHighest, passesAverage, failing) => {
    const spread = compressionSpread([150, 150, 148, 152, low, 149]);
    compare(`ratio.${low}`, spread?.ratio);
    compare(`average.${low}`, spread?.average);
    expect(spread).toMatchObject({ passesHighest, passesAverage, low: failing });
  });

  it("passes at exactly three quarters", () => {
    expect(compressionSpread([100, 75, 100, 100])?.passesHighest).toBe(true);
  });

  it("says nothing when there is none", () => {
    expect(compressionSpread([0, 0, 0, 0])).toBeUndefined();
    expect(compressionSpread([])).toBeUndefined();
  });

  it("does not care about the unit", () => {
    const readings = fc.array(fc.integer({ min: 0, max: 1500 }), { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(readings, (kPa) => {
        const one = compressionSpread(kPa);
        const other = compressionSpread(kPa.map((p) => p * 4));
        expect(other?.low).toEqual(one?.low);
        expect(other?.ratio).toBe(one?.ratio);
      }),
    );
  });
});

describe("humps of the starter current", () => {
  it("are compared with the highest", () => {
    const [full, low] = humpDeficits([180, 130, 180, 180]);
    expect(full).toBe(0);
    compare("hump", low);
    expect(humpDeficits([0, 0])).toEqual([0, 0]);
  });
});
