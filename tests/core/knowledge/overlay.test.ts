// Do a workshop's own numbers count as they should, and is what does not fit refused?
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  checkOverlay,
  type FaultRow,
  InputError,
  KNOWLEDGE,
  type Knowledge,
  type Overlay,
  overlayKnowledge,
  profileById,
  rank,
  why,
} from "../../../packages/core/src/index.ts";
import { parseOverlay } from "../../../packages/core/src/wire/index.ts";

const profile = profileById("demo.tern");
if (!profile) throw new Error("demo.tern is gone");
const { ignition } = profile;
const findings = [{ finding: "codes", answer: ["P0302", "P0305"] }];
const COIL = "coil.half-dead";

/** Chance that a fault is present at some place, roughly: the sum over its places. */
function chanceOf(fault: string, knowledge: Knowledge, seen = findings): number {
  const { ranking } = rank(profile as typeof profile & object, seen, { knowledge });
  return ranking
    .filter((row) => row.fault === fault)
    .reduce((sum, { probability }) => sum + probability, 0);
}

function rowOf(knowledge: Knowledge, id: string): FaultRow {
  return knowledge.faults.find((row) => row.id === id) as FaultRow;
}

const salt: FaultRow = {
  ...rowOf(KNOWLEDGE, COIL),
  id: "coil.salt",
  name: "Salt in the coil of {at}",
  grounds: { basis: "memory", confidence: "medium" },
};

