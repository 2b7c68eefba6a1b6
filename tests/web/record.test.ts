// Does the record of plugs hold what was found, draw it truly, and count the next service from the right day?
import {
  type EngineProfile,
  type PlugRecord,
  type Problem,
  profileById,
  wearReport,
} from "@half-order/core";
import fc from "fast-check";
import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  draft,
  dropRecord,
  followDraft,
  isDraftKept,
  keepRecord,
  records,
} from "../../packages/web/src/record/book.ts";
import { CHART, chartPlan, roundStep } from "../../packages/web/src/record/chart-geometry.ts";
import {
  draftOf,
  isEmpty,
  newDraft,
  plugOf,
  recordOf,
  setField,
  withPlug,
  withRecord,
  withSameForAll,
} from "../../packages/web/src/record/draft.ts";
import { fitted } from "../../packages/web/src/record/photo.ts";
import {
  forgetPhoto,
  forgetPhotos,
  keepPhoto,
  movePhotos,
  photosOf,
} from "../../packages/web/src/record/photo-store.ts";
import { fittedDay, nextAfter, paceOf } from "../../packages/web/src/record/plan.ts";
import { beginCase, giveAnswer, openCase, undo } from "../../packages/web/src/state/case.ts";

const record = (when: string, odometerKm: number, more: Partial<PlugRecord> = {}): PlugRecord => ({
  when,
  odometerKm,
  plugs: [],
  ...more,
});

const problem = (code: string): Problem => ({ code, path: "", message: "", hint: "" });
const WORDS = { missing: problem("missing"), sameDay: problem("same-day") };

describe("a record that is written", () => {
  const empty = newDraft("2026-05-01", []);

  it("begins where the last plugs went in", () => {
    expect(newDraft("2026-05-01", [record("2025-01-01", 90_000)]).fittedAtKm).toBe(90_000);
    expect(empty.fittedAtKm).toBeUndefined();
    expect(isEmpty(empty)).toBe(true);
  });

  it("holds one entry for each plug, and none for a plug of which nothing is known", () => {
    const one = withPlug(empty, { cylinder: 2, gapMm: 1.1 });
    const two = withPlug(one, { cylinder: 2, gapMm: 1.2, look: "tan" });
    expect(two.plugs).toEqual([{ cylinder: 2, gapMm: 1.2, look: "tan" }]);
    const bare = setField(setField(plugOf(two, 2), "gapMm", undefined), "look", undefined);
    expect(withPlug(two, bare).plugs).toEqual([]);
  });

  it("writes torque and number to all plugs, and leaves gaps and looks alone", () => {
    const from = withPlug(withPlug(empty, { cylinder: 1, gapMm: 1 }), {
      cylinder: 2,
      torqueNm: 22,
      part: "A7",
    });
    const all = withSameForAll(from, 2, [1, 2, 3]);
    expect(plugOf(all, 1)).toEqual({ cylinder: 1, gapMm: 1, torqueNm: 22, part: "A7" });
    expect(plugOf(all, 3)).toEqual({ cylinder: 3, torqueNm: 22, part: "A7" });
  });

  it("says what is missing, and that a day is taken", () => {
    const taken = [record("2026-05-01", 1)];
    expect(recordOf(empty, taken, [1, 2], WORDS)).toEqual({
      problems: [WORDS.missing, WORDS.sameDay],
    });
  });

  it("may be of its own day again when it is changed", () => {
    const old = record("2026-05-01", 100, { plugs: [{ cylinder: 2 }, { cylinder: 1 }] });
    const reading = recordOf(draftOf(old), [old], [1, 2], WORDS);
    expect(reading).toEqual({
      record: { ...old, plugs: [{ cylinder: 1 }, { cylinder: 2 }] },
    });
  });

  it("takes its place in the order of time, and that of the one it was", () => {
    const [a, b, c] = [record("2024-01-01", 1), record("2025-01-01", 2), record("2026-01-01", 3)];
    expect(withRecord([a, c], b, undefined)).toEqual([a, b, c]);
    const moved = record("2023-01-01", 3);
    expect(withRecord([a, b, c], moved, "2026-01-01")).toEqual([moved, a, b]);
  });
});

