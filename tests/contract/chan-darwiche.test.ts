// How far one number can carry an answer: the distance of H. Chan & A. Darwiche ("When do numbers really
// matter?", Journal of Artificial Intelligence Research 17 (2002) 265; formulas from memory). Moving one
// number by D in natural log-odds moves the odds of no query by more than a factor e^D.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { flip } from "../../packages/core/src/inference/sensitivity.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import { odds } from "../../packages/core/src/units/weight.ts";
import { modelsOf } from "../helper/arbitrary-model.ts";
import { ALGORITHMS, ask, networkOf, type TableNode } from "../helper/bayes-oracle.ts";
import { expectPrinted } from "../helper/printed.ts";

const file = join(import.meta.dirname, "../../fixtures/published/fire.json");
const { nodes } = JSON.parse(readFileSync(file, "utf8")) as { nodes: readonly TableNode[] };

/** Natural log-odds between two probabilities. */
function distance(from: number, to: number): number {
  return Math.abs(Math.log(odds(to) / odds(from)));
}

describe("the fire network, report and no smoke", () => {
  const query = (node: string, row: number, t: number): number => {
    const changed = nodes.map((each) =>
      each.id === node
        ? { ...each, table: each.table.map((own, r) => (r === row ? [t, 1 - t] : own)) }
        : each,
    );
    const given = { report: "yes", smoke: "no" };
    return ask(ALGORITHMS.elimination, networkOf(changed), { tampering: "yes" }, given);
  };
  const now = query("tampering", 0, 0.02);

  it("is moved by the prior of tampering as far as the distance allows", () => {
    const D = distance(0.02, 0.036);
    expectPrinted(D, "0.6042479");
    const moved = query("tampering", 0, 0.036);
    expectPrinted(moved, "0.6474");
    expectPrinted(odds(moved) / odds(now), "1.8299");
    expect(odds(moved) / odds(now)).toBeCloseTo(Math.exp(D), 9);
  });

  it("is moved by a report without cause, inside the interval", () => {
    const D = distance(0.01, 0.0047);
    expectPrinted(D, "0.7603618");
    const [low, high] = [-D, D].map((d) => {
      const moved = odds(now) * Math.exp(d);
      return moved / (1 + moved);
    }) as [number, number];
    expectPrinted(low, "0.3193");
    expectPrinted(high, "0.6821");
    const moved = query("report", 1, 0.0047);
    expectPrinted(moved, "0.6502");
    expect(moved).toBeGreaterThan(low);
    expect(moved).toBeLessThan(high);
  });
});

// Our own model: hypotheses of one to three faults, a number of one fault moved.
const models = modelsOf([2, 6], [1, 3]);
const chance = fc.integer({ min: 1, max: 999 }).map((n) => n / 1000);
const RUNS = { numRuns: 150, seed: 20277 };
/** Odds come out of differences of probabilities near 0 and 1. */
const SLACK = 1e-6;

function expectWithin(before: DiagnosisModel, after: DiagnosisModel, D: number): void {
  const [was, is] = [before, after].map((model) => posterior(model, { tolerance: 0 }).fault);
  was?.forEach((p, f) => {
    const q = is?.[f] as number;
    if (p < 1e-6 || p > 1 - 1e-6 || q < 1e-6 || q > 1 - 1e-6) return;
    expect(distance(p, q)).toBeLessThanOrEqual(D + SLACK);
  });
}

describe("the odds of our own faults", () => {
  it("move no further than the prior odds of one of them do", () => {
    const times = fc.integer({ min: -200, max: 200 }).map((n) => 10 ** (n / 100));
    fc.assert(
      fc.property(models, times, (model, factor) => {
        const moved = { ...model, odds: model.odds.with(0, (model.odds[0] as number) * factor) };
        expectWithin(model, moved, Math.abs(Math.log(factor)));
      }),
      RUNS,
    );
  });

  it("move no further than the log-odds of one chance of a sign do", () => {
    fc.assert(
      fc.property(models, fc.nat(5), chance, (model, which, to) => {
        const observation = model.observations[which];
        const from = observation?.value[0] as number;
        if (!observation || from <= 0 || from >= 1) return;
        const value = observation.value.with(0, to);
        const observations = model.observations.with(which, { ...observation, value });
        expectWithin(model, { ...model, observations }, distance(from, to));
      }),
      RUNS,
    );
  });

  it("let nobody overtake whose odds are further behind than the move", () => {
    let found = 0;
    fc.assert(
      fc.property(models, fc.nat(5), (model, f) => {
        const fault = f % model.faults;
        const flipped = flip(model, { kind: "prior", faults: [fault] });
        if (!flipped) return;
        found++;
        const { fault: now } = posterior(model, { tolerance: 0 });
        const first = Math.max(...now);
        const D = (Math.abs(flipped.moveDb) * Math.LN10) / 10;
        // Both may move, each by D at most.
        expect(distance(now[flipped.first] as number, first)).toBeLessThanOrEqual(2 * D + 0.01);
      }),
      RUNS,
    );
    expect(found).toBeGreaterThan(20);
  });
});
