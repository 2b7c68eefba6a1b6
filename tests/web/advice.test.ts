// Does the page offer, count and ask what the planner and the drives say, and keep it on the device?
import {
  allProfiles,
  DRIVE_LEVELS,
  driveAdvice,
  type EngineProfile,
  FINDINGS,
  type Finding,
  type FindingRow,
  hasDiagnosticPort,
  type Next,
  type NextCheck,
  type NextRepair,
  PUT_BACK,
  profileById,
  proofResult,
  REPAIR_RESULTS,
  type RepairDone,
  resolveEngine,
} from "@half-order/core";
import type { SpentTime } from "@half-order/core/wire";
import { beforeEach, describe, expect, it } from "vitest";
import { REPAIR_RESULT_ROWS } from "../../packages/core/src/knowledge/repair-result.ts";
import { beginCase } from "../../packages/web/src/state/case.ts";
import { seemsMended } from "../../packages/web/src/state/mended.ts";
import {
  DRIVES,
  failureOf,
  nameOfDrive,
  provenIndex,
  resultAfter,
} from "../../packages/web/src/state/proof.ts";
import {
  atAllPlaces,
  checkAddress,
  givenTo,
  keyOfStep,
  looksOf,
  offered,
  offInShort,
  otherChecks,
  putOffKey,
  spentMinutes,
  toldOutcomes,
  wantedOf,
} from "../../packages/web/src/state/step.ts";
import {
  addDrive,
  closeList,
  closeUp,
  drivesOf,
  dropDrive,
  ONLY_AFTER,
  setOpen,
  spend,
  tick,
  tickedOf,
  work,
} from "../../packages/web/src/state/work.ts";
import { DRIVE_IN_FULL } from "../../packages/web/src/text/en-drive-in-full.ts";
import { MEND, sayMinutes } from "../../packages/web/src/text/en-mend.ts";
import { answer } from "../../packages/web/src/thread.ts";

const tern = profileById("demo.tern") as EngineProfile;
const CODES: readonly Finding[] = [
  { finding: "lamp", answer: "steady" },
  { finding: "codes", answer: ["P0302", "P0305"] },
];

function check(id: string, cylinders: readonly number[], worthMinutes = 10): NextCheck {
  const work = { opens: [], minutes: 5, cautions: [], putBack: [] };
  const shared = { ...work, tellsBits: 0.1, outcomes: [] };
  return { kind: "check", check: id, name: id, cylinders, worthMinutes, ...shared };
}

function repair(id: string, cylinders: readonly number[] = []): NextRepair {
  const shared = { opens: [], minutes: 5, partsPrice: 0, cures: 0.5, cautions: [] };
  return { kind: "repair", repair: id, name: id, cylinders, ...shared };
}

function planOf(step: Next["step"], parts: Partial<Next> = {}): Next {
  const nothing = { checks: [], repairs: [], withheld: [] };
  const costs = { expectedMinutes: 60, expectedMinutesWithoutChecks: 90, hourRate: 25 };
  const chances = { callChance: 0.2, mendable: 0.8 };
  return { step, ...costs, ...chances, ...nothing, ...parts };
}

describe("the offered step", () => {
  const [first, second, idle] = [check("a", [2]), check("b", []), check("c", [], -1)];
  const mend = repair("r");
  const plan = planOf(first, { checks: [first, second, idle], repairs: [mend] });

  it("is the planner's until it is put off, then the next best, then a repair, then a call", () => {
    const putOff = new Set<string>();
    const seen: string[] = [];
    for (let i = 0; i < 4; i++) {
      const step = offered(plan, putOff);
      seen.push(keyOfStep(step));
      putOff.add(putOffKey(step));
    }
    expect(seen).toEqual(["a 2", "b", "r", "call"]);
  });

  it("is put off at every cylinder when it is a check, at its own when it is a repair", () => {
    const [here, there] = [repair("r", [2]), repair("r", [3])];
    const both = planOf(first, { checks: [first, check("a", [3])], repairs: [here, there] });
    expect(offered(both, new Set([putOffKey(first)]))).toBe(here);
    expect(offered(both, new Set([putOffKey(first), putOffKey(here)]))).toBe(there);
  });

  it("leaves to the others each check once, itself never", () => {
    const many = planOf(first, { checks: [first, check("a", [3]), second, check("b", [4])] });
    expect(otherChecks(many, first)).toEqual([second]);
    expect(otherChecks(many, mend)).toEqual([first, second]);
  });

  it("is told once where it is the same at several places, with all of them", () => {
    const told = atAllPlaces([check("a", [2, 5]), check("b", []), check("a", [1, 5])]);
    expect(told.map((each) => [each.check, each.cylinders])).toEqual([
      ["a", [2, 5, 1]],
      ["b", []],
    ]);
  });
});

