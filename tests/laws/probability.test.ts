// Probabilities are probabilities, and evidence for a fault is never evidence against it.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { resolveEngine } from "../../packages/core/src/engine/resolve-engine.ts";
import { rank } from "../../packages/core/src/index.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import { checkModel } from "../../packages/core/src/model/invariant.ts";
import { findingsFor } from "../helper/arbitrary-findings.ts";
import { modelsOf } from "../helper/arbitrary-model.ts";
import { ENGINES, TWELVE } from "../helper/real-engines.ts";

const CLOSE = 1e-9;
const SEED = 20267;

describe("the probabilities of a ranking", () => {
  it.each(ENGINES)("lie between 0 and 1 and fit together ($name)", (profile) => {
    fc.assert(
      fc.property(findingsFor(profile, 10), (findings) => {
        const r = rank(profile, findings);
        const all = [
          ...r.ranking.map((f) => f.probability),
          ...r.components.map((c) => c.probability),
          ...r.cylinders.map((c) => c.misses),
          ...r.hypotheses.map((h) => h.probability),
        ].concat(r.atRandom, r.noMisfire, r.somethingElse);
        expect(all.every((p) => p >= 0 && p <= 1)).toBe(true);
        // A cylinder's misses, all at random, and nothing at all are different outcomes.
        for (const { misses } of r.cylinders) {
          expect(misses + r.atRandom + r.noMisfire).toBeLessThan(1 + CLOSE);
        }
        // A part is at least as likely as each of its faults, and no likelier than all added up.
        for (const part of r.components) {
          const own = r.ranking.filter((f) => f.component === part.component);
          const sum = own.reduce((total, f) => total + f.probability, 0);
          expect(part.probability).toBeLessThan(sum + CLOSE);
          const most = Math.max(...own.map((f) => f.probability));
          expect(part.probability).toBeGreaterThan(most - CLOSE);
        }
        expect(r.unsearched).toBeLessThanOrEqual(1e-6);
      }),
      { numRuns: 4, seed: SEED },
    );
  });

  it.each(ENGINES)("belong to hypotheses that are disjoint ($name)", (profile) => {
    fc.assert(
      fc.property(findingsFor(profile, 6), (findings) => {
        const { hypotheses } = rank(profile, findings);
        const keys = hypotheses.map(({ faults }) =>
          faults
            .map(({ fault, place }) => `${fault}@${place}`)
            .sort()
            .join(" & "),
        );
        expect(new Set(keys).size).toBe(hypotheses.length);
        const sum = hypotheses.reduce((total, h) => total + h.probability, 0);
        expect(sum).toBeLessThan(1 + CLOSE);
        for (const { faults } of hypotheses) expect(faults.length).toBeLessThanOrEqual(3);
      }),
      { numRuns: 2, seed: SEED },
    );
  });

  it.each([...ENGINES, TWELVE])(
    "add up to 1 when only one fault may be there ($name)",
    (profile) => {
      const engine = resolveEngine(profile);
      fc.assert(
        fc.property(findingsFor(profile, 8), (findings) => {
          const model = checkModel(compile(engine, findings, KNOWLEDGE).model);
          const { fault, component, set } = posterior(model, { most: 1 });
          for (const shares of [fault, component, set]) {
            expect(Math.abs(shares.reduce((a, b) => a + b, 0) - 1)).toBeLessThan(CLOSE);
          }
        }),
        { numRuns: 2, seed: SEED },
      );
    },
  );
});

describe("sharp evidence for two cylinders of many", () => {
  // Chances of sets come from sums that cancel: the more cylinders, the more digits could be lost.
  it("loses no digits that matter", () => {
    const findings = [
      { finding: "codes", answer: ["P0302", "P0307"] },
      { finding: "counts", answer: { 2: 1400, 7: 900 } },
      { finding: "cancel", cylinder: 2, answer: "no-drop" },
      { finding: "cancel", cylinder: 7, answer: "no-drop" },
      { finding: "cancel", cylinder: 1, answer: "drop" },
    ];
    const { model } = compile(resolveEngine(TWELVE), findings, KNOWLEDGE);
    const { fault, set } = posterior(model, { most: 1 });
    for (const shares of [fault, set]) {
      expect(Math.abs(shares.reduce((a, b) => a + b, 0) - 1)).toBeLessThan(CLOSE);
    }
  });
});

/** Rounding; what the laws allow is not a hair more. */
const HAIR = 1e-12;

function probability(model: DiagnosisModel, fault: number): number {
  return posterior(checkModel(model), { tolerance: 0 }).fault[fault] as number;
}

const withOneToMove = fc
  .tuple(
    modelsOf([1, 6], [1, 3]),
    fc.nat(),
    fc.nat(),
    fc.double({ min: 0.01, max: 1, noNaN: true }),
  )
  .filter(([model]) => model.observations.length > 0)
  .map(([model, o, f, part]) => ({
    model,
    observation: o % model.observations.length,
    fault: f % model.faults,
    part,
  }));

describe("more evidence for a fault", () => {
  it("never lowers it: a value that is raised", () => {
    fc.assert(
      fc.property(withOneToMove, ({ model, observation, fault, part }) => {
        const old = model.observations[observation];
        const value = old?.value[fault] as number;
        if (!old || value < 0) return;
        const raised = old.value.with(fault, value + (1 - value) * part);
        const more = {
          ...model,
          observations: model.observations.with(observation, { ...old, value: raised }),
        };
        const [before, after] = [probability(model, fault), probability(more, fault)];
        // That it would have been seen speaks against a fault where it was not.
        const gain = old.form === "not-seen" ? before - after : after - before;
        expect(gain).toBeGreaterThan(-HAIR);
      }),
      { numRuns: 300, seed: SEED },
    );
  });

  it("never lowers it: prior odds that are raised", () => {
    fc.assert(
      fc.property(withOneToMove, ({ model, fault, part }) => {
        const odds = model.odds.with(fault, (model.odds[fault] as number) * (1 + part));
        const gain = probability({ ...model, odds }, fault) - probability(model, fault);
        expect(gain).toBeGreaterThan(-HAIR);
      }),
      { numRuns: 150, seed: SEED },
    );
  });
});
