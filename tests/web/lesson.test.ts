// Does the lesson show what the simulator says, at the places that the dial has, and in step with the dial?
import { allProfiles, profileById, resolveEngine } from "@half-order/core";
import {
  BROKEN_FIGURES,
  SIMULATED_BREAKS,
  SIMULATED_REGIME_NAMES,
  SPARK_RANGE,
  sparkCurve,
  watch,
} from "@half-order/core/physics";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { pointAt } from "../../packages/web/src/diagram/geometry.ts";
import { placeId } from "../../packages/web/src/diagram/mark.tsx";
import { beatTimes } from "../../packages/web/src/lesson/beats.ts";
import { legPath } from "../../packages/web/src/lesson/circuit-geometry.ts";
import { hasPairs, spotAt, spotsOf } from "../../packages/web/src/lesson/spot.ts";
import { answerLesson } from "../../packages/web/src/lesson/thread-lesson.ts";
import { speedAt, TRACE, tracePlan } from "../../packages/web/src/lesson/trace-geometry.ts";
import { firstTurn } from "../../packages/web/src/lesson/turn.ts";
import { gapSteps, voltagePlan } from "../../packages/web/src/lesson/voltage-geometry.ts";
import {
  sayAgain,
  sayBeat,
  sayBroken,
  sayCode,
  sayDrawn,
  sayMisses,
  saySparks,
  sayUnnamed,
} from "../../packages/web/src/lesson/words.ts";
import { LESSON } from "../../packages/web/src/text/en-lesson.ts";

function engineOf(id: string) {
  const profile = profileById(id);
  if (!profile) throw new Error(`no profile ${id}`);
  return resolveEngine(profile);
}

// Units follow the language of a browser, which there is none of here.
beforeAll(() => {
  vi.stubGlobal("navigator", { language: "en-AU" });
});
afterAll(() => {
  vi.unstubAllGlobals();
});

const SIX = engineOf("generic.i6.153624.pack");
const engines = allProfiles()
  .filter((_, i) => i % 7 === 0)
  .map(resolveEngine);

function seenOn(engine: typeof SIX, fault: keyof typeof SIMULATED_BREAKS, mark: string, seed = 3) {
  const choice = spotAt(spotsOf(engine), mark)?.choices.find((each) => each.fault === fault);
  if (!choice) throw new Error(`no ${fault} at ${mark}`);
  const { watched } = answerLesson({ profile: engine.profile, fault: choice, seed });
  if (!watched) throw new Error("not noticed");
  return watched;
}

function idleOf(seen: ReturnType<typeof seenOn>) {
  const row = seen.regimes.find(({ regime }) => regime === "hotIdle");
  if (!row) throw new Error("no idle");
  return row;
}

describe("what can be broken", () => {
  it("lies at marks that the dial draws, each fault once at each of its places", () => {
    for (const engine of engines) {
      const spots = spotsOf(engine);
      const marks = spots.flatMap(({ choices }) => choices.map(({ place }) => place));
      for (const { id, kind, cylinders } of marks)
        expect(id).toBe(placeId(engine, kind, cylinders));
      const keys = spots.flatMap(({ choices }) => choices.map((c) => `${c.fault}@${c.place.id}`));
      expect(new Set(keys).size).toBe(keys.length);
      expect(spots.every(({ choices }) => choices.length > 0)).toBe(true);
    }
    const ids = new Set(
      engines.flatMap((e) => spotsOf(e).flatMap((s) => s.choices.map((c) => c.fault))),
    );
    expect([...ids].sort()).toEqual(Object.keys(SIMULATED_BREAKS).sort());
  });

  it("is found by the cable as by the way to its plug", () => {
    const spots = spotsOf(SIX);
    expect(spotAt(spots, "lead 4")).toBe(spotAt(spots, "leg 4"));
    expect(spotAt(spots, "leg 4")?.choices.map(({ fault }) => fault)).toContain("lead.open");
    expect(spotAt(spots, "bank 1+2")).toBeUndefined();
  });

  it("has pairs only where a coil has two plugs", () => {
    expect(hasPairs(SIX)).toBe(true);
    expect(hasPairs(engineOf("generic.i4.1342.distributor"))).toBe(false);
    expect(hasPairs(engineOf("generic.i3.132.coil-per-plug"))).toBe(false);
  });
});

