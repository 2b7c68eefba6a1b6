// Does the work on an engine travel with its case: undone with it, merged with it, in its file and its link?
import { parseCase, type WorkBook } from "@half-order/core/wire";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import "fake-indexeddb/auto";
import { readLink, writeLink } from "../../packages/web/src/hand-over/link.ts";
import {
  addRepair,
  asOneStep,
  beginCase,
  giveAnswer,
  openCase,
  redo,
  repairs,
  undo,
} from "../../packages/web/src/state/case.ts";
import { mergeDocs } from "../../packages/web/src/state/merge.ts";
import { readOld, takeInOldWork } from "../../packages/web/src/state/old-work.ts";
import { DRIVES } from "../../packages/web/src/state/proof.ts";
import {
  type CaseDoc,
  forgetCase,
  keepCase,
  keptCase,
} from "../../packages/web/src/state/store.ts";
import {
  addDrive,
  drivesOf,
  setOpen,
  spend,
  tick,
  tickedOf,
  work,
} from "../../packages/web/src/state/work.ts";

/** Some of everything, on the open case. */
function doWork(): void {
  addRepair({ repair: "repair.rail", result: "cured" });
  const when = repairs.value.at(-1)?.when ?? "";
  setOpen(["access.rail@engine"]);
  spend({ step: "check.spark 2", minutes: 15, shownBy: { finding: "spark", cylinder: 2 } });
  spend({ step: `repair.rail ${when}`, minutes: 40, shownBy: { when } });
  tick("repair.rail", "connector.click", true);
  addDrive(when, DRIVES.clean);
  addDrive(when, DRIVES.code);
}

const docOf = (): CaseDoc => openCase.value?.doc as CaseDoc;

describe("the work on the open case", () => {
  beforeEach(() => beginCase("demo.tern"));

  it("is a document that a case file may hold, each entry with its moment", () => {
    doWork();
    expect(parseCase(JSON.parse(JSON.stringify(docOf())))).not.toHaveProperty("problems");
    const { spent = [], ticks = [], drives = [] } = docOf().work ?? {};
    expect(spent).toHaveLength(2);
    for (const { when } of [...spent, ...ticks, ...drives]) {
      expect(new Date(when ?? "").toISOString()).toBe(when);
    }
  });

  it("comes out of a link as it went in", async () => {
    doWork();
    expect(await readLink(await writeLink(docOf()))).toEqual({ doc: docOf() });
  });

  it("goes back and forth with the answers", () => {
    giveAnswer("lamp", "off");
    tick("r", "boot.home", true);
    undo();
    expect(tickedOf("r")).toEqual([]);
    expect(docOf().findings).toHaveLength(1);
    redo();
    expect(tickedOf("r")).toEqual(["boot.home"]);
  });

  it("is one step where one tap changed several things", () => {
    giveAnswer("lamp", "off");
    asOneStep(doWork);
    undo();
    expect(repairs.value).toEqual([]);
    expect(work.value.open).toEqual([]);
    expect(docOf().findings).toHaveLength(1);
    redo();
    expect(work.value.drives).toHaveLength(2);
  });

  it("makes no step of nothing", () => {
    setOpen(["a"]);
    const before = openCase.value;
    asOneStep(() => setOpen(["a"]));
    expect(openCase.value).toBe(before);
  });

  it("leaves answers and repairs the same lists, so that nothing is weighed anew", () => {
    doWork();
    const { findings, repairs: done } = docOf();
    tick("r", "boot.home", true);
    expect(docOf().findings).toBe(findings);
    expect(docOf().repairs).toBe(done);
  });
});

