// Does the page that is handed on say what the case holds, each thing once and in its place?
import {
  allProfiles,
  FINDINGS,
  type FindingRow,
  type PlugRecord,
  profileById,
  REPAIRS,
  type RepairRow,
  rank,
  resolveEngine,
  wearReport,
} from "@half-order/core";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { mendedLines } from "../../packages/web/src/hand-over/mended.ts";
import {
  answerLines,
  cautionsOf,
  engineLine,
  likelyLines,
  plugLine,
  sayRepair,
} from "../../packages/web/src/hand-over/summary.ts";

const rowOf = (id: string): FindingRow | undefined => FINDINGS.find((row) => row.id === id);
const tern = profileById("demo.tern");
if (!tern) throw new Error("no engine");

beforeEach(() => {
  vi.stubGlobal("navigator", { language: "de-DE" });
});
afterEach(() => vi.unstubAllGlobals());

describe("the answers", () => {
  it("are parted into what the engine does and what was checked", () => {
    const { does, checked } = answerLines(
      [
        { finding: "lamp", answer: "blinking" },
        { finding: "spark", answer: "none", cylinder: 2 },
        { finding: "codes", answer: [] },
      ],
      rowOf,
    );
    expect(does.map(({ answer }) => answer)).toEqual(["Blinking now", "none"]);
    expect(checked).toHaveLength(1);
    expect(checked[0]?.asked).toContain("cylinder 2");
  });

  it("share a line where cylinders have the same", () => {
    const looks = [1, 2, 3].map((cylinder) => ({
      finding: "plug.look",
      answer: cylinder === 2 ? "wet-petrol" : "tan",
      cylinder,
    }));
    const { checked } = answerLines(looks, rowOf);
    expect(checked.map(({ asked }) => asked)).toEqual([
      expect.stringContaining("(cylinder 1 and 3)"),
      expect.stringContaining("(cylinder 2)"),
    ]);
  });

  it("are not lost when this page does not know the question", () => {
    const { does } = answerLines([{ finding: "from.elsewhere", answer: "x" }], rowOf);
    expect(does).toEqual([{ asked: "from.elsewhere", answer: "x" }]);
  });
});