describe("what is shown", () => {
  it("is what the simulator answers", () => {
    const choice = spotAt(spotsOf(SIX), "leg 2")?.choices[0];
    if (!choice) throw new Error("nothing to break");
    const { watched } = answerLesson({ profile: SIX.profile, fault: choice, seed: 9 });
    expect(watched).toEqual(watch(SIX, choice, 9));
    expect(watched).not.toEqual(watch(SIX, choice, 10));
  });

  it("says who misses, whether they have a spark, and the beat", () => {
    const idle = idleOf(seenOn(SIX, "driver.dead", "coil 1+6"));
    expect(sayMisses(SIX, idle)).toBe(
      "Idle, warm: cylinder 1 in 100 of 100 cycles and cylinder 6 in 100 of 100 cycles.",
    );
    expect(saySparks(SIX, idle)).toEqual([LESSON.dark("1 and 6")]);
    expect(sayDrawn(SIX, idle)).toBe("Drawn is every cycle: 1 and 6 never fire.");
    expect(sayBeat(idle.shake)).toBe(LESSON.beat.whole);
    const dry = idleOf(seenOn(SIX, "injector.dead", "cylinder 3"));
    expect(saySparks(SIX, dry)).toEqual([LESSON.lit("3")]);
    expect(sayBeat(dry.shake)).toBe(LESSON.beat.half);
  });

  it("says that more may miss less of gaps alone, where one engine does outdo another", () => {
    for (const [fault, mark] of [
      ["driver.dead", "coil 1+6"],
      ["injector.clogged", "cylinder 3"],
    ] as const) {
      expect(sayAgain(seenOn(SIX, fault, mark).broken)).toBe(LESSON.againHelp);
    }
    // Two of the engines that are drawn: the second has the wider gap and the stronger coil.
    const [narrow, wide] = [20, 22].map((seed) => {
      const { broken, regimes } = seenOn(SIX, "plug.gap-worn", "leg 2", seed);
      expect(sayAgain(broken)).toContain(LESSON.againGap);
      return {
        gapM: broken.find(({ figure }) => figure === "plug.gapM")?.value ?? 0,
        share: Math.max(...regimes.map((each) => each.share[1] ?? 0)),
      };
    });
    expect(wide?.gapM).toBeGreaterThan((narrow?.gapM ?? 1) + 0.05e-3);
    expect(wide?.share).toBeLessThan((narrow?.share ?? 0) - 0.1);
  });

  it("tells chance as chance: no beat, no cylinder that never fires", () => {
    const seen = seenOn(
      SIX,
      "connector.loose",
      spotsOf(SIX).find((s) => s.kind === "connector")?.id ?? "",
    );
    const bumps = seen.regimes.find(({ regime }) => regime === "bumps");
    if (!bumps) throw new Error("no bad road");
    const shares = bumps.struck.map((c) => bumps.share[c] ?? 0);
    expect(shares.every((share) => share > 0.1 && share < 0.95)).toBe(true);
    expect(bumps.shake.isSteady).toBe(false);
    expect(sayDrawn(SIX, bumps)).toMatch(/^Missed now and then: by cylinders? .* of 100 cycles/);
    expect(sayBeat(bumps.shake)).toBeUndefined();
    // Some of the cycles that are drawn burn, and some are missed.
    const missed = bumps.cycles.filter((cycle) => bumps.struck.some((c) => cycle.includes(c)));
    expect(missed.length).toBeGreaterThan(0);
    expect(missed.length).toBeLessThan(bumps.cycles.length);
  });

  it("draws no rhythm where all drop out at once", () => {
    // The feed of all coils frets, so that no coil fires for some cycles.
    const connector = spotsOf(SIX).find((s) => s.kind === "connector")?.id ?? "";
    const feeds = Array.from({ length: 12 }, (_, i) => seenOn(SIX, "connector.loose", connector, i))
      .filter(({ broken }) => broken.some(({ figure }) => figure === "feed.shaken"))
      .flatMap(({ regimes }) => regimes.filter(({ regime }) => regime === "bumps"));
    expect(feeds.length).toBeGreaterThan(0);
    for (const row of feeds) {
      expect(row.blackout).toBeGreaterThan(0.1);
      expect(row.shake.missing).toEqual([]);
      expect(sayDrawn(SIX, row)).toContain("mostly all at once");
    }
  });

  it("finds no beat where nobody fires", () => {
    const row = idleOf(seenOn(SIX, "plug.gap-worn", "leg 2"));
    const { rhythm } = row.shake;
    const missing = [0, 1, 2, 3, 4, 5];
    const shake = { missing, isSteady: true, rhythm: { ...rhythm, shakes: 0.5 } };
    expect(sayBeat(shake)).toBeUndefined();
    expect(sayDrawn(SIX, { ...row, struck: missing, shake })).toBe(LESSON.trace.nobody);
  });

  it("names nobody who misses as a sound engine does", () => {
    const row = idleOf(seenOn(SIX, "plug.gap-worn", "leg 2"));
    const share = [0.02, 0.6, 0.03, 0, 0, 0];
    const chance = { ...row, share, dark: share, struck: [1] };
    expect(sayMisses(SIX, chance)).toBe("Idle, warm: cylinder 2 in 60 of 100 cycles.");
    expect(saySparks(SIX, chance)).toEqual([LESSON.dark("2")]);
  });

  it("says why codes name others, or nobody", () => {
    const seen = seenOn(SIX, "plug.gap-worn", "leg 2");
    const rows = seen.regimes.map((row) => ({ ...row, struck: [] as number[], trim: 0 }));
    const start = rows.map((row) => (row.isCounted ? row : { ...row, struck: [1] }));
    expect(sayUnnamed(SIX, { ...seen, regimes: start })).toEqual([LESSON.atStartOnly("2", 1)]);
    const lambda = [1.3, 0.6, 1.3, 1, 1, 1];
    const idle = rows.map((row) =>
      row.regime === "hotIdle" ? { ...row, struck: [0, 2], trim: -0.25, lambda } : row,
    );
    expect(sayUnnamed(SIX, { ...seen, regimes: idle })).toEqual([
      LESSON.leanByTrim("2", 1, 25, "1 and 3", 2),
    ]);
    expect(sayUnnamed(SIX, { ...seen, regimes: rows })).toEqual([]);
  });

  it("opens the circuit on the cylinder that is broken", () => {
    for (const c of [1, 4]) {
      const { place, regimes } = seenOn(SIX, "plug.gap-worn", `leg ${c + 1}`);
      for (const row of regimes) expect(row.pair[firstTurn(row, place)]?.legs[0].cylinder).toBe(c);
    }
  });

  it("names codes by the cylinders and coils of the engine", () => {
    const other = resolveEngine({
      cylinders: 4,
      ignition: "rail",
      firingOrder: ["R1", "R2", "L1", "L2"],
      banks: [
        ["R1", "R2"],
        ["L1", "L2"],
      ],
    });
    expect(sayCode(other, "P0303")).toBe("cylinder L1 misfires");
    expect(sayCode(other, "P0300")).toBe(LESSON.code.several);
    expect(sayCode(SIX, "P0351")).toBe("circuit of the coil of 1 and 6");
    expect(sayCode(SIX, "P0206")).toBe("circuit of the injector of 6");
    expect(sayCode(SIX, "P0335")).toBe(LESSON.code.crank);
    expect([sayCode(SIX, "P0171"), sayCode(SIX, "P0172")]).toEqual([
      LESSON.code.lean,
      LESSON.code.rich,
    ]);
  });

  it("has words for every fault, figure and way of driving", () => {
    expect(Object.keys(LESSON.faults).sort()).toEqual(Object.keys(SIMULATED_BREAKS).sort());
    expect(Object.keys(LESSON.figures).sort()).toEqual([...BROKEN_FIGURES].sort());
    expect(Object.keys(LESSON.regimes).sort()).toEqual([...SIMULATED_REGIME_NAMES].sort());
    for (const figure of BROKEN_FIGURES) {
      const says = sayBroken(SIX, { figure, value: 0.0123, cylinders: [1] });
      expect(says).toMatch(/^Cylinder 2: .*\.$/);
      expect(says).not.toMatch(/NaN|undefined/);
    }
    // In a unit that has to be converted too, where nothing jumps a break.
    const never = {
      figure: "boot.breakV",
      value: Number.POSITIVE_INFINITY,
      cylinders: [0],
    } as const;
    expect(sayBroken(SIX, never)).toBe("Cylinder 1: nothing jumps the break.");
  });
});