describe("overlayKnowledge", () => {
  it("leaves the base as it was", () => {
    const text = (): string => JSON.stringify([KNOWLEDGE, [...KNOWLEDGE.findings]]);
    const before = text();
    const overlay: Overlay = {
      twoFaultsShare: 0.2,
      faults: {
        [COIL]: { shares: { rail: 1 }, signs: [{ finding: "mist", gives: { yes: 0.5 } }] },
      },
      newFaults: [salt],
      checks: { "check.codes": { minutes: 1 } },
    };
    const changed = overlayKnowledge(KNOWLEDGE, overlay);
    expect(text()).toBe(before);
    expect(changed.faults).toHaveLength(KNOWLEDGE.faults.length + 1);
    expect(changed.twoFaultsShare).toBe(0.2);
    expect(changed.checks.find(({ id }) => id === "check.codes")?.minutes).toBe(1);
  });

  it("with nothing in it ranks as the tables do", () => {
    const same = overlayKnowledge(KNOWLEDGE, {});
    expect(rank(profile, findings, { knowledge: same })).toEqual(rank(profile, findings));
  });

  it("keeps what a change does not name", () => {
    const row = rowOf(KNOWLEDGE, COIL);
    const changed = rowOf(
      overlayKnowledge(KNOWLEDGE, {
        faults: {
          [COIL]: { shares: { rail: 7 }, risks: [{ finding: "work", times: { leads: 3 } }] },
        },
      }),
      COIL,
    );
    expect(changed.shares).toEqual({ ...row.shares, rail: 7 });
    const work = changed.risks.find(({ finding }) => finding === "work");
    expect(work?.times).toEqual({ "coil-new": 0.6, leads: 3 });
    expect(changed.signs).toEqual(row.signs);
  });

  it("moves a ranking with a share, up and down", () => {
    const share = (of: number): Knowledge =>
      overlayKnowledge(KNOWLEDGE, { faults: { [COIL]: { shares: { [ignition]: of } } } });
    const usual = chanceOf(COIL, KNOWLEDGE);
    expect(chanceOf(COIL, share(400))).toBeGreaterThan(usual);
    expect(chanceOf(COIL, share(2))).toBeLessThan(usual);
    expect(chanceOf(COIL, share(0))).toBe(0);
  });

  it("multiplies odds by a risk where the answer is given, and only there", () => {
    const times = { finding: "plug.age", times: { "over-100": 8 } };
    const risky = overlayKnowledge(KNOWLEDGE, { faults: { [COIL]: { risks: [times] } } });
    const old = [...findings, { finding: "plug.age", answer: "over-100" }] as typeof findings;
    expect(chanceOf(COIL, risky, old)).toBeGreaterThan(chanceOf(COIL, KNOWLEDGE, old));
    expect(chanceOf(COIL, risky)).toBeCloseTo(chanceOf(COIL, KNOWLEDGE), 12);
  });

  it("ranks a new fault beside the known ones", () => {
    // Without wear: known faults wear the known coil, and nothing wears the new one.
    const faults = KNOWLEDGE.faults.map(({ wears, ...row }): FaultRow => row);
    const { wears, ...row } = salt;
    const more = overlayKnowledge({ ...KNOWLEDGE, faults }, { newFaults: [row] });
    const first = rank(profile, findings, { knowledge: more }).ranking.find(
      ({ fault }) => fault === "coil.salt",
    );
    expect(first).toMatchObject({ name: "Salt in the coil of 2 and 5", cylinders: [2, 5] });
    // The same row twice: each is as likely as the other.
    expect(chanceOf("coil.salt", more)).toBeCloseTo(chanceOf(COIL, more), 9);
  });

  it("weighs two faults at once by their share", () => {
    const pairs = (twoFaultsShare: number): number => {
      const knowledge = overlayKnowledge(KNOWLEDGE, { twoFaultsShare });
      return rank(profile, [], { knowledge }).ranking.reduce(
        (sum, row) => sum + row.probability,
        0,
      );
    };
    expect(pairs(0.2)).toBeGreaterThan(pairs(0.08));
    expect(pairs(0.02)).toBeLessThan(pairs(0.08));
  });

  it("can be laid over another; the later holds", () => {
    const once = overlayKnowledge(KNOWLEDGE, {
      newFaults: [salt],
      faults: { [COIL]: { shares: { rail: 50, pack: 60 } } },
    });
    const twice = overlayKnowledge(once, {
      faults: { [COIL]: { shares: { rail: 70 } }, "coil.salt": { shows: 0.1 } },
    });
    expect(rowOf(twice, COIL).shares).toMatchObject({ rail: 70, pack: 60 });
    expect(rowOf(twice, "coil.salt").shows).toBe(0.1);
  });

  it("says in the ledger what a changed number rests on, usual for one that does not say", () => {
    const gives = { [Object.keys(rowOf(KNOWLEDGE, COIL).signs[0]?.gives ?? {})[0] ?? ""]: 0.3 };
    const finding = rowOf(KNOWLEDGE, COIL).signs[0]?.finding ?? "";
    const knowledge = overlayKnowledge(KNOWLEDGE, {
      faults: { [COIL]: { signs: [{ finding, gives }] } },
    });
    const of = { fault: COIL, place: "coil 2+5" };
    const seen = [{ finding, answer: Object.keys(gives)[0] ?? "" }];
    expect(why(profile, seen, of).lines[0]?.grounds.basis).toBe("memory");
    expect(why(profile, seen, of, { knowledge }).lines[0]?.grounds).toEqual({
      basis: "common practice",
      confidence: "low",
    });
  });

  it("throws every problem of one that does not fit", () => {
    const overlay: Overlay = { faults: { [COIL]: { shows: 2 } }, checks: { "check.no": {} } };
    const thrown = () => overlayKnowledge(KNOWLEDGE, overlay);
    expect(thrown).toThrow(InputError);
    expect(thrown).toThrow(/\/faults\/coil\.half-dead\/shows: .*\n\/checks\/check\.no: /);
  });
});