describe("what remains likely", () => {
  const ranking = rank(tern, [{ finding: "codes", answer: ["P0302", "P0305"] }]);
  const lines = likelyLines(ranking, "Nothing known");

  it("is in the order of probability, in words and in numbers", () => {
    const chances = lines.map(({ probability }) => probability);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    // A line is a part, as on the screen, with the part's own chance.
    expect(lines[0]).toMatchObject({
      name: "Coil of 2 and 5",
      fault: ranking.ranking[0]?.fault,
      likeliest: expect.stringContaining(ranking.ranking[0]?.name ?? "no name"),
      probability: ranking.components[0]?.probability,
      words: expect.stringMatching(/in \d+|certain/),
      number: expect.stringMatching(/^\d+ %$/),
    });
  });

  it("is at most five faults, and always what no catalogue holds", () => {
    expect(lines.length).toBeLessThanOrEqual(6);
    expect(lines.filter(({ name }) => name === "Nothing known")).toHaveLength(1);
    const faults = lines.filter(({ name }) => name !== "Nothing known");
    expect(faults.every(({ probability }) => probability >= 0.02)).toBe(true);
  });

  it("has one line for one part, wherever it may have failed", () => {
    const coolant = rank(tern, [
      { finding: "smell", answer: ["sweet"] },
      { finding: "coolant", answer: "loss" },
    ]);
    const places = coolant.ranking.filter(
      ({ fault, probability }) => fault === "gasket.coolant-leak" && probability >= 0.02,
    );
    expect(places.length).toBeGreaterThan(1);
    const found = likelyLines(coolant, "Nothing known");
    expect(found.filter(({ fault }) => fault === "gasket.coolant-leak")).toHaveLength(1);
    expect(new Set(found.map(({ name }) => name)).size).toBe(found.length);
  });

  it("says of like parts that each has the chance", () => {
    const found = likelyLines(rank(tern, []), "Nothing known");
    const each = found.filter(({ isEach }) => isEach);
    expect(each.length).toBeGreaterThan(0);
    for (const { name } of each) expect(name).toMatch(/ or /);
  });

  it("has the cautions of the answers and of the next check, none twice", () => {
    const blinking = rank(tern, [{ finding: "lamp", answer: "blinking" }]);
    const ids = cautionsOf(blinking, () => ["high-voltage", "blinking-lamp"]).map(({ id }) => id);
    expect(ids).toContain("high-voltage");
    expect(ids).toContain("blinking-lamp");
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe("the engine of a page", () => {
  const line = (engine: string, title?: string): string => {
    const profile = profileById(engine);
    if (!profile) throw new Error(`no profile ${engine}`);
    const doc = { halfOrderCase: 1, engine, findings: [] } as const;
    return engineLine(title === undefined ? doc : { ...doc, title }, profile);
  };

  it("is told once where its name says what it is like, and with its facts where it does not", () => {
    for (const id of allProfiles().flatMap(({ id, invented }) => (invented ? [] : (id ?? [])))) {
      expect(line(id, "A case"), id).toBe(profileById(id)?.name);
      expect(line(id), id).toBe("");
    }
    expect(line("demo.tern")).toBe("V6, 1-2-3-4-5-6, coil rail");
    expect(line("demo.tern", "A case")).toBe("Tern 3.0, V6, 1-2-3-4-5-6, coil rail");
  });
});

describe("a repair in words", () => {
  const engine = resolveEngine(tern);
  const find = (isIt: (row: RepairRow) => boolean): RepairRow => {
    const row = (REPAIRS as readonly RepairRow[]).find(isIt);
    if (!row) throw new Error("no such repair");
    return row;
  };

  it("names all cylinders that share the part", () => {
    const row = find(({ at, name }) => at === "coil" && name.includes("{at}"));
    const group = engine.groups[engine.groupOf[1] ?? 0]?.map((c) => engine.names[c]);
    const words = sayRepair({ repair: row.id, cylinder: 2 }, row, engine);
    expect(words).toContain(group?.join(" and "));
    expect(words).not.toContain("{at}");
  });

  it("names its cylinder where the order does not", () => {
    const row = find(({ name }) => !name.includes("{at}"));
    expect(sayRepair({ repair: row.id, cylinder: 3 }, row, engine)).toContain("3");
    expect(sayRepair({ repair: row.id }, row, engine)).toBe(row.name);
  });

  it("is its id where this page does not know it", () => {
    expect(sayRepair({ repair: "repair.later" }, undefined, engine)).toBe("repair.later");
  });
});

describe("what was mended", () => {
  const engine = resolveEngine(tern);
  const [bad, good] = ["2026-05-01T10:00:00.000Z", "2026-05-02T10:00:00.000Z"];
  const repairs = [
    { repair: "repair.plug-set", result: "same", when: bad },
    { repair: "repair.rail", result: "cured", when: good },
  ] as const;
  const drives = [bad, good, good].map((of) => ({ of, misfire: "none", when: of }) as const);
  const doc = { halfOrderCase: 1, engine: tern, findings: [], repairs } as const;

  it("ends with the drives that proved it, and with those of no other repair", () => {
    const lines = mendedLines({ ...doc, work: { drives } }, engine);
    expect(lines.map(({ answer }) => answer)).toEqual([
      "it changed nothing",
      "then it ran well",
      "clean; clean",
    ]);
  });

  it("tells of no drive where none was driven, or none after a cure", () => {
    expect(mendedLines(doc, engine)).toHaveLength(2);
    const failed = { ...doc, repairs: repairs.slice(0, 1), work: { drives } };
    expect(mendedLines(failed, engine)).toHaveLength(1);
  });
});

describe("the plugs that came out", () => {
  it("are told with number and torque of those that went in", () => {
    const plugs = [{ cylinder: 1, gapMm: 1.1, torqueNm: 22, part: "ABC-1" }];
    const course = { wentIn: "new" } as const;
    const record: PlugRecord = { when: "2026-05-01", odometerKm: 120_000, plugs, course };
    const { answer } = plugLine(record, wearReport(tern, record));
    expect(answer.replace(/\s/g, " ")).toContain("1: 1.1 mm, put in its place: ABC-1, 22 N·m");
    expect(answer).toMatch(/What went in\? New plugs$/);
  });

  it("stand on one line, with the one that stands apart", () => {
    const record = {
      when: "2026-05-01",
      odometerKm: 120_500,
      plugs: [1, 2, 3, 4, 5, 6].map((cylinder) => ({
        cylinder,
        gapMm: cylinder === 2 ? 1.5 : 1.1,
      })),
    };
    const { asked, answer } = plugLine(record, wearReport(tern, record));
    expect(asked).toContain("2026");
    expect(answer).toMatch(/2: 1.5\smm \(stands apart\)/);
    expect(answer.match(/stands apart/g)).toHaveLength(1);
  });

  it("are told with their looks, also where no gap was measured", () => {
    const record: PlugRecord = {
      when: "2026-05-01",
      odometerKm: 120_000,
      plugs: [
        { cylinder: 1, look: "wet-oil" },
        { cylinder: 2, gapMm: 1.1, look: "tan" },
        { cylinder: 3 },
      ],
    };
    const { answer } = plugLine(record, wearReport(tern, record));
    expect(answer).toMatch(/^1: Wet black oil; 2: 1.1\smm, Tan or grey, dry/);
    expect(answer).not.toContain("3:");
  });
});
