// Is nothing counted before it is said what went in, and does what was said go wherever the case goes?
import "fake-indexeddb/auto";
import { type EngineProfile, type PlugRecord, profileById, wearReport } from "@half-order/core";
import { parseCase } from "@half-order/core/wire";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { readLink, writeLink } from "../../packages/web/src/hand-over/link.ts";
import { courseOf, keepSaid, withSaid } from "../../packages/web/src/record/course.ts";
import { newDraft } from "../../packages/web/src/record/draft.ts";
import { sayDue } from "../../packages/web/src/record/due.ts";
import { sayOver } from "../../packages/web/src/record/over.ts";
import { nextAfter } from "../../packages/web/src/record/plan.ts";
import { openCase, takeCase, undo } from "../../packages/web/src/state/case.ts";
import { readCaseFile } from "../../packages/web/src/state/file.ts";
import { takeInOldWork } from "../../packages/web/src/state/old-work.ts";
import {
  type CaseDoc,
  forgetCase,
  keepCase,
  keptCase,
} from "../../packages/web/src/state/store.ts";

const profile = profileById("demo.tern") as EngineProfile;
const record: PlugRecord = {
  when: "2026-05-01",
  odometerKm: 120_000,
  fittedAtKm: 60_000,
  plugs: [1.1, 1.2, 1.5].map((gapMm, i) => ({ cylinder: i + 1, gapMm })),
};
const report = wearReport(profile, record);
const doc: CaseDoc = {
  halfOrderCase: 1,
  engine: "demo.tern",
  findings: [],
  records: [{ ...record, when: "2025-05-01", odometerKm: 90_000 }, record],
};
const courses = () => (openCase.value?.doc.records ?? []).map(({ course }) => course);
const dueOf = (of: PlugRecord) => nextAfter(profile, of, report, courseOf(of, [of]));

let left: Record<string, string>;
beforeEach(() => {
  left = {};
  const store = {
    getItem: (key: string) => left[key] ?? null,
    removeItem: (key: string) => delete left[key],
  };
  vi.stubGlobal("navigator", { language: "de-DE" });
  // Its keys are its own, as those of a real store.
  vi.stubGlobal(
    "localStorage",
    new Proxy(left, { get: (of, key) => Reflect.get(key in store ? store : of, key) }),
  );
});
afterEach(() => vi.unstubAllGlobals());

describe("what goes on from a record", () => {
  it("is not taken for granted: nothing is due before somebody has said what went in", () => {
    expect(dueOf(record)).toBeUndefined();
    const next = dueOf(withSaid(record, { wentIn: "new" }));
    expect(next?.atKm).toBeGreaterThan(record.odometerKm);
    expect(sayDue(next ?? {})).toMatch(/^At \S+\skm/);
  });

  it("stands in its record, can be changed and taken back, and leaves the others alone", () => {
    takeCase(doc);
    keepSaid("2026-05-01", { wentIn: "new" });
    keepSaid("2026-05-01", { kmPerYear: 12_000 });
    expect(courses()).toEqual([undefined, { wentIn: "new", kmPerYear: 12_000 }]);
    keepSaid("2026-05-01", { kmPerYear: undefined });
    expect(courses()[1]).toEqual({ wentIn: "new" });
    undo();
    expect(courses()[1]).toEqual({ wentIn: "new", kmPerYear: 12_000 });
    expect(withSaid({ ...record, course: { wentIn: "new" } }, { wentIn: undefined })).toEqual(
      record,
    );
  });

  it("goes with the file and with the link, so that the next service is the same there", async () => {
    takeCase(doc);
    keepSaid("2026-05-01", { wentIn: "same", kmPerYear: 12_000, fittedOn: "2024-03-01" });
    const mine = openCase.value?.doc as CaseDoc;
    const file = await readCaseFile(new Blob([JSON.stringify(mine)]));
    const link = await readLink(await writeLink(mine));
    for (const reading of [file, link]) {
      if (!reading || "problems" in reading) throw new Error(JSON.stringify(reading));
      const last = reading.doc.records?.at(-1) as PlugRecord;
      expect(last).toEqual(mine.records?.at(-1));
      expect(dueOf(last)).toEqual(dueOf(mine.records?.at(-1) as PlugRecord));
      expect(dueOf(last)?.dueOn).toBeDefined();
    }
  });

  it("is looked over on the way in, and cases from before it still open", () => {
    const read = (course: unknown) => {
      const reading = parseCase({ ...doc, records: [{ ...record, course }] });
      return "problems" in reading ? reading.problems.map(({ path }) => path) : [];
    };
    expect(parseCase(doc)).not.toHaveProperty("problems");
    expect(read({})).toEqual([]);
    expect(read({ wentIn: "new", kmPerYear: 15_000 })).toEqual([]);
    expect(read({ wentIn: "old" })).toEqual(["/records/0/course/wentIn"]);
    expect(read({ kmPerYear: 0 })).toEqual(["/records/0/course/kmPerYear"]);
    expect(read({ fittedOn: "2026-02-30" })).toEqual(["/records/0/course/fittedOn"]);
    expect(read({ fittedOn: "2026-06-01" })).toEqual(["/records/0/course/fittedOn"]);
    expect(read({ colour: "red" })).toHaveLength(1);
  });

  it("tells a new record when its plugs went in: with the last one, or before where the same went back", () => {
    expect(newDraft("2026-08-01", [record]).fittedAtKm).toBe(120_000);
    const same = withSaid(record, { wentIn: "same" });
    expect(newDraft("2026-08-01", [same]).fittedAtKm).toBe(60_000);
  });

  it("that the first pages kept beside a case goes into it, once, and nothing that cannot be", async () => {
    const said = {
      "2026-05-01": { wentIn: "new", kmPerYear: 12_000, fittedOn: "2026-07-01" },
      "2025-05-01": { wentIn: "what", kmPerYear: "far" },
      "2020-01-01": { wentIn: "same" },
    };
    await keepCase({ id: "old", changed: 1, doc });
    left["half-order.course.old"] = JSON.stringify(said);
    left["half-order.course.gone"] = JSON.stringify(said);
    await takeInOldWork();
    const kept = (await keptCase("old"))?.doc;
    expect(kept?.records?.map(({ course }) => course)).toEqual([
      undefined,
      { wentIn: "new", kmPerYear: 12_000 },
    ]);
    expect(parseCase(kept)).not.toHaveProperty("problems");
    expect(Object.keys(left)).toEqual([]);
    await forgetCase("old");
  });
});

describe("gaps beside those of the manual", () => {
  it("are named where they are over, and where they are at the limit", () => {
    const words = sayOver({ ...report, limitMm: 1.32 }, [1, 1.1]).replace(/\s/g, " ");
    expect(words).toMatch(/^Over the 1 to 1.1 mm of the manual: 1.2 mm at cylinder 2 and 1.5 mm/);
    expect(words).toMatch(/At the limit: cylinder 3\.$/);
  });

  it("are named where they are under", () => {
    expect(sayOver(report, [1.3, 1.4]).replace(/\s/g, " ")).toBe(
      "Over the 1.3 to 1.4 mm of the manual: 1.5 mm at cylinder 3. Under it: 1.1 mm at cylinder 1 and 1.2 mm at cylinder 2. At the limit: cylinder 3.",
    );
  });

  it("are said to be within where none is over", () => {
    expect(sayOver(report, [1, 1.6]).replace(/\s/g, " ")).toBe(
      "No gap is over the 1 to 1.6 mm of the manual.",
    );
  });
});
