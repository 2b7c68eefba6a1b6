// Does the page keep the case as the user means it?
import { type EngineProfile, FINDINGS, type FindingRow, resolveEngine } from "@half-order/core";
import { parseCase } from "@half-order/core/wire";
import { beforeEach, describe, expect, it } from "vitest";
import "fake-indexeddb/auto";
import { firstQuestions } from "../../packages/web/src/state/asked.ts";
import {
  addRepair,
  answerOf,
  beginCase,
  canRedo,
  canUndo,
  changeEngine,
  closeAsMended,
  engines,
  findings,
  giveAnswer,
  openCase,
  profile,
  redo,
  removeRepair,
  reopen,
  repairs,
  resumeCase,
  setAtHand,
  setRepairResult,
  undo,
  withdrawAnswer,
} from "../../packages/web/src/state/case.ts";
import { questionAfter, targetKind, targetsOf } from "../../packages/web/src/state/catalogue.ts";
import { codeOf, cylinderOf, readTyped } from "../../packages/web/src/state/code.ts";
import { facts } from "../../packages/web/src/state/facts.ts";
import { seemsMended } from "../../packages/web/src/state/mended.ts";
import { emptySketch, profileOf } from "../../packages/web/src/state/sketch.ts";
import {
  type CaseDoc,
  forgetCase,
  type KeptCase,
  keepCase,
  keptCase,
  keptCases,
} from "../../packages/web/src/state/store.ts";
import { think } from "../../packages/web/src/thread.ts";
import { column, sayDb } from "../../packages/web/src/ui/column.ts";

const rowOf = (id: string): FindingRow => {
  const row = FINDINGS.find((known) => known.id === id);
  if (!row) throw new Error(`no finding ${id}`);
  return row;
};

beforeEach(() => beginCase("demo.dunlin"));

describe("a case that is begun", () => {
  it("is the open one, where nothing has been entered there and the engine is the same", () => {
    const id = openCase.value?.id;
    beginCase("demo.dunlin");
    expect(openCase.value?.id).toBe(id);
    beginCase("demo.tern");
    expect(openCase.value?.id).not.toBe(id);
  });

  it("is another one as soon as something was entered", () => {
    const id = openCase.value?.id;
    giveAnswer("lamp", "off");
    beginCase("demo.dunlin");
    expect(openCase.value?.id).not.toBe(id);
    expect(openCase.value?.doc.findings).toEqual([]);
  });
});

