// Does what was mended by the way get its trial, does a swap that proves a part end the search, and is help
// called where nothing at hand pays?
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { NextRepair, NextStep } from "../../../packages/core/src/advice/advice.ts";
import { mend } from "../../../packages/core/src/advice/mend.ts";
import { type NextOptions, next } from "../../../packages/core/src/advice/next.ts";
import { stepOf } from "../../../packages/core/src/advice/say-plan.ts";
import type { EngineProfile } from "../../../packages/core/src/engine/profile.ts";
import { profileById } from "../../../packages/core/src/engine/profile-library.ts";
import { rank } from "../../../packages/core/src/explain/rank.ts";
import type { AtHand, Finding } from "../../../packages/core/src/knowledge/answer.ts";
import { USUAL_HOUR_RATE } from "../../../packages/core/src/knowledge/at-hand.ts";
import { KNOWLEDGE } from "../../../packages/core/src/knowledge/knowledge.ts";
import {
  MADE_BY_CHECK,
  PROVEN_BY_SWAP,
  TRIAL,
} from "../../../packages/core/src/knowledge/made-by-check.ts";
import { driveAdvice } from "../../../packages/core/src/service/drive.ts";

const rail = profileById("generic.i4.1342.rail") as EngineProfile;
const single = profileById("generic.i4.1342.coil-per-plug") as EngineProfile;
const PAIR: readonly Finding[] = [
  { finding: "lamp", answer: "steady" },
  { finding: "codes", answer: ["P0302", "P0303"] },
];
const HIGH: Finding = { finding: "boot.seat", cylinder: 2, answer: "high" };
const quick: NextOptions = { maxWork: 0 };

function repairIn(step: NextStep): NextRepair {
  if (step.kind !== "repair") throw new Error(`the step is a ${step.kind}`);
  return step;
}

const isTrial = (step: NextStep): boolean => step.kind === "repair" && step.isMade === true;

describe("something mended during a check", () => {
  it("is tried before any further check, with cautions of a running engine", () => {
    const step = repairIn(next(rail, [...PAIR, HIGH], quick).step);
    expect(step).toMatchObject({ repair: "repair.boots-home", isMade: true, opens: [] });
    expect(step.because).toBe(TRIAL.check.because);
    expect(step.cures).toBeGreaterThan(0.02);
    // Two of four cylinders miss: the engine runs for the trial alone.
    expect(driveAdvice(rail, [...PAIR, HIGH]).level?.level).toBe("do-not-drive");
    expect(step.name).toBe(TRIAL.check.resting);
    expect(step.cautions).toEqual(["traffic", "short-run", ...TRIAL.cautions]);
    const free = repairIn(next(rail, [HIGH], quick).step);
    expect(free.name).toBe(TRIAL.check.say);
    expect(free.cautions).toEqual(["traffic", ...TRIAL.cautions]);
  });

  it("and runs right since then is proven before anything else is looked for", () => {
    const pushed = (answer: string): Finding[] => [
      { finding: "connector.push", cylinder: 1, answer },
      { finding: "connector.lock", cylinder: 1, answer: "clicks" },
    ];
    const step = repairIn(next(rail, pushed("cured"), quick).step);
    expect(step).toMatchObject({ repair: "repair.connector-home", isMade: true });
    expect(step.because).toBe(TRIAL.cured.because);
    expect(isTrial(next(rail, pushed("no-change"), quick).step)).toBe(false);
    const repairs = [{ repair: "repair.connector-home", result: "came-back" as const }];
    expect(isTrial(next(rail, pushed("cured"), { ...quick, repairs }).step)).toBe(false);
  });

  it("is tried once: its result is a finding, and the repair is not offered again", () => {
    const repairs = [{ repair: "repair.boots-home", result: "same" as const }];
    const { step, repairs: offered } = next(rail, [...PAIR, HIGH], { ...quick, repairs });
    expect(isTrial(step)).toBe(false);
    expect(offered.map(({ repair }) => repair)).not.toContain("repair.boots-home");
    const chance = (done: typeof repairs): number =>
      rank(rail, [...PAIR, HIGH], { repairs: done }).ranking.find(
        ({ fault }) => fault === "boot.not-home",
      )?.probability ?? 0;
    expect(chance(repairs)).toBeLessThan(chance([]));
  });

  it("needs no trial where the check itself ran the engine", () => {
    const loose: Finding = { finding: "connector.lock", cylinder: 1, answer: "loose" };
    const pushed: Finding = { finding: "connector.push", cylinder: 4, answer: "no-change" };
    expect(repairIn(next(rail, [...PAIR, loose], quick).step)).toMatchObject({
      repair: "repair.connector-home",
      isMade: true,
    });
    const after = next(rail, [...PAIR, loose, pushed], quick);
    expect(isTrial(after.step)).toBe(false);
    expect(after.repairs.map(({ repair }) => repair)).not.toContain("repair.connector-home");
  });

  it("is not there when everything sat home, nor after a later answer that says so", () => {
    const home: Finding = { ...HIGH, answer: "home" };
    expect(isTrial(next(rail, [...PAIR, home], quick).step)).toBe(false);
    expect(isTrial(next(rail, [...PAIR, HIGH, home], quick).step)).toBe(false);
  });

  it("holds for any repair that has no result yet", () => {
    const repairs = [{ repair: "repair.plug-one", cylinder: 3 }];
    expect(repairIn(next(rail, PAIR, { ...quick, repairs }).step)).toMatchObject({
      repair: "repair.plug-one",
      cylinders: [3],
      isMade: true,
      because: TRIAL.repair.because,
    });
  });

  it("that seems to have cured it is proven before anything else, and not any more once it came back", () => {
    const step = (result: "cured" | "came-back"): NextStep =>
      next(rail, [...PAIR, HIGH], {
        ...quick,
        repairs: [{ repair: "repair.boots-home", result }],
      }).step;
    expect(repairIn(step("cured"))).toMatchObject({
      repair: "repair.boots-home",
      isMade: true,
      name: TRIAL.cured.resting,
    });
    expect(isTrial(step("came-back"))).toBe(false);
  });

  it("starts no engine that the drive rules say to stop", () => {
    const fuel: Finding = { finding: "alarm", answer: ["fuel-seen"] };
    expect(driveAdvice(rail, [fuel]).level?.level).toBe("stop-now");
    expect(isTrial(next(rail, [...PAIR, HIGH, fuel], quick).step)).toBe(false);
  });
});