describe("the book of the open case", () => {
  const kept = new Map<string, string>();
  beforeEach(() => {
    kept.clear();
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
      removeItem: (key: string) => kept.delete(key),
    });
    beginCase("demo.dunlin");
  });
  afterEach(() => vi.unstubAllGlobals());

  const seen = record("2026-05-01", 100, {
    plugs: [
      { cylinder: 1, gapMm: 1.1, look: "tan" },
      { cylinder: 2, gapMm: 1.3 },
    ],
  });
  const answers = () =>
    openCase.value?.doc.findings.map(({ finding, answer, cylinder }) => [
      finding,
      answer,
      cylinder,
    ]);

  it("writes a record into the case document, in one step that can be taken back", () => {
    giveAnswer("plug.gap", "closed", 2);
    keepRecord(seen, undefined, true);
    expect(openCase.value?.doc.records).toEqual([seen]);
    expect(answers()).toEqual([
      ["plug.gap", 1.1, 1],
      ["plug.look", "tan", 1],
      ["plug.gap", 1.3, 2],
    ]);
    undo();
    expect(records.value).toEqual([]);
    expect(answers()).toEqual([["plug.gap", "closed", 2]]);
  });

  it("leaves the findings alone where that is wished, and lets a record go", () => {
    keepRecord(seen, undefined, false);
    expect(answers()).toEqual([]);
    dropRecord("2026-05-01");
    expect(records.value).toEqual([]);
  });

  it("takes a half-written record up where it was left, and forgets it when it is empty", () => {
    const stop = followDraft("a");
    draft.value = withPlug(draft.value, { cylinder: 1, gapMm: 1.1 });
    const left = draft.value;
    stop();
    draft.value = newDraft("2000-01-01", []);
    const stopAgain = followDraft("a");
    expect(draft.value).toEqual(left);
    draft.value = newDraft("2026-05-01", []);
    expect(kept.size).toBe(0);
    stopAgain();
  });

  it("says when the device keeps no draft", () => {
    vi.stubGlobal("localStorage", {
      getItem: () => "{broken",
      setItem: () => {
        throw new DOMException("full", "QuotaExceededError");
      },
      removeItem: () => undefined,
    });
    const stop = followDraft("b");
    expect(isEmpty(draft.value)).toBe(true);
    draft.value = setField(draft.value, "odometerKm", 5);
    expect(isDraftKept.value).toBe(false);
    stop();
  });
});

describe("photos", () => {
  const photo = (text: string): Blob => new Blob([text], { type: "image/jpeg" });
  const at = (day: string, cylinder: number, caseId = "x") => ({ caseId, day, cylinder });
  const textsOf = async (caseId: string, day: string) => {
    const photos = await photosOf(caseId, day);
    return Promise.all([...photos].map(async ([name, blob]) => [name, await blob.text()]));
  };
  afterEach(async () => {
    vi.restoreAllMocks();
    await forgetPhotos("x");
    await forgetPhotos("y");
  });

  it("are kept by case, day and cylinder, the last one of each", async () => {
    await keepPhoto(at("2026-05-01", 1), photo("a"));
    await keepPhoto(at("2026-05-01", 1), photo("b"));
    await keepPhoto(at("2026-05-02", 1), photo("other day"));
    await keepPhoto(at("2026-05-01", 2, "y"), photo("other case"));
    expect(await textsOf("x", "2026-05-01")).toEqual([[1, "b"]]);
    await forgetPhoto(at("2026-05-01", 1));
    expect(await textsOf("x", "2026-05-01")).toEqual([]);
  });

  it("follow their record to another day, and to the same", async () => {
    await keepPhoto(at("draft", 1), photo("a"));
    await keepPhoto(at("draft", 4), photo("b"));
    await movePhotos("x", "draft", "2026-05-01");
    await movePhotos("x", "2026-05-01", "2026-05-01");
    expect(await textsOf("x", "draft")).toEqual([]);
    expect(await textsOf("x", "2026-05-01")).toEqual([
      [1, "a"],
      [4, "b"],
    ]);
  });

  it("go with their case, and with no other", async () => {
    await keepPhoto(at("2026-05-01", 1), photo("a"));
    await keepPhoto(at("2026-05-01", 1, "y"), photo("b"));
    await forgetPhotos("x");
    expect(await textsOf("x", "2026-05-01")).toEqual([]);
    expect(await textsOf("y", "2026-05-01")).toEqual([[1, "b"]]);
  });

  it.each([
    ["QuotaExceededError", "full"],
    ["InvalidStateError", "failed"],
  ])("tell a device that refuses with %s: %s", async (name, trouble) => {
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("no", name);
    });
    expect(await keepPhoto(at("2026-05-01", 1), photo("a"))).toBe(trouble);
  });

  it("are made to fit, and never larger", () => {
    expect(fitted(4000, 3000)).toEqual([1280, 960]);
    expect(fitted(3000, 4000)).toEqual([960, 1280]);
    expect(fitted(300, 200)).toEqual([300, 200]);
    expect(fitted(10_000, 1)).toEqual([1280, 1]);
  });
});