describe("the open case", () => {
  it("keeps one answer to a question, the last one, in its first place", () => {
    giveAnswer("lamp", "off");
    giveAnswer("onset", "driving");
    giveAnswer("lamp", "blinking");
    expect(findings.value.map(({ finding, answer }) => [finding, answer])).toEqual([
      ["lamp", "blinking"],
      ["onset", "driving"],
    ]);
  });

  it("keeps answers of different cylinders apart", () => {
    giveAnswer("spark", "none", 2);
    giveAnswer("spark", "strong", 3);
    withdrawAnswer("spark", 2);
    expect(answerOf("spark", 2)).toBeUndefined();
    expect(answerOf("spark", 3)).toBe("strong");
  });

  it("is the document that a case file holds", () => {
    giveAnswer("codes", ["P0302"]);
    expect(openCase.value?.doc).toMatchObject({
      halfOrderCase: 1,
      engine: "demo.dunlin",
      findings: [{ finding: "codes", answer: ["P0302"] }],
    });
  });

  it("goes back and forth through every entry, and forth no more after a new one", () => {
    giveAnswer("lamp", "off");
    giveAnswer("lamp", "steady");
    withdrawAnswer("lamp");
    undo();
    expect(answerOf("lamp")).toBe("steady");
    undo();
    expect(answerOf("lamp")).toBe("off");
    redo();
    expect(answerOf("lamp")).toBe("steady");
    giveAnswer("onset", "driving");
    expect(canRedo.value).toBe(false);
    undo();
    undo();
    undo();
    expect(findings.value).toEqual([]);
    expect(canUndo.value).toBe(false);
  });

  it("keeps what was mended and what is at hand, in the form of the case file", () => {
    addRepair({ repair: "repair.plug-set" });
    setRepairResult(0, "same");
    setAtHand({ where: "roadside", tools: ["light"] });
    closeAsMended();
    const { doc } = openCase.value ?? {};
    expect(parseCase(doc)).not.toHaveProperty("problems");
    expect(doc).toMatchObject({
      repairs: [{ repair: "repair.plug-set", result: "same" }],
      atHand: { where: "roadside", tools: ["light"] },
    });
    reopen();
    setRepairResult(0, undefined);
    expect(repairs.value[0]).not.toHaveProperty("result");
    removeRepair(0);
    expect(repairs.value).toEqual([]);
    expect(openCase.value?.doc).not.toHaveProperty("closed");
  });

  it("is not mended any more once it is opened again, and is so when that is taken back", () => {
    addRepair({ repair: "repair.plug-set" });
    setRepairResult(0, "cured");
    closeAsMended();
    reopen();
    expect(repairs.value).toMatchObject([{ repair: "repair.plug-set", result: "came-back" }]);
    expect(seemsMended(repairs.value)).toBe(false);
    undo();
    expect(seemsMended(repairs.value)).toBe(true);
  });

  it("keeps its answers when more is known of the engine", () => {
    beginCase({ cylinders: 6, layout: "v", ignition: "rail" });
    giveAnswer("lamp", "off");
    expect(engines.value.length).toBeGreaterThan(1);
    const [likeliest] = engines.value;
    if (!likeliest) throw new Error("no engine");
    changeEngine(likeliest.profile);
    expect(engines.value).toHaveLength(1);
    expect(answerOf("lamp")).toBe("off");
  });

  it("has no engine when the profile is not sound", () => {
    beginCase({ cylinders: 4, ignition: "rail", firingOrder: [1, 2, 3, 3] });
    expect(engines.value).toEqual([]);
    const known = profile.value;
    expect(known && think({ profile: known, findings: [], repairs: [] }).problems).not.toHaveLength(
      0,
    );
  });
});

describe("the store", () => {
  it("gives back what it kept, the last changed first, and forgets", async () => {
    const doc = { halfOrderCase: 1, engine: "demo.tern", findings: [] } as const;
    await keepCase({ id: "a", changed: 1, doc });
    await keepCase({ id: "b", changed: 2, doc });
    await keepCase({ id: "a", changed: 3, doc });
    expect((await keptCases()).map(({ id }) => id)).toEqual(["a", "b"]);
    await forgetCase("a");
    expect((await keptCases()).map(({ id }) => id)).toEqual(["b"]);
  });

  it("merges with what was written since the case was read", async () => {
    const doc: CaseDoc = { halfOrderCase: 1, engine: "demo.tern", findings: [] };
    const lamp = { finding: "lamp", answer: "off" };
    const onset = { finding: "onset", answer: "driving" };
    const { kept: base } = await keepCase({ id: "c", changed: 1, version: 0, doc });
    await keepCase({ ...base, doc: { ...doc, findings: [lamp] } }, base);
    const late = await keepCase({ ...base, doc: { ...doc, findings: [onset] } }, base);
    expect(late).toMatchObject({ isMerged: true, clashes: [] });
    expect((await keptCase("c"))?.doc.findings).toEqual([onset, lamp]);
    await forgetCase("c");
  });
});

