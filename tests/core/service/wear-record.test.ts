// Records of plugs: what cannot be one, how fast plugs wear, which stand apart, what that points to.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkRecord,
  convert,
  type EngineProfile,
  InputError,
  type PlugRecord,
  profileById,
  wearReport,
} from "../../../packages/core/src/index.ts";
import { WEAR_PATTERNS } from "../../../packages/core/src/knowledge/wear-pattern.ts";
import { median, modifiedScores } from "../../../packages/core/src/service/outlier.ts";

const four: EngineProfile = {
  cylinders: 4,
  layout: "inline",
  ignition: "pack",
  firingOrder: [1, 3, 4, 2],
  figures: { plugGapMm: [0.9, 1.0], plugElectrode: "nickel" },
};
const six = profileById("demo.tern") as EngineProfile;

function record(gapsMm: readonly number[], more: Partial<PlugRecord> = {}): PlugRecord {
  const plugs = gapsMm.map((gapMm, i) => ({ cylinder: i + 1, gapMm }));
  return { when: "2026-11-25", odometerKm: 130_000, plugs, ...more };
}
const patternsOf = (profile: EngineProfile, gapsMm: readonly number[]) =>
  wearReport(profile, record(gapsMm)).patterns.map(({ id }) => id);
const outliersOf = (profile: EngineProfile, gapsMm: readonly number[]) =>
  wearReport(profile, record(gapsMm)).lines.flatMap((line) =>
    line.isOutlier ? [line.cylinder] : [],
  );

describe("checkRecord", () => {
  it("finds nothing wrong with a whole record", () => {
    const whole: PlugRecord = {
      ...record([1, 1.1], { newGapMm: 0.95, fittedAtKm: 70_000 }),
      plugs: [{ cylinder: "1", gapMm: 1, look: "tan", torqueNm: 25, part: "A 1" }, { cylinder: 3 }],
    };
    expect(checkRecord(four, whole)).toEqual([]);
  });

  it("finds every wrong field at its path", () => {
    const wrong: PlugRecord = {
      when: "25.11.2026",
      odometerKm: -1,
      newGapMm: 40,
      fittedAtKm: Number.NaN,
      plugs: [
        { cylinder: 7, gapMm: Number.NaN },
        { cylinder: 2, look: "pink", torqueNm: 0 },
        { cylinder: 2 },
      ],
    };
    expect(checkRecord(four, wrong).map(({ path }) => path)).toEqual([
      "/when",
      "/odometerKm",
      "/fittedAtKm",
      "/newGapMm",
      "/plugs/0/cylinder",
      "/plugs/0/gapMm",
      "/plugs/1/torqueNm",
      "/plugs/1/look",
      "/plugs/2/cylinder",
    ]);
    expect(checkRecord(four, record([1], { fittedAtKm: 140_000 }))).toMatchObject([
      { code: "fitted-later", path: "/fittedAtKm" },
    ]);
    expect(() => wearReport(four, wrong)).toThrow(InputError);
    expect(() => wearReport(four, record([1]), { limitMm: 0 })).toThrow(InputError);
  });
});

describe("wear", () => {
  it("of 0.035 to 0.045 in in 30,000 mi on nickel is ordinary (common practice)", () => {
    const inch = (value: number): number => convert(value, "in", "mm");
    const distance = convert(30_000, "mi", "km");
    const single: EngineProfile = { ...four, ignition: "coil-per-plug" };
    const report = wearReport(
      single,
      record(
        Array.from({ length: 4 }, () => inch(0.045)),
        {
          newGapMm: inch(0.035),
          fittedAtKm: 130_000 - distance,
        },
      ),
    );
    // 0.010 in is 0.254 mm; 30,000 mi are 48,280 km
    for (const { mmPer10000Km } of report.lines) expect(mmPer10000Km).toBeCloseTo(0.0526, 4);
    expect(report.usualMm?.low).toBeLessThan(inch(0.045));
    expect(report.usualMm?.high).toBeGreaterThan(inch(0.045));
    expect(report.patterns.map(({ id }) => id)).toEqual(["even"]);
  });

  it("runs in a line to the limit", () => {
    const report = wearReport(
      four,
      record([1.1, 1.0, 1.15, 1.1], { newGapMm: 0.9, fittedAtKm: 110_000 }),
      {
        limitMm: 1.3,
      },
    );
    // 0.2 mm in 20,000 km: another 0.2 mm takes as far again
    expect(report.lines[0]?.limitInKm).toBeCloseTo(20_000, 6);
    expect(report.lines[1]?.limitInKm).toBeCloseTo(60_000, 6);
    expect(report.lines[2]?.limitInKm).toBeCloseTo(12_000, 6);
    expect(report.limitInKm).toBeCloseTo(12_000, 6);
  });

  it("takes limit and new gap from the profile where they are not given", () => {
    const report = wearReport(four, record([1.25, 1.05, 1.05, 1.05], { fittedAtKm: 120_000 }));
    expect(report.newGapMm).toBeCloseTo(0.95, 12);
    expect(report.limitMm).toBeCloseTo(1.2, 12);
    expect(report.lines[0]?.limitInKm).toBe(0);
    expect(report.lines[1]?.limitInKm).toBeCloseTo(15_000, 6);
  });

  it("has no rate without a distance or a beginning, and no limit for a gap that does not grow", () => {
    const bare: EngineProfile = { cylinders: 4, ignition: "pack" };
    const report = wearReport(bare, record([1.1, 1.1, 1.1, 1.1]));
    expect(report).toMatchObject({ isFew: true });
    expect(report.lines[0]).toEqual({ cylinder: 1, gapMm: 1.1, score: 0, isOutlier: false });
    const shrunk = wearReport(
      four,
      record([0.9, 0.9, 0.9, 0.9], { newGapMm: 0.95, fittedAtKm: 120_000 }),
    );
    expect(shrunk.lines[0]?.mmPer10000Km).toBeCloseTo(-0.05, 9);
    expect(shrunk.lines[0]?.limitInKm).toBeUndefined();
    const today = wearReport(four, record([1, 1, 1, 1], { newGapMm: 0.95, fittedAtKm: 130_000 }));
    expect(today.lines[0]?.mmPer10000Km).toBeUndefined();
  });

  it("calls a set fast when all of it is above what its metal does", () => {
    const fast = wearReport(
      four,
      record([1.5, 1.5, 1.5, 1.5], { newGapMm: 0.95, fittedAtKm: 125_000 }),
    );
    expect(fast.patterns.map(({ id }) => id)).toEqual(["set-fast"]);
  });

  it("leaves out plugs whose gap was not measured", () => {
    const some: PlugRecord = {
      ...record([]),
      plugs: [
        { cylinder: 3, look: "tan" },
        { cylinder: 1, gapMm: 1 },
      ],
    };
    expect(wearReport(four, some).lines).toEqual([{ cylinder: 1, gapMm: 1, isOutlier: false }]);
    expect(wearReport(four, some).patterns).toEqual([]);
  });
});

