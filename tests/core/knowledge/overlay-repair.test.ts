// Do a workshop's own repairs count, and is what does not fit refused at its place?
import { describe, expect, it } from "vitest";
import {
  checkOverlay,
  KNOWLEDGE,
  type Knowledge,
  type Overlay,
  overlayKnowledge,
  type RepairRow,
} from "../../../packages/core/src/index.ts";
import { parseOverlay } from "../../../packages/core/src/wire/index.ts";

const RAIL = "repair.rail";

function rowOf(knowledge: Knowledge, id: string): RepairRow {
  return knowledge.repairs.find((row) => row.id === id) as RepairRow;
}

const solder: RepairRow = {
  id: "repair.solder-pin",
  name: "Solder the pin of the connector of {at}",
  at: "connector",
  mends: [{ fault: "connector.loose", works: 0.7 }],
  minutes: 30,
  skill: 3,
  tool: "hand tools",
  parts: "none",
  access: ["access.rail"],
  cautions: ["battery"],
  putBack: ["connector.click"],
  grounds: { basis: "common practice", confidence: "low" },
};

describe("an overlay with repairs", () => {
  it("changes minutes, price class and chances of cure, and keeps the rest", () => {
    const before = rowOf(KNOWLEDGE, RAIL);
    const text = JSON.stringify(before);
    const grounds = { basis: "common practice", confidence: "high" } as const;
    const after = rowOf(
      overlayKnowledge(KNOWLEDGE, {
        grounds,
        repairs: { [RAIL]: { minutes: 33, parts: "medium", works: { "coil.weak": 0.5 } } },
      }),
      RAIL,
    );
    expect(after).toMatchObject({ minutes: 33, parts: "medium", skill: before.skill });
    const worksOf = (fault: string) => after.mends.find((mend) => mend.fault === fault)?.works;
    expect(worksOf("coil.weak")).toBe(0.5);
    expect(worksOf("coil.half-dead")).toBe(
      before.mends.find(({ fault }) => fault === "coil.half-dead")?.works,
    );
    expect(after.groundsOf).toEqual({ minutes: grounds, "mends.coil.weak.works": grounds });
    expect(JSON.stringify(rowOf(KNOWLEDGE, RAIL))).toBe(text);
  });

  it("brings new repairs, also of new faults", () => {
    const [first] = KNOWLEDGE.faults;
    if (!first) throw new Error("there are faults");
    const more = overlayKnowledge(KNOWLEDGE, {
      newFaults: [{ ...first, id: "plug.salt" }],
      newRepairs: [{ ...solder, mends: [{ fault: "plug.salt", works: 0.6 }] }],
    });
    expect(more.repairs).toHaveLength(KNOWLEDGE.repairs.length + 1);
    expect(rowOf(more, solder.id).mends).toEqual([{ fault: "plug.salt", works: 0.6 }]);
  });
});

const REFUSED: readonly (readonly [string, Overlay, string, RegExp])[] = [
  [
    "an unknown repair",
    { repairs: { "repair.rial": {} } },
    "/repairs/repair.rial",
    /"repair.rail"/,
  ],
  [
    "minutes below none",
    { repairs: { [RAIL]: { minutes: -1 } } },
    `/repairs/${RAIL}/minutes`,
    /from 0/,
  ],
  [
    "a cure that never fails",
    { repairs: { [RAIL]: { works: { "coil.weak": 1 } } } },
    `/repairs/${RAIL}/works/coil.weak`,
    /to 0\.999/,
  ],
  [
    "a cure of what it does not mend",
    { repairs: { [RAIL]: { works: { "coil.weka": 0.5 } } } },
    `/repairs/${RAIL}/works/coil.weka`,
    /"coil.weak"/,
  ],
  [
    "grounds without their source",
    { repairs: { [RAIL]: { grounds: { basis: "published", confidence: "low" } } } },
    `/repairs/${RAIL}/grounds/source`,
    /source/,
  ],
  [
    "a new one of a known id",
    { newRepairs: [{ ...solder, id: RAIL }] },
    "/newRepairs/0/id",
    /other/,
  ],
  [
    "a new one without a family",
    { newRepairs: [{ ...solder, id: "s" }] },
    "/newRepairs/0/id",
    /dot/,
  ],
  [
    "a new one that mends nothing",
    { newRepairs: [{ ...solder, mends: [] }] },
    "/newRepairs/0/mends",
    /"works"/,
  ],
  [
    "a new one that mends what is not known",
    { newRepairs: [{ ...solder, mends: [{ fault: "connector.lose", works: 0.5 }] }] },
    "/newRepairs/0/mends/0/fault",
    /"connector.loose"/,
  ],
  [
    "a skill that nobody has",
    { newRepairs: [{ ...solder, skill: 5 }] },
    "/newRepairs/0/skill",
    /to 4/,
  ],
  [
    "a new one without grounds",
    { newRepairs: [{ ...solder, grounds: undefined as never }] },
    "/newRepairs/0/grounds",
    /common practice/,
  ],
  [
    "an unknown access",
    { newRepairs: [{ ...solder, access: ["access.rial"] }] },
    "/newRepairs/0/access/0",
    /"access.rail"/,
  ],
  [
    "an unknown step of the put-back list",
    { newRepairs: [{ ...solder, putBack: ["connector.clikc"] }] },
    "/newRepairs/0/putBack/0",
    /"connector.click"/,
  ],
  [
    "an unknown caution",
    { newRepairs: [{ ...solder, cautions: ["batery"] }] },
    "/newRepairs/0/cautions/0",
    /"battery"/,
  ],
];

describe("an overlay with repairs is refused", () => {
  it.each(REFUSED)("with %s", (_, overlay, path, hint) => {
    const problems = checkOverlay(KNOWLEDGE, overlay);
    expect(problems.map((problem) => problem.path)).toEqual([path]);
    expect(problems[0]?.hint).toMatch(hint);
  });
});

describe("a saved overlay", () => {
  it("takes every known repair as a change and as a new one", () => {
    for (const row of KNOWLEDGE.repairs) {
      const { id, minutes, parts, mends } = row;
      const works = Object.fromEntries(mends.map((mend) => [mend.fault, mend.works]));
      const saved = {
        repairs: { [id]: { minutes, parts, works } },
        newRepairs: [{ ...row, id: "mine.copy" }],
      };
      expect(parseOverlay(JSON.parse(JSON.stringify(saved)))).toHaveProperty("overlay");
    }
  });

  it("is refused where a price class is none", () => {
    const reading = parseOverlay({ repairs: { [RAIL]: { parts: "cheap" } } });
    expect("problems" in reading && reading.problems.map(({ path }) => path)).toEqual([
      `/repairs/${RAIL}/parts`,
    ]);
  });
});