describe("the questions", () => {
  it("begin with at most six, each leading to the next", () => {
    const rail: EngineProfile = { cylinders: 4, ignition: "rail" };
    const first = firstQuestions(rail);
    expect(first.length).toBeGreaterThan(0);
    expect(first.length).toBeLessThanOrEqual(6);
    first.forEach((row, i) => {
      expect(questionAfter(row.id, rail)).toBe(first[i + 1]);
    });
  });

  it("ask of the connector, the coil or the cylinder, as the faults that speak sit", () => {
    const engine = resolveEngine({ cylinders: 4, ignition: "rail", firingOrder: [1, 3, 4, 2] });
    const told = think({ profile: engine.profile, findings: [], repairs: [] }).facts;
    if (!told) throw new Error("no facts");
    facts.value = told;
    expect(targetKind(rowOf("connector.push"))).toBe("connector");
    expect(targetsOf(rowOf("connector.push"), engine)).toHaveLength(1);
    expect(targetsOf(rowOf("trigger"), engine)).toHaveLength(2);
    expect(targetsOf(rowOf("plug.gap"), engine)).toHaveLength(4);
    expect(targetsOf(rowOf("lamp"), engine)).toHaveLength(0);
  });
});

describe("codes", () => {
  const engine = resolveEngine({ cylinders: 4, ignition: "rail", firingOrder: [1, 3, 4, 2] });

  it("name a cylinder by their last digits, as far as there are codes", () => {
    expect(codeOf(0)).toBe("P0301");
    expect(codeOf(11)).toBe("P0312");
    expect(codeOf(12)).toBeUndefined();
    expect(cylinderOf("P0304", engine)).toBe(3);
    expect(cylinderOf("P0305", engine)).toBeUndefined();
  });

  it("are read as they are typed, and what is none is said", () => {
    expect(readTyped("p0171, P0420;x12")).toEqual({ codes: ["P0171", "P0420"], wrong: ["X12"] });
  });
});

describe("a sketched engine", () => {
  it("is a profile of what was typed", () => {
    expect(
      profileOf({
        ...emptySketch,
        layout: "v",
        order: "R1-l2-R2, L3 L1 R3",
        banks: "r1-r2-r3 / l1-l2-l3",
      }),
    ).toEqual({
      cylinders: 6,
      layout: "v",
      ignition: "rail",
      firingOrder: ["R1", "L2", "R2", "L3", "L1", "R3"],
      banks: [
        ["R1", "R2", "R3"],
        ["L1", "L2", "L3"],
      ],
    });
  });
});

describe("the column of a ledger", () => {
  it("adds up after rounding", () => {
    const values = [-13.14, 9.55, 1.44, 0.25, 0.25, 0.25];
    const shown = column(values);
    const sum = shown.reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(Math.round(values.reduce((a, b) => a + b, 0) * 10) / 10, 9);
    shown.forEach((figure, i) => {
      expect(Math.abs(figure - (values[i] ?? 0))).toBeLessThanOrEqual(0.1);
    });
  });

  it("has a true minus sign, and none at nothing", () => {
    expect([sayDb(-13.1), sayDb(4.6), sayDb(-0.01)]).toEqual(["−13.1", "+4.6", "0.0"]);
  });
});

describe("steps back and forth", () => {
  it("are kept with the case, so that a reload does not end them", async () => {
    giveAnswer("lamp", "off");
    giveAnswer("lamp", "blinking");
    const mine = openCase.value;
    if (!mine) throw new Error("no case");
    await keepCase(mine);
    const stored = await keptCase(mine.id);
    if (!stored) throw new Error("nothing kept");
    beginCase("demo.tern");
    resumeCase(stored);
    undo();
    expect(answerOf("lamp")).toBe("off");
    redo();
    expect(answerOf("lamp")).toBe("blinking");
  });

  it("take nothing back that another tab has entered meanwhile", async () => {
    giveAnswer("lamp", "off");
    const base = (await keepCase(openCase.value as KeptCase)).kept;
    await keepCase(
      { ...base, doc: { ...base.doc, findings: [...base.doc.findings, theirs] } },
      base,
    );
    giveAnswer("codes", []);
    const { kept, isMerged } = await keepCase(openCase.value as KeptCase, base);
    expect(isMerged).toBe(true);
    resumeCase(kept);
    undo();
    expect(findings.value.map(({ finding }) => finding)).toEqual(["lamp", "onset"]);
  });

  const theirs = { finding: "onset", answer: "driving" };
});