describe("a plug that stands apart", () => {
  it("is found among equals, where the median deviation is 0", () => {
    expect(outliersOf(four, [1.0, 1.0, 1.0, 1.4])).toEqual([4]);
    expect(patternsOf(four, [1.0, 1.0, 1.0, 1.4])).toEqual(["one-wide"]);
    expect(patternsOf(four, [1.0, 1.0, 0.5, 1.0])).toEqual(["one-narrow"]);
  });

  it("is not made of what a gauge mistakes", () => {
    expect(outliersOf(four, [1.0, 1.0, 1.0, 1.1])).toEqual([]);
    expect(outliersOf(six, [1.0, 1.05, 1.0, 1.05, 1.0, 1.1])).toEqual([]);
  });

  it("is not looked for in fewer than three", () => {
    expect(outliersOf(four, [0.6, 1.4])).toEqual([]);
    expect(wearReport(four, record([0.6, 1.4])).lines[0]?.score).toBeUndefined();
  });

  it("points to what it shares with others", () => {
    // six: 1-2-3-4-5-6, so coils fire 1 and 4, 2 and 5, 3 and 6; banks 1 3 5 and 2 4 6
    expect(patternsOf(six, [1.0, 1.4, 1.0, 1.02, 1.41, 1.0])).toEqual(["pair-wide"]);
    expect(patternsOf(six, [1.4, 1.0, 1.41, 1.02, 1.0, 1.0])).toEqual(["neighbours-wide"]);
    expect(patternsOf(six, [1.4, 1.41, 1.0, 1.02, 1.0, 1.0])).toEqual(["several-off"]);
    expect(patternsOf(six, [1.4, 0.6, 1.0, 1.02, 1.0, 1.0])).toEqual(["several-off"]);
  });

  it("takes its companion with it, which alone would hardly stand apart", () => {
    // 0.6745 · 0.15 / 0.038 = 2.7 for the one, 3.6 for the other
    expect(patternsOf(six, [1.32, 1.52, 1.3, 1.32, 1.47, 1.27])).toEqual(["pair-wide"]);
    expect(patternsOf(six, [1.32, 1.52, 1.3, 1.32, 1.38, 1.27])).toEqual(["one-wide"]);
    const ownCoils: EngineProfile = { ...six, ignition: "coil-per-plug" };
    expect(patternsOf(ownCoils, [1.32, 1.52, 1.3, 1.32, 1.47, 1.27])).toEqual(["one-wide"]);
  });

  it("is the double coil's doing where every pair has a wide and a narrow one", () => {
    expect(patternsOf(four, [1.2, 1.05, 1.2, 1.05])).toEqual(["alternating"]);
    expect(patternsOf(six, [1.3, 1.3, 1.1, 1.1, 1.1, 1.3])).toEqual(["alternating"]);
    // one that scatters more than the halves lie apart is off by itself
    expect(patternsOf(four, [1.2, 1.05, 1.6, 1.05])).toEqual(["one-wide"]);
    // two halves, and one off within its half
    expect(patternsOf(six, [1.3, 1.3, 1.1, 1.1, 1.1, 1.7])).toEqual(["one-wide", "alternating"]);
    expect(outliersOf(six, [1.3, 1.3, 1.1, 1.1, 1.1, 1.7])).toEqual([6]);
    const own: EngineProfile = { ...four, ignition: "coil-per-plug" };
    expect(patternsOf(own, [1.2, 1.05, 1.2, 1.05])).toEqual(["even"]);
  });

  it("is not laid to a coil while nobody knows who shares one", () => {
    const { firingOrder, ...orderless } = four;
    expect(firingOrder).toBeDefined();
    expect(patternsOf(orderless, [1.2, 1.05, 1.2, 1.05])).toEqual(["even"]);
  });

  it("is not called worn where the plugs have hardly run: a week is no wear", () => {
    const ran = (km: number, gapsMm: readonly number[], profile = four) =>
      wearReport(profile, record(gapsMm, { fittedAtKm: 130_000 - km })).patterns.map(
        ({ id }) => id,
      );
    expect(ran(300, [1.0, 1.0, 1.0, 1.4])).toEqual(["unworn"]);
    expect(ran(300, [1.2, 1.05, 1.2, 1.05])).toEqual([]);
    expect(ran(300, [1.5, 1.5, 1.5, 1.5])).toEqual([]);
    expect(ran(0, [1.0, 1.0, 0.5, 1.0])).toEqual(["unworn"]);
    // Nickel under double coils: at most 0.30 mm in 10,000 km, so what a gauge mistakes (0.03 mm) after 1,000 km.
    expect(ran(990, [1.0, 1.0, 1.0, 1.4])).toEqual(["unworn"]);
    expect(ran(1010, [1.0, 1.0, 1.0, 1.4])).toEqual(["one-wide"]);
    // Iridium on single coils: at most 0.03 mm in 10,000 km.
    const fine = {
      ...four,
      ignition: "coil-per-plug",
      figures: { plugElectrode: "iridium" },
    } as const;
    expect(ran(9900, [1.0, 1.0, 1.0, 1.4], fine)).toEqual(["unworn"]);
    expect(ran(10_100, [1.0, 1.0, 1.0, 1.4], fine)).toEqual(["one-wide"]);
    // Of unknown metal the fastest is taken, and of an unknown distance nothing.
    expect(ran(1010, [1.0, 1.0, 1.0, 1.4], { ...four, figures: {} })).toEqual(["one-wide"]);
    expect(patternsOf(fine, [1.0, 1.0, 1.0, 1.4])).toEqual(["one-wide"]);
  });

  it("has words for every pattern", () => {
    const ids = WEAR_PATTERNS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(9);
    for (const { say, look } of WEAR_PATTERNS) expect(say.length * look.length).toBeGreaterThan(0);
  });
});