describe("a conclusive swap", () => {
  it("of a rail ends at the rail, not at its connector once more", () => {
    const cured: Finding = { finding: "swap.rail", answer: "cured" };
    const { step, repairs } = next(rail, [...PAIR, cured], quick);
    const told = repairIn(step);
    expect(told.repair).toBe("repair.rail");
    expect(told.because).toMatch(/Fit the old one once more/);
    expect(told.cures).toBeGreaterThan(0.6);
    expect(repairs.map(({ repair }) => repair)).not.toContain("repair.connector-home");
  });

  it("of a coil puts the good one back and renews the one that carried the misfire", () => {
    const codes: Finding = { finding: "codes", answer: ["P0302"] };
    const moved: Finding = { finding: "swap.coil", cylinder: 2, answer: "moved" };
    const step = repairIn(next(single, [codes, moved], quick).step);
    expect(step).toMatchObject({ repair: "repair.coil-single", cylinders: [2] });
    expect(step.because).toMatch(/Put the good coil back .* renew the one that carried/);
  });

  it("that stayed, or fits badly to the rest, proves nothing", () => {
    const stayed: Finding = { finding: "swap.rail", answer: "stayed" };
    const odd: Finding = { finding: "swap.injector", cylinder: 2, answer: "moved" };
    for (const finding of [stayed, odd]) {
      const { step } = next(rail, [...PAIR, finding], quick);
      expect(step.kind === "repair" && step.because).toBeFalsy();
    }
  });

  it("is left to others where the part cannot be renewed with what is at hand", () => {
    const cured: Finding = { finding: "swap.rail", answer: "cured" };
    const { step } = next(rail, [...PAIR, cured], { ...quick, atHand: { tools: [] } });
    expect(step).toEqual({ kind: "call" });
  });
});

