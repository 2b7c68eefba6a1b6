// Weights of evidence as I. J. Good counts them ("Weight of evidence: a brief survey", 1985): the scale in
// decibans, the loaded die, and the balance sheet of a published network through our own ledger.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { balance } from "../../packages/core/src/explain/balance.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import type { DiagnosisModel, Observation } from "../../packages/core/src/model/diagnosis-model.ts";
import { decibans, odds } from "../../packages/core/src/units/weight.ts";
import {
  ALGORITHMS,
  ask,
  type Evidence,
  networkOf,
  type TableNode,
} from "../helper/bayes-oracle.ts";
import { expectPrinted } from "../helper/printed.ts";

describe("the scale", () => {
  it.each([
    ["1", "0", "0.5"],
    ["2", "3.010", "0.6667"],
    ["4", "6.021", "0.8"],
    ["5", "6.990", "0.8333"],
    ["10", "10", "0.9091"],
    ["20", "13.010", "0.9524"],
    ["100", "20", "0.9901"],
    ["1000", "30", "0.9990"],
  ])("odds of %s are %s dB, a probability of %s", (ratio, db, probability) => {
    const value = Number(ratio);
    expectPrinted(decibans(value), db);
    expect(decibans(odds(value / (1 + value)))).toBeCloseTo(decibans(value), 9);
    expectPrinted(value / (1 + value), probability);
  });

  it("has its deciban at a factor of 1.2589, and 4.3429 of them to the unit of the natural logarithm", () => {
    expectPrinted(10 ** (1 / 10), "1.2589");
    expectPrinted(decibans(Math.E), "4.3429");
  });
});

/** Two dice, one of which was thrown: one shows a six with chance 1/3 (from memory), one is fair. */
function dice(throws: readonly ("six" | "other")[]): DiagnosisModel {
  const six = Float64Array.of(1 / 3, 1 / 6);
  const observations = throws.map((shown, answer): Observation => {
    const value = shown === "six" ? six : six.map((chance) => 1 - chance);
    return { form: "choice", background: 1 / 2, value, answer };
  });
  return {
    cylinders: 1,
    faults: 2,
    odds: Float64Array.of(1, 1),
    // It was one of the two, never both.
    alone: Uint8Array.of(1, 1),
    component: Uint32Array.of(0, 1),
    components: 2,
    atomStart: Uint32Array.of(0, 1, 2),
    atomChance: Float64Array.of(1, 1),
    atomSet: Uint32Array.of(0, 0),
    links: [],
    observations,
    misfireObservations: [],
  };
}

describe("Good's die through our posterior and ledger", () => {
  const throws = ["six", "other", "six", "other", "other"] as const;
  const sheet = balance(throws, (known) =>
    decibans(odds(posterior(dice(known), { tolerance: 0 }).fault[0] as number)),
  );

  it("gains 3.0103 dB by each six and loses 0.9691 dB by each other face", () => {
    expect(sheet.priorDb).toBeCloseTo(0, 12);
    sheet.lines.forEach(({ weightDb, withoutDb }, i) => {
      expectPrinted(weightDb, throws[i] === "six" ? "3.0103" : "-0.9691");
      // Throws are independent: a throw weighs the same wherever it stands.
      expect(withoutDb).toBeCloseTo(weightDb, 9);
    });
    expect(sheet.posteriorDb).toBeCloseTo(decibans(4 * 0.8 ** 3), 9);
  });
});

const file = join(import.meta.dirname, "../../fixtures/published/asia.json");
const { nodes } = JSON.parse(readFileSync(file, "utf8")) as { nodes: readonly TableNode[] };
const network = networkOf(nodes);

type Item = readonly [node: string, state: string];

// Our model has no variable between causes and findings, so it cannot hold this network. What is ours here
// is the ledger; the probabilities it is kept of come from the outside solver.
function asiaOddsDb(of: string): (known: readonly Item[]) => number {
  return (known) => {
    const given: Evidence = Object.fromEntries(known);
    return decibans(odds(ask(ALGORITHMS.elimination, network, { [of]: "yes" }, given)));
  };
}

const ITEMS: readonly Item[] = [
  ["smoker", "yes"],
  ["dysp", "yes"],
  ["xray", "yes"],
  ["visit", "no"],
];

/** Worked out from the published tables by plain enumeration: before, by item, and probabilities. */
const SHEETS = {
  lung: {
    prior: "-12.3507",
    weights: ["2.8083", "1.9521", "11.7724", "0.0398"],
    running: ["0.100000", "0.148334", "0.723714", "0.725543"],
  },
  bronch: {
    prior: "-0.8715",
    weights: ["2.6324", "6.8988", "-4.6927", "0.0034"],
    running: ["0.600000", "0.880164", "0.713706", "0.713867"],
  },
} as const;

describe.each(Object.entries(SHEETS))("the balance sheet of %s on Asia", (of, expected) => {
  const oddsDb = asiaOddsDb(of);
  const sheet = balance(ITEMS, oddsDb);

  it("holds the printed weights, and its running sum the printed probabilities", () => {
    expectPrinted(sheet.priorDb, expected.prior);
    let running = sheet.priorDb;
    sheet.lines.forEach(({ weightDb }, i) => {
      expectPrinted(weightDb, expected.weights[i] as string);
      running += weightDb;
      expectPrinted(1 / (1 + 10 ** (-running / 10)), expected.running[i] as string);
    });
    expect(Math.abs(running - sheet.posteriorDb)).toBeLessThan(1e-9);
    expect(sheet.posteriorDb).toBe(oddsDb(ITEMS));
  });

  it("has the same total in any order of its items, but other weights", () => {
    const reversed = balance([...ITEMS].reverse(), oddsDb);
    expect(Math.abs(reversed.posteriorDb - sheet.posteriorDb)).toBeLessThan(1e-9);
    const moved = sheet.lines.map(({ weightDb }, i) =>
      Math.abs(weightDb - (reversed.lines[ITEMS.length - 1 - i]?.weightDb as number)),
    );
    expect(Math.max(...moved)).toBeGreaterThan(0.5);
  });
});

describe("the x-ray on Asia", () => {
  it("speaks for bronchitis by itself and against it among the others", () => {
    const oddsDb = asiaOddsDb("bronch");
    const [alone] = balance([["xray", "yes"] as const], oddsDb).lines;
    expectPrinted(alone?.weightDb as number, "0.9814");
    expect(balance(ITEMS, oddsDb).lines[2]?.weightDb).toBeLessThan(-4);
  });
});
