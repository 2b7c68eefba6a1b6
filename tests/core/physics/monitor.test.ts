// Windows and codes of the misfire monitor.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import {
  CATALYST_WINDOW,
  cylinderCode,
  deadShare,
  EMISSION_WINDOW,
  exceedsLimit,
  firingEvents,
  floorMisses,
  misfireCodes,
  missShare,
  windowSeconds,
} from "../../../packages/core/src/physics/monitor.ts";
import { published } from "./published-physics.ts";

const { compare, left } = published("monitor");
afterAll(() => expect(left()).toEqual([]));

describe("the windows", () => {
  it.each([4, 6, 8])("hold what was worked out for %s cylinders", (n) => {
    for (const window of [CATALYST_WINDOW, EMISSION_WINDOW]) {
      compare(`events.${window.revolutions}.${n}`, firingEvents(n, window.revolutions));
      compare(`floor.${window.revolutions}.${n}`, floorMisses(n, window));
      expect(exceedsLimit(floorMisses(n, window), n, window)).toBe(false);
      expect(exceedsLimit(floorMisses(n, window) + 1, n, window)).toBe(true);
    }
    compare(`dead.1.${n}`, deadShare(1, n));
    compare(`dead.2.${n}`, deadShare(2, n));
  });

  it.each([
    [200, 800],
    [200, 3000],
    [1000, 800],
    [1000, 3000],
  ])("of %s revolutions last as long as worked out at %s rpm", (revolutions, rpm) => {
    compare(`seconds.${revolutions}.${rpm}`, windowSeconds(revolutions, rpm));
  });

  it("are exceeded by one dead cylinder of up to twelve, by the emission floor of any", () => {
    for (let n = 1; n <= 12; n++) {
      const dead = CATALYST_WINDOW.revolutions / 2;
      expect(missShare(dead, n, CATALYST_WINDOW)).toBeCloseTo(deadShare(1, n), 12);
      expect(exceedsLimit(dead, n, CATALYST_WINDOW)).toBe(true);
      expect(exceedsLimit(dead, n, CATALYST_WINDOW, 1)).toBe(false);
    }
  });
});

// Vectors worked from the rule in 13 CCR 1968.2 (e)(3.1.3), text of 2007.
describe("the 90/10 rule", () => {
  it("lets one code stand alone for over 90 %", () => {
    expect(misfireCodes([950, 20, 20, 10])).toEqual({
      rule: "one",
      codes: ["P0301"],
      optional: ["P0300"],
      main: [0],
    });
  });

  it("asks for the code of several when two have over 10 %, here companions", () => {
    const verdict = misfireCodes([300, 3, 2, 290]);
    expect(verdict).toEqual({
      rule: "several",
      codes: ["P0300"],
      optional: ["P0301", "P0304"],
      main: [0, 3],
    });
    const four = resolveEngine({ cylinders: 4, firingOrder: [1, 3, 4, 2], ignition: "rail" });
    expect(four.companions[verdict.main[0] ?? -1]).toBe(verdict.main[1]);
  });

  it("falls back on the code of several when nothing has over 90 %", () => {
    expect(misfireCodes([85, 8, 7, 0])).toMatchObject({
      rule: "several",
      codes: ["P0300"],
      main: [0],
    });
    expect(misfireCodes([90, 10, 0, 0])).toMatchObject({ rule: "several", main: [0] });
    expect(misfireCodes([10, 10, 10, 10, 10, 10, 10, 10, 10, 10])).toMatchObject({ main: [] });
  });

  it("has nothing to say of no misfires", () => {
    const nothing = { rule: "none", codes: [], optional: [], main: [] };
    expect(misfireCodes([0, 0, 0, 0])).toEqual(nothing);
    expect(misfireCodes([])).toEqual(nothing);
  });

  it("does not care how long was counted", () => {
    const counts = fc.array(fc.nat(500), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(counts, (each) => {
        const one = misfireCodes(each);
        expect(misfireCodes(each.map((n) => n * 8))).toEqual(one);
        expect(one.codes.length).toBe(one.rule === "none" ? 0 : 1);
        if (one.main.length > 1) expect(one.codes).toEqual(["P0300"]);
      }),
    );
  });
});

describe("a cylinder's code", () => {
  it("goes to twelve", () => {
    expect([1, 9, 10, 12].map(cylinderCode)).toEqual(["P0301", "P0309", "P0310", "P0312"]);
    expect([0, 13, 1.5, -1].map(cylinderCode)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("is not there for the thirteenth, which falls under the code of several", () => {
    const counts = new Array<number>(16).fill(0);
    counts[12] = 100;
    expect(misfireCodes(counts)).toEqual({
      rule: "several",
      codes: ["P0300"],
      optional: [],
      main: [12],
    });
  });
});