describe("with little at hand", () => {
  const bare: AtHand = { tools: [], where: "roadside", skill: 1 };
  const caseOf = (name: string) => {
    const path = new URL(`../../../fixtures/case/${name}.json`, import.meta.url);
    const { engine, findings } = JSON.parse(readFileSync(path, "utf8"));
    return { engine: profileById(engine) as EngineProfile, findings: findings as Finding[] };
  };

  it("calls for help instead of a repair that cures one in fifty", () => {
    const { engine, findings } = caseOf("d");
    const told = next(engine, findings, { maxWork: 100, atHand: bare });
    expect(told.mendable).toBeLessThan(0.05);
    expect(told.step).toEqual({ kind: "call" });
  });

  it("stays at what bare hands can mend where that is likely", () => {
    const { engine, findings } = caseOf("a");
    const told = next(engine, findings, { maxWork: 100, atHand: bare });
    expect(told.mendable).toBeGreaterThan(0.3);
    expect(repairIn(told.step).repair).toBe("repair.connector-home");
  });

  it("knows of more that can be mended with more at hand", () => {
    for (const name of ["a", "b", "c", "d", "e"]) {
      const { engine, findings } = caseOf(name);
      const all = next(engine, findings, quick);
      const few = next(engine, findings, { ...quick, atHand: bare });
      expect(all.mendable).toBeGreaterThan(0.5);
      expect(few.mendable).toBeLessThanOrEqual(all.mendable);
      expect(all.step.kind).not.toBe("call");
    }
  });

  it("names the likeliest first of several repairs with one trial after them, of no others", () => {
    const repairs = [0.02, 0.4, 0.1, 0.5].map((probability) => ({ probability })) as never;
    const order = [0, 1, 2, 3].map((repair) => {
      const step = { kind: "repair" as const, repair, thenTry: repair >= 2 };
      return { step, reached: 1, cured: 0.1 };
    });
    const [first, , third] = order.map(({ step }) => step);
    const offer = { mendable: 0.9, repairs };
    expect(stepOf(offer, { step: first, repairOrder: order })).toMatchObject({ repair: 1 });
    expect(stepOf(offer, { step: third, repairOrder: order })).toBe(third);
    const elsewhere = order.slice(1);
    expect(stepOf(offer, { step: first, repairOrder: elsewhere })).toBe(first);
    expect(stepOf({ ...offer, mendable: 0.09 }, { step: first, repairOrder: order })).toEqual({
      kind: "call",
    });
  });

  it("tells at which rate an hour counts", () => {
    expect(next(rail, PAIR, quick).hourRate).toBe(USUAL_HOUR_RATE);
    expect(next(rail, PAIR, { ...quick, atHand: { hourRate: 60 } }).hourRate).toBe(60);
  });
});

describe("a repair that is thought of", () => {
  it("has problems with paths within what was given, beside all others", () => {
    const findings = [{ finding: "lamp", answer: "purple" }];
    const repairs = [{ repair: "repair.nothing" }];
    const paths = (wanted: { repair: string; cylinder?: number }): readonly string[] => {
      try {
        mend(rail, findings, wanted, { repairs });
      } catch (error) {
        return (error as { problems: { path: string }[] }).problems.map(({ path }) => path);
      }
      return [];
    };
    expect(paths({ repair: "repair.plugset" })).toEqual(["/0/answer", "/0/repair", "/repair"]);
    expect(paths({ repair: "repair.plug-one" })).toEqual(["/0/answer", "/0/repair", "/cylinder"]);
    expect(paths(null as never)).toContain("/repair");
  });
});

describe("the tables of what checks mend and swaps prove", () => {
  it("name findings, options and repairs that exist, each repair for some ignition once", () => {
    for (const { finding, option, repairs } of [...MADE_BY_CHECK, ...PROVEN_BY_SWAP]) {
      const row = KNOWLEDGE.findings.get(finding);
      expect(row, finding).toBeDefined();
      if (option !== undefined) expect(Object.keys(row?.options ?? {})).toContain(option);
      for (const id of repairs) {
        expect(KNOWLEDGE.repairs.map((repair) => repair.id)).toContain(id);
      }
    }
    for (const { toldBy } of MADE_BY_CHECK) {
      if (toldBy !== undefined) expect(KNOWLEDGE.findings.has(toldBy), toldBy).toBe(true);
    }
    for (const id of TRIAL.cautions) {
      expect(KNOWLEDGE.cautions.map((row) => row.id)).toContain(id);
    }
  });

  it("let a check make only what one of the checks that ask for the finding looks at", () => {
    for (const { finding } of [...MADE_BY_CHECK, ...PROVEN_BY_SWAP]) {
      const asking = KNOWLEDGE.checks.filter(({ yields }) => yields.includes(finding));
      expect(asking.length, finding).toBeGreaterThan(0);
    }
  });
});