describe("the chart of wear", () => {
  const gap = fc.double({ min: 0.1, max: 60, noNaN: true });

  it("holds everything that is drawn on it, wider gaps higher", () => {
    fc.assert(
      fc.property(
        fc.array(gap, { minLength: 1, maxLength: 12 }),
        fc.option(gap, { nil: undefined }),
        fc.option(gap, { nil: undefined }),
        (gaps, fresh, limit) => {
          const { y, x, width, ticks } = chartPlan({ gaps, fresh, limit });
          const shown = [...gaps, ...[fresh, limit].flatMap((each) => each ?? []), ...ticks];
          for (const each of shown) {
            expect(y(each)).toBeGreaterThanOrEqual(CHART.top - 0.01);
            expect(y(each)).toBeLessThanOrEqual(CHART.height - CHART.bottom + 0.01);
          }
          const sorted = [...shown].sort((a, b) => a - b).map(y);
          expect(sorted).toEqual([...sorted].sort((a, b) => b - a));
          expect(Math.max(...x)).toBeLessThan(width - CHART.right);
          expect(ticks.length).toBeGreaterThanOrEqual(2);
          expect(ticks.length).toBeLessThanOrEqual(6);
        },
      ),
      { seed: 20261125 },
    );
  });

  it("has round numbers at its side", () => {
    expect(chartPlan({ gaps: [1.05, 1.32], fresh: 0.9, limit: 1.32 }).ticks).toEqual([
      0.8, 1, 1.2, 1.4,
    ]);
    expect([0.14, 0.2, 0.21, 3, 51].map(roundStep)).toEqual([0.2, 0.2, 0.5, 5, 100]);
  });
});

describe("the next plugs", () => {
  const profile: EngineProfile = {
    ...(profileById("demo.dunlin") as EngineProfile),
    figures: { plugGapMm: [0.9, 1.1], serviceKm: 60_000, serviceMonths: 48 },
  };
  const plugs = [1, 2, 3, 4].map((cylinder) => ({ cylinder, gapMm: 1.1 }));
  const now = record("2026-05-01", 120_000, { plugs, newGapMm: 0.9, fittedAtKm: 100_000 });
  const report = wearReport(profile, now);
  const course = { kmPerYear: 20_000, fittedOn: undefined };

  it("are counted from the day on which new ones went in, at the wear of the old", () => {
    // 0.2 mm in 20,000 km from 0.9 mm; 1.32 mm is reached after 42,000 km, before the 60,000.
    const next = nextAfter(profile, now, report, { ...course, wentIn: "new" });
    expect(next?.atKm).toBeCloseTo(162_000, 0);
    expect(next).toMatchObject({ by: "gap", onDay: "2030-05-01" });
    expect(next?.dueOn?.slice(0, 7)).toBe("2028-06");
  });

  it("are counted from when the same ones first went in", () => {
    const same = { ...course, wentIn: "same", fittedOn: "2025-05-01" } as const;
    const next = nextAfter(profile, now, report, same);
    expect(next?.atKm).toBeCloseTo(142_000, 0);
    expect(next?.onDay).toBe("2029-05-01");
  });

  it("are not guessed while that day is not known", () => {
    expect(nextAfter(profile, now, report, { ...course, wentIn: "same" })).toBeUndefined();
  });

  it("know the day from an earlier record, else from the yearly distance", () => {
    const earlier = record("2025-03-01", 100_000);
    expect(fittedDay(now, [earlier, now], undefined)).toBe("2025-03-01");
    expect(fittedDay(now, [now], 20_000)).toBe("2025-05-01");
    expect(fittedDay(now, [now], undefined)).toBeUndefined();
    expect(fittedDay(now, [now], 1)).toBeUndefined();
  });

  it("take the yearly distance from the first and the last record", () => {
    // 365 days and 20,000 km: 20,013 km in a mean year of 365.2425 days.
    expect(paceOf([record("2025-05-01", 100_000), now])).toBe(20_013);
    expect(paceOf([record("2026-04-20", 119_000), now])).toBeUndefined();
    expect(paceOf([now])).toBeUndefined();
  });
});
