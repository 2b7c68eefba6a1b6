// Prior odds: shares, company, risks.
import { describe, expect, it } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { companyFactor } from "../../../packages/core/src/compile/prior.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import { allProfiles, type Finding } from "../../../packages/core/src/index.ts";
import { posterior } from "../../../packages/core/src/inference/posterior.ts";
import { KNOWLEDGE } from "../../../packages/core/src/knowledge/knowledge.ts";
import type { DiagnosisModel } from "../../../packages/core/src/model/diagnosis-model.ts";
import { checkModel } from "../../../packages/core/src/model/invariant.ts";
import { ENGINES } from "../../helper/real-engines.ts";

/** Weight of all hypotheses of exactly one, two and three faults. */
function rings(model: DiagnosisModel): readonly [number, number, number] {
  const upTo = (most: 1 | 2 | 3): number => posterior(model, { tolerance: 0, most }).total;
  const [one, two, three] = [upTo(1), upTo(2), upTo(3)];
  return [one, two - one, three - two];
}

describe("the company factor", () => {
  it("makes the stated part of two equal faults come together", () => {
    // Of two faults with odds x: x²/(2x + x²) = 0.08, so x = 0.16/0.92.
    expect(companyFactor([0.5, 0.5], 0.08) * 0.5).toBeCloseTo(0.16 / 0.92, 9);
  });

  it("has nothing to do where only one fault is possible", () => {
    expect(companyFactor([0.4], 0.08)).toBe(1);
  });

  it.each(ENGINES)(
    "makes 8 in 100 complaints two unrelated faults before any finding ($name)",
    (p) => {
      const { model } = compile(resolveEngine(p), [], KNOWLEDGE);
      // Unrelated, and known to the catalogue: no links, and its last fault ("something else") left out.
      const faults = model.faults - 1;
      const atoms = model.atomStart[faults] as number;
      const bare: DiagnosisModel = {
        ...model,
        faults,
        odds: model.odds.slice(0, faults),
        alone: model.alone.slice(0, faults),
        component: model.component.slice(0, faults),
        atomStart: model.atomStart.slice(0, faults + 1),
        atomChance: model.atomChance.slice(0, atoms),
        atomSet: model.atomSet.slice(0, atoms),
        links: [],
      };
      const [one, two, three] = rings(checkModel(bare));
      const all = one + two + three;
      expect(Math.abs(two / all - KNOWLEDGE.twoFaultsShare)).toBeLessThan(1e-6);
      expect(KNOWLEDGE.twoFaultsShare).toBe(0.08);
      expect(three / all).toBeLessThan(0.01);
    },
  );

  it.each(ENGINES)("leaves links room: two faults stay the exception ($name)", (p) => {
    const [one, two, three] = rings(compile(resolveEngine(p), [], KNOWLEDGE).model);
    const all = one + two + three;
    expect(two / all).toBeGreaterThan(0.07);
    expect(two / all).toBeLessThan(0.12);
    expect(three / all).toBeLessThan(0.02);
  });
});

describe("a compiled model", () => {
  it("is sound for every engine that comes with the library", () => {
    for (const profile of allProfiles()) {
      const { model, instances } = compile(resolveEngine(profile), [], KNOWLEDGE);
      checkModel(model);
      expect(model.faults).toBe(instances.length);
      expect([...model.alone].reduce((a, b) => a + b, 0)).toBe(1);
    }
  });
});

describe("something known beforehand", () => {
  const [, four] = ENGINES;
  if (!four) throw new Error("there are engines");
  const engine = resolveEngine(four);
  const odds = (answer: string): number => {
    const { model, instances } = compile(engine, [{ finding: "plug.age", answer }], KNOWLEDGE);
    return model.odds[instances.findIndex(({ fault }) => fault.id === "coil.leg-leaks")] as number;
  };

  it("multiplies the odds of a fault by its stated factor", () => {
    const row = KNOWLEDGE.faults.find(({ id }) => id === "coil.leg-leaks");
    const times = row?.risks.find(({ finding }) => finding === "plug.age")?.times ?? {};
    expect(odds("over-100") / odds("10-40")).toBeCloseTo(times["over-100"] as number, 12);
    expect(odds("under-10") / odds("10-40")).toBeCloseTo(times["under-10"] as number, 12);
  });
});

describe("work on the engine", () => {
  const [four] = ENGINES;
  if (!four) throw new Error("there are engines");
  const engine = resolveEngine(four);
  const oddsOf = (id: string, findings: readonly Finding[]): number => {
    const { model, instances } = compile(engine, findings, KNOWLEDGE);
    return model.odds[instances.findIndex(({ fault }) => fault.id === id)] as number;
  };
  const work: Finding = { finding: "work", answer: ["plugs"] };
  const pull = (id: string, distance: string): number =>
    Math.log(
      oddsOf(id, [work, { finding: "work.distance", answer: distance }]) /
        oddsOf(id, [{ finding: "work", answer: [] }]),
    );
  const full = (id: string): number =>
    Math.log(oddsOf(id, [work]) / oddsOf(id, [{ finding: "work", answer: [] }]));

  // Common practice of the trade: what hands disturbed shows within days, or it was not that.
  it("pulls less the longer ago it was, in the order of kilometres, and at last not at all", () => {
    const asked = KNOWLEDGE.findings.get("work.distance")?.fades?.left ?? {};
    expect(Object.values(asked)).toEqual([...Object.values(asked)].sort((a, b) => b - a));
    const pulls = Object.keys(asked).map((distance) => pull("plug.loose", distance));
    expect(pulls[0]).toBeCloseTo(full("plug.loose"), 12);
    expect(pulls).toEqual([...pulls].sort((a, b) => b - a));
    const never = oddsOf("plug.loose", [{ finding: "work", answer: [] }]);
    const before = oddsOf("plug.loose", []);
    expect(pulls.at(-1)).toBeCloseTo(Math.log(before / never), 12);
  });

  it("that renewed a part speaks for it as long as before", () => {
    expect(pull("plug.set-worn", "over-3000")).toBeCloseTo(full("plug.set-worn"), 12);
    expect(full("plug.set-worn")).toBeLessThan(0);
  });

  it("does not fade by a distance when nobody worked", () => {
    const idle: readonly Finding[] = [{ finding: "work.distance", answer: "over-3000" }];
    expect(oddsOf("plug.loose", idle)).toBe(oddsOf("plug.loose", []));
  });
});