describe("the drawing of the speed", () => {
  const { rhythm } = idleOf(seenOn(SIX, "driver.dead", "coil 1+6")).shake;
  const plan = tracePlan(rhythm);

  it("runs from left to right as the dial goes round", () => {
    const inner = TRACE.width - TRACE.left - TRACE.right;
    for (const angle of [0, 90, 240, 400, 700]) {
      const { x, y } = pointAt(angle, 1000);
      const turn = (Math.atan2(x, -y) / (2 * Math.PI) + 1) % 1;
      expect((plan.x(angle) - TRACE.left) / inner).toBeCloseTo(turn, 3);
    }
  });

  it("draws every sample on one scale, and ends where it began", () => {
    const points = plan.broken
      .split(/[ML]/)
      .slice(1)
      .map((each) => each.split(" ").map(Number));
    expect(points).toHaveLength(rhythm.rpm.length + 1);
    expect(points.at(-1)?.[1]).toBe(points[0]?.[1]);
    const ys = [
      ...points,
      ...plan.sound
        .split(/[ML]/)
        .slice(1)
        .map((each) => each.split(" ").map(Number)),
    ];
    for (const [, y = 0] of ys)
      expect(y >= TRACE.top && y <= TRACE.height - TRACE.bottom).toBe(true);
    expect(plan.y(speedAt(rhythm, 240))).toBe(points[120]?.[1]);
  });
});