describe("two changes of the work", () => {
  const base: CaseDoc = { halfOrderCase: 1, engine: "demo.tern", findings: [] };
  const withWork = (value: WorkBook): CaseDoc => ({ ...base, work: value });
  const drive = (when: string) => ({ of: "r", misfire: "none" as const, when });

  it("are both kept, also where one side had none before", () => {
    const ours = withWork({ open: ["a"], ticks: [{ list: "r", line: "x", when: "1" }] });
    const theirs = withWork({ drives: [drive("1"), drive("2")] });
    expect(mergeDocs(base, ours, theirs)).toEqual({
      doc: withWork({ ...ours.work, ...theirs.work }),
      clashes: [],
    });
    expect(mergeDocs(withWork({ open: ["a"] }), base, withWork({ open: ["a", "b"] })).doc).toEqual(
      withWork({ open: ["b"] }),
    );
  });

  it("that are the same tick are no clash, and minutes of one step stand once", () => {
    const ours = withWork({
      ticks: [{ list: "r", line: "x", when: "1" }],
      spent: [{ step: "s", minutes: 5, shownBy: { when: "1" } }],
    });
    const theirs = withWork({
      ticks: [{ list: "r", line: "x", when: "2" }],
      spent: [{ step: "s", minutes: 8, shownBy: { when: "1" } }],
    });
    expect(mergeDocs(base, ours, theirs)).toEqual({ doc: ours, clashes: [] });
  });

  const books = fc.record({
    open: fc.uniqueArray(fc.constantFrom("a", "b", "c")),
    ticks: fc
      .uniqueArray(fc.constantFrom("x", "y", "z"))
      .map((lines) => lines.map((line) => ({ list: "r", line }))),
    drives: fc.uniqueArray(fc.constantFrom("1", "2", "3")).map((all) => all.map(drive)),
  });
  const keys = ({ open = [], ticks = [], drives = [] }: WorkBook = {}): ReadonlySet<string> =>
    new Set([...open, ...ticks.map(({ line }) => line), ...drives.map(({ when }) => when)]);

  it("give each entry that either side put in or took out since", () => {
    const property = fc.property(books, books, books, (was, mine, other) => {
      const merged = keys(mergeDocs(withWork(was), withWork(mine), withWork(other)).doc.work);
      for (const key of "abcxyz123") {
        const isOurs = keys(mine).has(key) !== keys(was).has(key);
        expect(merged.has(key)).toBe(keys(isOurs ? mine : other).has(key));
      }
    });
    fc.assert(property, { seed: 90127, numRuns: 300 });
  });
});

describe("work that the first pages kept beside the case", () => {
  const when = "2026-05-01T09:30:00.000Z";
  const old = JSON.stringify({
    open: ["access.rail@engine"],
    spent: [{ step: "repair.rail", minutes: 40, shownBy: { when } }],
    ticks: { "repair.rail": ["connector.click"] },
    drives: { [when]: [{ misfire: "none" }, { misfire: "none", isCodeBack: true }] },
  });
  const doc: CaseDoc = { halfOrderCase: 1, engine: "demo.tern", findings: [] };
  let left: Record<string, string>;
  beforeEach(() => {
    left = {};
    // The store of a browser lists its keys as its own.
    const store = Object.assign(Object.create({ getItem, removeItem }), left);
    left = store;
    vi.stubGlobal("localStorage", store);
  });
  afterEach(() => vi.unstubAllGlobals());
  function getItem(key: string): string | null {
    return left[key] ?? null;
  }
  function removeItem(key: string): void {
    delete left[key];
  }

  it("makes a book that a case file may hold", () => {
    const book = readOld(old);
    expect(parseCase({ ...doc, work: book })).not.toHaveProperty("problems");
    expect(book?.ticks).toEqual([{ list: "repair.rail", line: "connector.click" }]);
    expect(book?.drives?.map((each) => each.isCodeBack)).toEqual([undefined, true]);
    expect(new Set(book?.drives?.map((each) => each.when)).size).toBe(2);
  });

  it.each([null, "", "{", "5", '{"open":[]}', '{"open":[],"spent":[],"ticks":null,"drives":{}}'])(
    "is nothing where it is %j",
    (text) => expect(readOld(text)).toBeUndefined(),
  );

  it("goes into a case on the shelf, once", async () => {
    await keepCase({ id: "old", changed: 1, doc });
    left["half-order.work.old"] = old;
    left["half-order.work.gone"] = old;
    left["half-order.at-hand"] = "{}";
    await takeInOldWork();
    expect((await keptCase("old"))?.doc.work).toEqual(readOld(old));
    expect(Object.keys(left)).toEqual(["half-order.at-hand"]);
    left["half-order.work.old"] = JSON.stringify({ open: [], spent: [], ticks: {}, drives: {} });
    await takeInOldWork();
    expect((await keptCase("old"))?.doc.work).toEqual(readOld(old));
    await forgetCase("old");
  });

  it("goes into the open case, and a step back does not lose it", async () => {
    beginCase("demo.tern");
    giveAnswer("lamp", "off");
    const id = openCase.value?.id ?? "";
    left[`half-order.work.${id}`] = old;
    await takeInOldWork();
    expect(drivesOf(when)).toHaveLength(2);
    // Nothing writes here: until it is on the device, the old one stays.
    expect(Object.keys(left)).toHaveLength(1);
    undo();
    expect(docOf().findings).toEqual([]);
    expect(drivesOf(when)).toHaveLength(2);
  });
});