describe("checkOverlay refuses", () => {
  const change = (of: object): Overlay => ({ faults: { [COIL]: of } });
  const at = `/faults/${COIL}`;
  const nothing = {} as Partial<FaultRow>;
  const refused: readonly (readonly [string, Overlay, path: string, hint: RegExp])[] = [
    [
      "an unknown fault",
      { faults: { "coil.half-ded": {} } },
      "/faults/coil.half-ded",
      /"coil\.half-dead"/,
    ],
    [
      "a fault of a built-in name",
      JSON.parse('{"faults":{"__proto__":{}}}'),
      "/faults/__proto__",
      /Did/,
    ],
    ["an unknown check", { checks: { "check.code": {} } }, "/checks/check.code", /"check\.codes"/],
    [
      "minutes below 0",
      { checks: { "check.codes": { minutes: -1 } } },
      "/checks/check.codes/minutes",
      /from 0/,
    ],
    ["a share above all", change({ shares: { rail: 1001 } }), `${at}/shares/rail`, /to 1000/],
    [
      "a share that is no number",
      change({ shares: { rail: Number.NaN } }),
      `${at}/shares/rail`,
      /to 1000/,
    ],
    ["a chance above 1", change({ shows: 1.2 }), `${at}/shows`, /from 0 to 1/],
    ["a regime below 0", change({ regimes: { wet: -0.1 } }), `${at}/regimes/wet`, /from 0 to 1/],
    [
      "a reach that does not add up",
      change({ reach: { own: 0.6, group: 0.3 } }),
      `${at}/reach`,
      /up to 1/,
    ],
    ["a reach above 1", change({ reach: { own: 1.5 } }), `${at}/reach/own`, /from 0 to 1/],
    [
      "a risk of nothing known",
      change({ risks: [{ finding: "plug.agee", times: {} }] }),
      `${at}/risks/0/finding`,
      /"plug\.age"/,
    ],
    [
      "a risk of no answer",
      change({ risks: [{ finding: "plug.age", times: { "over-10": 2 } }] }),
      `${at}/risks/0/times/over-10`,
      /"under-10"|"over-100"/,
    ],
    [
      "an answer of a built-in name",
      change({ risks: [{ finding: "plug.age", times: { constructor: 2 } }] }),
      `${at}/risks/0/times/constructor`,
      /Did/,
    ],
    [
      "a multiplier of 0",
      change({ risks: [{ finding: "plug.age", times: { "over-100": 0 } }] }),
      `${at}/risks/0/times/over-100`,
      /0\.001 to 30/,
    ],
    [
      "a sign of nothing known",
      change({ signs: [{ finding: "spork", gives: {} }] }),
      `${at}/signs/0/finding`,
      /"spark"/,
    ],
    [
      "a sign of no answer",
      change({ signs: [{ finding: "spark", gives: { no: 1 } }] }),
      `${at}/signs/0/gives/no`,
      /"none"/,
    ],
    [
      "a sign above 1",
      change({ signs: [{ finding: "smell", gives: { petrol: 3 } }] }),
      `${at}/signs/0/gives/petrol`,
      /from 0 to 1/,
    ],
    [
      "a choice without room, with what the tables say",
      change({ signs: [{ finding: "spark", gives: { none: 0.95 } }] }),
      `${at}/signs/0/gives`,
      /at most 0\.98/,
    ],
    [
      "a risk that is a sign",
      change({ risks: [{ finding: "spark", times: { none: 2 } }] }),
      `${at}/risks/0/finding`,
      /keep one/,
    ],
    [
      "a sign that is a risk",
      change({ signs: [{ finding: "plug.age", gives: { "over-100": 0.5 } }] }),
      `${at}/signs/0/finding`,
      /keep one/,
    ],
    [
      "a finding that is there twice",
      change({
        signs: [
          { finding: "smell", gives: {} },
          { finding: "smell", gives: {} },
        ],
      }),
      `${at}/signs/1/finding`,
      /one row/,
    ],
    [
      "wear of nothing known",
      change({ wears: [{ fault: "plug.fould", times: 2 }] }),
      `${at}/wears/0/fault`,
      /"plug\.fouled"/,
    ],
    [
      "wear of itself",
      change({ wears: [{ fault: COIL, times: 2 }] }),
      `${at}/wears/0/fault`,
      /Did/,
    ],
    [
      "an unknown first check",
      change({ firstCheck: "check.spark" }),
      `${at}/firstCheck`,
      /"check\./,
    ],
    [
      "published without a source",
      change({ grounds: { basis: "published", confidence: "high" } }),
      `${at}/grounds/source`,
      /"source"/,
    ],
    [
      "a source of an estimate",
      { grounds: { basis: "memory", confidence: "low", source: "x" } },
      "/grounds/source",
      /Leave/,
    ],
    ["no two faults ever", { twoFaultsShare: 0 }, "/twoFaultsShare", /from 0\.001/],
    ["more pairs than there can be", { twoFaultsShare: 0.5 }, "/twoFaultsShare", /to 0\.3/],
    [
      "signs of what is unknown",
      { faults: { "something-else": { signs: [] } } },
      "/faults/something-else/signs",
      /new fault/,
    ],
    [
      "a new fault of a known id",
      { newFaults: [{ ...salt, id: COIL }] },
      "/newFaults/0/id",
      /another id/,
    ],
    [
      "a new fault that is there twice",
      { newFaults: [salt, salt] },
      "/newFaults/1/id",
      /one of them/,
    ],
    [
      "a new fault without a family",
      { newFaults: [{ ...salt, id: "salt" }] },
      "/newFaults/0/id",
      /a dot/,
    ],
    [
      "a new fault without grounds",
      { newFaults: [{ ...salt, grounds: nothing.grounds as never }] },
      "/newFaults/0/grounds",
      /common practice/,
    ],
    [
      "a new fault with a wrong sum",
      { newFaults: [{ ...salt, reach: { own: 0.5 } }] },
      "/newFaults/0/reach",
      /up to 1/,
    ],
  ];

  it.each(refused)("%s", (_, overlay, path, hint) => {
    const problems = checkOverlay(KNOWLEDGE, overlay);
    expect(problems.map((problem) => problem.path)).toEqual([path]);
    expect(problems[0]?.hint).toMatch(hint);
  });
});

