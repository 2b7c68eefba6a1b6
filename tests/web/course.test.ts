// Is nothing counted before it is said what went in, and does what was said stay with its case?
import { type EngineProfile, type PlugRecord, profileById, wearReport } from "@half-order/core";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  allSaid,
  courseOf,
  dropSaid,
  keepSaid,
  putBackSaid,
} from "../../packages/web/src/record/course.ts";
import { sayDue } from "../../packages/web/src/record/due.ts";
import { sayOver } from "../../packages/web/src/record/over.ts";
import { nextAfter } from "../../packages/web/src/record/plan.ts";

const profile = profileById("demo.tern") as EngineProfile;
const record: PlugRecord = {
  when: "2026-05-01",
  odometerKm: 120_000,
  fittedAtKm: 60_000,
  plugs: [1.1, 1.2, 1.5].map((gapMm, i) => ({ cylinder: i + 1, gapMm })),
};
const report = wearReport(profile, record);

let kept: Map<string, string>;
beforeEach(() => {
  kept = new Map();
  vi.stubGlobal("navigator", { language: "de-DE" });
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
});
afterEach(() => vi.unstubAllGlobals());

describe("what goes on from a record", () => {
  it("is not taken for granted: nothing is due before somebody has said what went in", () => {
    expect(nextAfter(profile, record, report, courseOf({}, record, [record]))).toBeUndefined();
    const next = nextAfter(profile, record, report, courseOf({ wentIn: "new" }, record, [record]));
    expect(next?.atKm).toBeGreaterThan(record.odometerKm);
    expect(sayDue(next ?? {})).toMatch(/^At \S+\skm/);
  });

  it("is kept by case and by record, and goes and comes back with its case", () => {
    keepSaid("a", "2026-05-01", { wentIn: "new", kmPerYear: 12_000 });
    keepSaid("a", "2025-05-01", { wentIn: "same" });
    expect(allSaid("a")["2026-05-01"]).toEqual({ wentIn: "new", kmPerYear: 12_000 });
    expect(allSaid("b")).toEqual({});
    const gone = dropSaid("a");
    expect(kept.size).toBe(0);
    putBackSaid("a", gone);
    expect(allSaid("a")["2025-05-01"]).toEqual({ wentIn: "same" });
  });

  it("is no more than a choice of the moment where the device keeps nothing", () => {
    vi.stubGlobal("localStorage", {
      getItem: () => {
        throw new DOMException("no", "SecurityError");
      },
    });
    expect(allSaid("a")).toEqual({});
    expect(keepSaid("a", "2026-05-01", { wentIn: "new" })).toBe(false);
  });
});

describe("gaps beside those of the manual", () => {
  it("are named where they are over, and where they are at the limit", () => {
    const words = sayOver({ ...report, limitMm: 1.32 }, [1, 1.1]).replace(/\s/g, " ");
    expect(words).toMatch(/^Over the 1 to 1.1 mm of the manual: 1.2 mm at cylinder 2 and 1.5 mm/);
    expect(words).toMatch(/At the limit: cylinder 3\.$/);
  });

  it("are said to be within where none is over", () => {
    expect(sayOver(report, [1, 1.6]).replace(/\s/g, " ")).toBe(
      "No gap is over the 1 to 1.6 mm of the manual.",
    );
  });
});