describe("a check at its cylinders", () => {
  const rowOf = (id: string) => FINDINGS.filter((row) => row.id === id);

  const engine = resolveEngine(tern);

  it("asks of each cylinder, of a coil or connector once, of the engine without a cylinder", () => {
    const rows = ["swap.rail", "coil.look", "connector.lock", "plug.look"].flatMap(rowOf);
    const scopes = rows.map(({ scope }) => scope);
    expect(scopes).toEqual(["engine", "coil", "connector", "cylinder"]);
    const asked = looksOf(rows, [5, 2], engine).map(({ row, cylinder }) => [row.id, cylinder]);
    expect(asked).toEqual([
      ["swap.rail", undefined],
      ["coil.look", 5],
      ["connector.lock", 5],
      ["plug.look", 5],
      ["plug.look", 2],
    ]);
    // 1 and 2 are on different coils.
    expect(looksOf(rowOf("coil.look"), [1, 2], engine)).toHaveLength(2);
  });

  it("knows an answer that was given at another cylinder of the same coil", () => {
    const [coil, plug] = [...rowOf("coil.look"), ...rowOf("plug.look")] as [FindingRow, FindingRow];
    const findings: readonly Finding[] = [
      { finding: "coil.look", cylinder: 2, answer: "cracked" },
      { finding: "plug.look", cylinder: 2, answer: "wet-petrol" },
    ];
    expect(givenTo({ row: coil, cylinder: 5 }, findings, engine)?.answer).toBe("cracked");
    expect(givenTo({ row: coil, cylinder: 1 }, findings, engine)).toBeUndefined();
    expect(givenTo({ row: plug, cylinder: 5 }, findings, engine)).toBeUndefined();
  });

  it("has an address that says where, and so has a repair", () => {
    expect(checkAddress("check.x", [2, 5])).toEqual(["step", "check.x", "2+5"]);
    expect(checkAddress("check.x", [])).toEqual(["step", "check.x"]);
    expect(wantedOf(repair("r", [2, 5]))).toEqual(["r", "2"]);
    expect(wantedOf(repair("r"))).toEqual(["r"]);
  });

  it("tells its likely results first and leaves out what hardly happens", () => {
    const outcomes = [0.004, 0.2, 0.796].map((probability) => ({ answers: [], probability }));
    expect(toldOutcomes(outcomes).map(({ probability }) => probability)).toEqual([0.796, 0.2]);
  });

  it("names like things that come off once, with all their minutes", () => {
    const opens = [1, 2, 3].map((n) => ({ id: `plug@${n}`, say: "plug out", minutes: 4 }));
    expect(offInShort([...opens, { id: "rail", say: "rail off", minutes: 8 }])).toEqual([
      { say: "plug out", ids: ["plug@1", "plug@2", "plug@3"], minutes: 12 },
      { say: "rail off", ids: ["rail"], minutes: 8 },
    ]);
  });
});

describe("the minutes spent", () => {
  const spent: readonly SpentTime[] = [
    { step: "a 2", minutes: 5, shownBy: { finding: "plug.look", cylinder: 2 } },
    { step: "b", minutes: 7, shownBy: { finding: "swap.rail" } },
    { step: "r", minutes: 40, shownBy: { when: "2026-05-01T09:30:00Z" } },
  ];
  const findings: readonly Finding[] = [
    { finding: "plug.look", cylinder: 2, answer: "fine" },
    { finding: "swap.rail", answer: "stayed" },
  ];
  const repairs: readonly RepairDone[] = [{ repair: "repair.rail", when: "2026-05-01T09:30:00Z" }];

  it("are those of all steps that stand in the case", () => {
    expect(spentMinutes(spent, findings, repairs)).toBe(52);
  });

  it("forget what was taken back", () => {
    expect(spentMinutes(spent, findings.slice(1), repairs)).toBe(47);
    expect(spentMinutes(spent, findings, [])).toBe(12);
    expect(spentMinutes(spent, [{ ...findings[0], cylinder: 3 } as Finding], [])).toBe(0);
  });
});