describe("the chart of voltages", () => {
  const budget = sparkCurve({
    ignition: "pack",
    gapM: 1e-3,
    intakePa: 97e3,
    isFineWire: false,
    isReversed: false,
    coilStrength: 0.5,
    supplyV: 14,
  });
  const plan = voltagePlan(budget, gapSteps("mm"));

  it("puts the crossing where the spark fails", () => {
    const row = budget.curve.find(({ fires }) => fires === "no");
    const before = budget.curve[budget.curve.indexOf(row as never) - 1];
    const there = plan.y(budget.here.availableV);
    expect(plan.y((row?.plugV[0] ?? 0) + (row?.seriesV ?? 0))).toBeLessThan(there);
    expect(plan.y((before?.plugV[0] ?? 0) + (before?.seriesV ?? 0))).toBeGreaterThanOrEqual(there);
    expect(plan.x(SPARK_RANGE.gapM[0])).toBeLessThan(plan.x(SPARK_RANGE.gapM[1]));
  });

  it("is set in whole steps of the unit, within what the formulas hold for", () => {
    // An inch is 25.4 mm by definition, so 0.5 to 1.5 mm are 19.7 to 59.1 thou.
    const ends = (unit: "mm" | "thou", perM: number) =>
      gapSteps(unit).rangeM.map((gapM) => Math.round(gapM * perM * 1e6) / 1e6);
    expect(ends("mm", 1e3)).toEqual([0.5, 1.5]);
    expect(ends("thou", 1 / 25.4e-6)).toEqual([20, 59]);
  });
});

describe("the circuit", () => {
  it("is one line from the winding to the head, interrupted by its gaps alone", () => {
    expect(legPath(0, false).match(/M/g)).toHaveLength(2);
    expect(legPath(1, true).match(/M/g)).toHaveLength(3);
  });
});

describe("the beats to be heard", () => {
  it("are one for each stroke that burns, at the angle at which it fires", () => {
    const idle = idleOf(seenOn(SIX, "driver.dead", "coil 1+6"));
    const always = { ...idle, cycles: idle.cycles.map(() => [0, 5]) };
    const times = beatTimes(SIX, always);
    expect(times).toHaveLength(4 * idle.cycles.length);
    // 120° at 750 rpm are 26.7 ms; after a gap, twice as much.
    const steps = times.slice(1).map((t, i) => Math.round((t - (times[i] ?? 0)) * 1e4) / 10);
    expect([...new Set(steps)].sort((a, b) => a - b)).toEqual([26.7, 53.3]);
  });

  it("leave out the strokes that are missed, about as many as in the whole stretch", () => {
    const seen = seenOn(SIX, "plug.gap-worn", "leg 2");
    for (const row of seen.regimes) {
      const times = beatTimes(SIX, row);
      expect(times).toHaveLength(6 * row.cycles.length - row.cycles.flat().length);
      const misses = row.share.reduce((sum, share) => sum + share, 0) * row.cycles.length;
      expect(Math.abs(6 * row.cycles.length - misses - times.length)).toBeLessThanOrEqual(1);
    }
  });
});