describe("parseOverlay", () => {
  const problemsOf = (value: unknown) => {
    const reading = parseOverlay(value);
    return "problems" in reading ? reading.problems : [];
  };

  it("takes every known row as a change or as a new fault", () => {
    for (const row of KNOWLEDGE.faults) {
      // Where it sits and which engines can have it is what the fault is.
      const { id, at, part, groundsOf, switching, fuelling, ...change } = row;
      expect(problemsOf({ faults: { [id]: change } })).toEqual([]);
      expect(problemsOf({ newFaults: [{ ...row, id: "mine.copy" }] })).toEqual([]);
    }
  });

  it("takes a changed row, with its grounds number by number, as a whole row", () => {
    const changed = overlayKnowledge(KNOWLEDGE, { faults: { [COIL]: { shares: { rail: 5 } } } });
    const row = rowOf(changed, COIL);
    expect(Object.keys(row.groundsOf ?? {})).toEqual(["shares.rail"]);
    expect(problemsOf({ newFaults: [{ ...row, id: "mine.copy" }] })).toEqual([]);
  });

  it("takes the example in the documents", () => {
    const text = readFileSync(join(import.meta.dirname, "../../../docs/own-numbers.md"), "utf8");
    const [, json = ""] = text.match(/```json\n([\s\S]*?)```/) ?? [];
    const reading = parseOverlay(JSON.parse(json));
    if ("problems" in reading) throw new InputError(reading.problems);
    const knowledge = overlayKnowledge(KNOWLEDGE, reading.overlay);
    expect(chanceOf("connector.salt", knowledge)).toBeGreaterThan(0);
    expect(chanceOf(COIL, knowledge)).toBeGreaterThan(chanceOf(COIL, KNOWLEDGE));
  });

  it.each([
    ["a field that is none", { fault: {} }, "/fault", /"faults"/],
    [
      "an ignition kind that is none",
      { faults: { [COIL]: { shares: { rial: 3 } } } },
      `/faults/${COIL}/shares/rial`,
      /"rail"/,
    ],
    ["words for numbers", { twoFaultsShare: "8 %" }, "/twoFaultsShare", /a number/],
    [
      "a basis that is none",
      { grounds: { basis: "guess", confidence: "low" } },
      "/grounds/basis",
      /"memory"/,
    ],
    [
      "a new row without grounds",
      { newFaults: [{ ...salt, grounds: undefined }] },
      "/newFaults/0/grounds",
      /stands behind/,
    ],
    [
      "what does not fit the tables",
      { checks: { "check.code": {} } },
      "/checks/check.code",
      /"check\.codes"/,
    ],
  ] as const)("refuses %s", (_, value, path, hint) => {
    const problems = problemsOf(JSON.parse(JSON.stringify(value)));
    expect(problems.map((problem) => problem.path)).toEqual([path]);
    expect(problems[0]?.hint).toMatch(hint);
  });
});
