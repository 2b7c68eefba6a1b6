// The next step on an engine: what is offered, what is held back, and that its figures are the ranking's own.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type NextOptions, next } from "../../../packages/core/src/advice/next.ts";
import type { EngineProfile } from "../../../packages/core/src/engine/profile.ts";
import { profileById } from "../../../packages/core/src/engine/profile-library.ts";
import { rank } from "../../../packages/core/src/explain/rank.ts";
import type { AtHand, Finding } from "../../../packages/core/src/knowledge/answer.ts";
import { KNOWLEDGE } from "../../../packages/core/src/knowledge/knowledge.ts";
import { InputError } from "../../../packages/core/src/units/problem.ts";

const rail = profileById("generic.i4.1342.rail") as EngineProfile;
const PAIR: readonly Finding[] = [
  { finding: "lamp", answer: "steady" },
  { finding: "complaint.main", answer: "shakes-at-idle" },
  { finding: "codes", answer: ["P0302", "P0303"] },
];
/** Plans are cut by work, never by the clock, so that they are the same everywhere. */
const quick: NextOptions = { maxWork: 0 };

function caseOf(name: string): { engine: EngineProfile; findings: readonly Finding[] } {
  const path = new URL(`../../../fixtures/case/${name}.json`, import.meta.url);
  const { engine, findings } = JSON.parse(readFileSync(path, "utf8"));
  return { engine: profileById(engine) as EngineProfile, findings };
}

/** An answer after which the engine runs right. */
const isCure = (answers: readonly Finding[]): boolean =>
  answers.some(
    ({ finding, answer }) =>
      (finding === "connector.push" && answer === "cured") ||
      (finding === "wells-dried" && answer === "yes"),
  );