describe("the work beside a case", () => {
  beforeEach(() => beginCase("demo.tern"));

  it("begins empty for each case", () => {
    setOpen(["access.rail@engine"]);
    expect(work.value.open).toEqual(["access.rail@engine"]);
    beginCase("demo.tern");
    expect(work.value).toEqual({ open: [], spent: [], ticks: [], drives: [] });
  });

  it("counts a thing that is off once, until all is back on", () => {
    setOpen(["a", "b"]);
    setOpen(["b", "c"]);
    expect(work.value.open).toEqual(["a", "b", "c"]);
    closeUp();
    expect(work.value.open).toEqual([]);
  });

  it("counts a step once, however often it is done", () => {
    spend({ step: "a", minutes: 5, shownBy: { finding: "lamp" } });
    spend({ step: "b", minutes: 3, shownBy: { finding: "lamp" } });
    spend({ step: "a", minutes: 8, shownBy: { finding: "lamp" } });
    expect(work.value.spent.map(({ step, minutes }) => [step, minutes])).toEqual([
      ["b", 3],
      ["a", 8],
    ]);
  });

  it("unticks the lock together with the click", () => {
    for (const line of ["boot.home", "connector.click", "connector.lock"]) tick("r", line, true);
    tick("other", "connector.lock", true);
    tick("r", "connector.click", false);
    expect(tickedOf("r")).toEqual(["boot.home"]);
    expect(tickedOf("other")).toEqual(["connector.lock"]);
  });

  it("keeps the drives of each repair apart", () => {
    addDrive("first", DRIVES.clean);
    addDrive("second", DRIVES.same);
    addDrive("first", DRIVES.less);
    expect(drivesOf("first").map(nameOfDrive)).toEqual(["clean", "less"]);
    dropDrive("first");
    closeList("r");
    expect(drivesOf("first").map(nameOfDrive)).toEqual(["clean"]);
    expect(drivesOf("second").map(nameOfDrive)).toEqual(["same"]);
  });

  it("lets a line wait only for one that the hand reaches before it", () => {
    const orderOf = (id: string) => PUT_BACK.find((row) => row.id === id)?.order ?? Number.NaN;
    for (const [line, before] of Object.entries(ONLY_AFTER)) {
      expect(orderOf(line)).toBeGreaterThan(orderOf(before));
    }
    expect(Object.keys(ONLY_AFTER)).toContain("connector.lock");
  });
});

describe("the proof", () => {
  const plan = { trials: 2, showChance: 0.9, belief: 0.7 } as Parameters<typeof proofResult>[0];
  const { clean, less, same, code } = DRIVES;

  it.each([
    ["no drive", [], "cured", undefined],
    ["a clean drive", [clean], "cured", undefined],
    ["enough clean drives", [clean, clean], "cured", undefined],
    ["a bad first drive", [same], "same", "same"],
    ["a better first drive", [less], "better", "better"],
    ["a code after a clean drive", [clean, code], "came-back", "came-back"],
  ] as const)("after %s notes the repair so", (_, drives, noted, failure) => {
    const result = proofResult(plan, drives);
    expect(resultAfter(result)).toBe(noted);
    expect(failureOf(result)).toBe(failure);
  });

  it("is of the repair asked for, else of the last that seemed to cure", () => {
    const done = (result: RepairDone["result"] & string): RepairDone => ({ repair: "r", result });
    const repairs = [done("cured"), done("same"), done("cured"), done("worse")];
    expect(provenIndex(repairs, "1")).toBe(1);
    expect(provenIndex(repairs, undefined)).toBe(2);
    expect(provenIndex(repairs, "9")).toBe(2);
    expect(provenIndex([done("same")], undefined)).toBe(-1);
    expect(seemsMended(repairs)).toBe(false);
    expect(seemsMended(repairs.slice(0, 3))).toBe(true);
  });

  it("calls each drive by the button that was tapped", () => {
    for (const [name, drive] of Object.entries(DRIVES)) expect(nameOfDrive(drive)).toBe(name);
  });
});