describe("modified z-scores", () => {
  it("are as worked by hand: 0.6745·(x − 3)/1 for 1, 2, 3, 4, 10", () => {
    const scores = modifiedScores([1, 2, 3, 4, 10], 1e-9);
    const expected = [-1.349, -0.6745, 0, 0.6745, 4.7215];
    for (const [i, score] of scores.entries()) expect(score).toBeCloseTo(expected[i] as number, 9);
  });

  it("are plain z-scores on a normal distribution, which is what 0.6745 is for", () => {
    // quantiles of the standard normal at (i + ½)/n by bisection of its distribution function
    const n = 401;
    const sample = Array.from({ length: n }, (_, i) => normalQuantile((i + 0.5) / n));
    for (const [i, score] of modifiedScores(sample, 1e-9).entries()) {
      expect(Math.abs(score - (sample[i] as number))).toBeLessThan(0.02);
    }
  });

  it("do not follow the outlier, change with neither unit nor order, and take their spread from the instrument at least", () => {
    expect(modifiedScores([5, 5, 5, 5.1], 0.05)[3]).toBeCloseTo(2, 9);
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
    const values = fc.array(fc.double({ min: 0, max: 10, noNaN: true }), {
      minLength: 3,
      maxLength: 12,
    });
    fc.assert(
      fc.property(values, (sample) => {
        const scores = modifiedScores(sample, 0.03);
        const shifted = modifiedScores(
          sample.map((value) => 25.4 * value + 3),
          25.4 * 0.03,
        );
        const backwards = modifiedScores(sample.toReversed(), 0.03).toReversed();
        for (const [i, score] of scores.entries()) {
          expect(shifted[i]).toBeCloseTo(score, 6);
          expect(backwards[i]).toBeCloseTo(score, 9);
        }
      }),
      { seed: 1993 },
    );
  });
});

/** By bisection on Simpson's rule over the bell curve. */
function normalQuantile(p: number): number {
  let [low, high] = [-6, 6];
  for (let i = 0; i < 60; i++) {
    const half = (low + high) / 2;
    if (normalBelow(half) < p) low = half;
    else high = half;
  }
  return (low + high) / 2;
}

function normalBelow(x: number): number {
  const steps = 200;
  const bell = (t: number): number => Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI);
  let sum = bell(0) + bell(x);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * bell((x * i) / steps);
  return 0.5 + (sum * x) / steps / 3;
}