describe("the next step", () => {
  it("for a cassette that lost its pairs over bumps is at the connector, with bare hands", () => {
    const { engine, findings } = caseOf("a");
    const { step } = next(engine, findings, quick);
    expect(step.kind).not.toBe("call");
    if (step.kind === "call") return;
    expect(step.kind === "check" ? step.check : step.repair).toMatch(/connector/);
    expect(step.minutes).toBeLessThanOrEqual(5);
  });

  it("begins a check of several parts at the cylinder that is suspected most", () => {
    const findings: Finding[] = [
      { finding: "codes", answer: ["P0304"] },
      { finding: "lamp", answer: "steady" },
      { finding: "complaint.main", answer: "shakes-at-idle" },
    ];
    const bare: AtHand = { tools: ["none"], where: "roadside" };
    const { checks } = next(rail, findings, { ...quick, atHand: bare });
    const places = checks.filter(({ check }) => check === "check.rail-press");
    expect(places[0]?.cylinders[0]).toBe(4);
    const alike = checks.filter(({ worthMinutes: a }) => Math.round(a) === -3);
    const tells = alike.map(({ tellsBits }) => tellsBits);
    expect(tells).toEqual([...tells].sort((a, b) => b - a));
  });

  it("that runs the engine says for how long where the car may not be driven, and where it may, not", () => {
    const runs = (lamp: string) =>
      next(rail, [{ finding: "lamp", answer: lamp }], quick).checks.filter(({ cautions }) =>
        cautions.includes("exhaust-gas"),
      );
    const blinking = runs("blinking");
    expect(blinking.length).toBeGreaterThan(2);
    for (const { check, cautions } of blinking) expect(cautions, check).toContain("short-run");
    for (const { check, cautions } of runs("steady"))
      expect(cautions, check).not.toContain("short-run");
  });

  it("leaves the engine off where the rules say to stop now, and says why", () => {
    const findings: Finding[] = [
      { finding: "lamp", answer: "blinking" },
      { finding: "complaint.severity", answer: "clear" },
    ];
    const { step, checks, withheld } = next(rail, findings, quick);
    const told = [step, ...checks].flatMap((each) => (each.kind === "check" ? each.cautions : []));
    expect(told).not.toContain("exhaust-gas");
    expect(told).not.toContain("moving-parts");
    expect(withheld.filter(({ why }) => why === "rest").length).toBeGreaterThan(0);
  });

  it("tells outcomes that share out the whole, and a leader for each that leaves something to find", () => {
    const { checks } = next(rail, PAIR, quick);
    expect(checks.length).toBeGreaterThan(3);
    for (const { check, outcomes } of checks) {
      const sum = outcomes.reduce((total, { probability }) => total + probability, 0);
      expect(sum, check).toBeCloseTo(1, 9);
      for (const { answers, probability, leader } of outcomes) {
        if (probability > 0 && !isCure(answers))
          expect(leader?.probability, check).toBeGreaterThan(0);
      }
    }
  });

  it("promises no part after a connector pressed home has cured it: its proof comes next", () => {
    const { checks } = next(rail, PAIR, quick);
    const home = checks.find(({ check }) => check === "check.connector-home");
    const cures = home?.outcomes.filter(({ answers }) => isCure(answers)) ?? [];
    expect(cures.length).toBeGreaterThan(0);
    expect(cures.every(({ leader }) => leader === undefined)).toBe(true);
  });

  it("looks at the connector first where wetting the intake joints is worth no more", () => {
    const single = profileById("generic.i4.1342.coil-per-plug") as EngineProfile;
    const since: readonly Finding[] = [
      { finding: "codes", answer: ["P0303"] },
      { finding: "complaint.main", answer: "shakes-at-idle" },
      { finding: "work", answer: ["plugs"] },
      { finding: "onset", answer: "after-work" },
    ];
    const atHand: AtHand = { tools: ["none", "light", "hand tools"], where: "driveway" };
    const { step } = next(single, since, { atHand, putOff: ["check.coil-swap"] });
    expect(step).toMatchObject({ kind: "check", check: "check.connector-home", cylinders: [3] });
  });

  it("says of each outcome what the ranking says once it has come out so", () => {
    const { checks } = next(rail, PAIR, quick);
    const compared = checks
      .flatMap(({ outcomes }) => outcomes)
      .filter(({ answers, probability }) => answers.length > 0 && probability > 0.03)
      .filter(({ answers }) => !isCure(answers))
      .filter(({ answers }) => answers.every(({ answer }) => typeof answer === "string"));
    expect(compared.length).toBeGreaterThan(5);
    for (const { answers, leader } of compared) {
      const { components } = rank(rail, [...PAIR, ...answers]);
      const same = components.find(({ component }) => component === leader?.component);
      // The plan leaves out three faults at once and rare pairs.
      expect(Math.abs((same?.probability ?? 0) - (leader?.probability ?? 1))).toBeLessThan(0.06);
    }
  });

  it("offers only what tools, skill and place allow, and says what it holds back", () => {
    const bare = next(rail, PAIR, { ...quick, atHand: { tools: [], skill: 1, where: "roadside" } });
    for (const { check, minutes } of bare.checks) {
      const row = KNOWLEDGE.checks.find(({ id }) => id === check);
      expect(row?.tool).toBe("none");
      expect(row?.skill).toBeLessThanOrEqual(1);
      expect(minutes).toBeLessThanOrEqual(20);
    }
    expect(bare.withheld.map(({ why }) => why)).toContain("tool");
    const all = next(rail, PAIR, quick);
    // Nobody has said that a good rail lies there: it is told as what would settle it.
    expect(all.withheld.map(({ id, why }) => [id, why])).toEqual([["check.rail-swap", "spare"]]);
    expect(all.checks.some(({ check }) => check.startsWith("check.spark"))).toBe(true);
  });

  it("offers no repair that needs a part at the roadside, whatever tools lie there", () => {
    const parts = new Map(KNOWLEDGE.repairs.map((row) => [row.id, row.parts]));
    const ready = { tools: ["light", "hand tools"], skill: 2 } as const;
    const at = (where: "roadside" | "driveway") =>
      next(rail, PAIR, { ...quick, atHand: { ...ready, where } });
    const [here, home] = [at("roadside"), at("driveway")];
    expect(here.repairs.length).toBeGreaterThan(0);
    expect(here.repairs.filter(({ repair }) => parts.get(repair) !== "none")).toEqual([]);
    expect(home.repairs.some(({ repair }) => parts.get(repair) !== "none")).toBe(true);
    const why = new Map(here.withheld.map((held) => [held.id, held.why]));
    expect(home.repairs.map(({ repair }) => repair)).toContain("repair.rail");
    expect(why.get("repair.rail")).toBe("place");
    expect(here.mendable).toBeLessThan(home.mendable);
  });

  it("keeps a part that a swap has brought, also at the roadside", () => {
    const atHand = { where: "roadside", tools: ["hand tools"], skill: 2 } as const;
    const swapped = [...PAIR, { finding: "swap.rail", answer: "cured" }];
    expect(next(rail, PAIR, { ...quick, atHand }).step).toEqual({ kind: "call" });
    expect(next(rail, swapped, { ...quick, atHand }).step).toMatchObject({ repair: "repair.rail" });
    const bare = { ...atHand, tools: [] };
    expect(next(rail, swapped, { ...quick, atHand: bare }).step.kind).not.toBe("repair");
  });

  it("hands over when nothing can be done and the call is cheap", () => {
    const { step } = next(rail, PAIR, { ...quick, atHand: { tools: [], skill: 0, callPrice: 1 } });
    expect(step).toEqual({ kind: "call" });
  });

  it("stays in reason for somebody whose time costs nothing", () => {
    const { expectedMinutes } = next(rail, PAIR, { ...quick, atHand: { hourRate: 0 } });
    expect(expectedMinutes).toBeLessThan(450 * 60);
  });

  it("never costs more than repairs alone", () => {
    for (const name of ["a", "b", "c", "d", "e"]) {
      const { engine, findings } = caseOf(name);
      const advice = next(engine, findings, quick);
      expect(advice.expectedMinutes).toBeLessThanOrEqual(
        advice.expectedMinutesWithoutChecks + 1e-9,
      );
    }
  });

  it("gets better with more time, never worse", () => {
    const [soon, later] = [0, 150].map((maxWork) => next(rail, PAIR, { maxWork }));
    expect(later?.expectedMinutes).toBeLessThanOrEqual((soon?.expectedMinutes ?? 0) + 1e-9);
  });

  it("leaves out what has been answered and what has been mended", () => {
    const first = next(rail, PAIR, quick);
    const spark = first.checks.find(({ check }) => check.startsWith("check.spark"));
    const seen = (spark?.outcomes[0]?.answers ?? []).filter(({ finding }) => finding === "spark");
    expect(seen.length).toBeGreaterThan(0);
    const then = next(rail, [...PAIR, ...seen], quick);
    const again = then.checks.flatMap(({ outcomes }) => outcomes.flatMap(({ answers }) => answers));
    for (const { finding, cylinder } of seen) {
      expect(again.some((a) => a.finding === finding && a.cylinder === cylinder)).toBe(false);
    }
    const done = { repair: first.repairs[0]?.repair ?? "", result: "same" as const };
    const cylinder = first.repairs[0]?.cylinders[0];
    const repairs = [{ ...done, ...(cylinder === undefined ? {} : { cylinder }) }];
    const after = next(rail, PAIR, { ...quick, repairs });
    const names = after.repairs.map(({ name }) => name);
    expect(names).not.toContain(first.repairs[0]?.name);
  });

  it("works for an engine whose firing order is not known", () => {
    const advice = next({ cylinders: 6, ignition: "rail" }, PAIR.slice(0, 2), quick);
    expect(advice.step.kind).toBe("check");
    expect(advice.checks.length).toBeGreaterThan(0);
  });

  it("names every problem of findings and repairs at once", () => {
    const findings = [{ finding: "lamp", answer: "purple" }];
    const repairs = [{ repair: "repair.plugset" }, { repair: "repair.plug-one", cylinder: 9 }];
    const attempt = (): unknown => next(rail, findings, { ...quick, repairs });
    expect(attempt).toThrow(InputError);
    try {
      attempt();
    } catch (error) {
      const codes = (error as InputError).problems.map(({ code }) => code);
      expect(codes).toEqual(expect.arrayContaining(["repair-unknown", "cylinder-unknown"]));
      expect(codes.length).toBe(3);
    }
  });
});

describe("the result of a repair", () => {
  it("that changed nothing speaks against what it mends, and one that cured for it", () => {
    const chance = (result?: "same" | "cured" | "better" | "came-back"): number => {
      const repairs = result ? [{ repair: "repair.rail", result }] : [];
      const { ranking } = rank(rail, PAIR, { repairs });
      return ranking.find(({ fault }) => fault === "coil.half-dead")?.probability ?? 0;
    };
    expect(chance("same")).toBeLessThan(chance() / 3);
    expect(chance("cured")).toBeGreaterThan(chance());
    expect(chance("came-back")).toBeLessThan(chance());
  });

  it("tells nothing until it has been tried", () => {
    const before = rank(rail, PAIR).ranking.slice(0, 5);
    expect(rank(rail, PAIR, { repairs: [{ repair: "repair.rail" }] }).ranking.slice(0, 5)).toEqual(
      before,
    );
  });
});