describe("the words", () => {
  it("for a result are those that the knowledge has for it", () => {
    const words = REPAIR_RESULTS.map((result) => MEND.results[result][0]);
    expect(words).toEqual(
      REPAIR_RESULTS.map((result) => REPAIR_RESULT_ROWS.find((row) => row.result === result)?.say),
    );
  });

  it("know every level of driving", () => {
    expect(Object.keys(DRIVE_IN_FULL.levels)).toEqual([...DRIVE_LEVELS]);
  });

  it.each([
    [0.2, "1 minute"],
    [8.4, "8 minutes"],
    [23, "about 25 minutes"],
    [58, "about 1 h"],
    [134, "about 2 h 15 min"],
    [1075, "about 18 h"],
  ])("for %d minutes are no finer than anybody knows", (minutes, words) => {
    expect(sayMinutes(minutes)).toBe(words);
  });
});

describe("the thread", () => {
  const about = { profile: tern, findings: CODES, repairs: [] };

  it("says of driving what the library says", async () => {
    const thought = await answer({ ...about, advice: { kind: "drive", isInFull: false } });
    expect(thought.advice?.drive).toEqual(driveAdvice(tern, CODES));
  });

  it("finds a step, and ends near the time that it was given", async () => {
    const atHand = { where: "roadside", tools: [], skill: 0 } as const;
    const question = { kind: "next", atHand, open: [], putOff: [], patienceMs: 50 } as const;
    const { advice } = await answer({ ...about, advice: question });
    const told = advice?.next?.checks ?? [];
    expect(told.length).toBeGreaterThan(0);
    expect(told.every(({ minutes }) => minutes <= 20)).toBe(true);
    expect(advice?.next?.withheld.map(({ why }) => why)).toContain("tool");
  });

  it("tells all of a repair, in the units of the person", async () => {
    const wanted = { repair: "repair.plug-set" };
    const units = { gap: "thou", torque: "lb·ft" } as const;
    const question = { kind: "mend", wanted, atHand: {}, open: [], units } as const;
    const { advice } = await answer({ ...about, advice: question });
    const said = advice?.mending?.putBack.map(({ say }) => say).join(" ");
    expect(said).toMatch(/lb·ft/);
    expect(advice?.mending?.proof?.trials).toBeGreaterThan(1);
  });

  it("names the repairs that were made at their places", async () => {
    const repairs: readonly RepairDone[] = [
      { repair: "repair.rail", result: "same" },
      { repair: "repair.boot-one", cylinder: 5 },
    ];
    const { advice } = await answer({ ...about, repairs, advice: { kind: "names" } });
    expect(advice?.names).toEqual(["Fit a new coil rail", "Renew boot and spring of 5"]);
  });

  it("answers with the problems of a repair that this engine cannot have", async () => {
    const wanted = { repair: "repair.cap" };
    const units = { gap: "mm", torque: "N·m" } as const;
    const question = { kind: "mend", wanted, atHand: {}, open: [], units } as const;
    const { advice } = await answer({ ...about, advice: question });
    expect(advice?.mending).toBeUndefined();
    expect(advice?.problems?.[0]?.code).toMatch(/^repair-/);
  });
});

describe("every engine that comes along", () => {
  it("gets an answer about driving as soon as the lamp is known, or is asked for a look", () => {
    for (const profile of allProfiles()) {
      const advice = driveAdvice(profile, [{ finding: "lamp", answer: "blinking" }]);
      expect(advice.level && DRIVE_IN_FULL.levels[advice.level.level]).toBe("be towed");
      expect(driveAdvice(profile, []).ask).toBe(hasDiagnosticPort(profile) ? "lamp" : "alarm");
    }
  });
});
