// How far a number must move: on a published network through the same bisection, on models of our own by
// looking on both sides of the answer.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { sensitivity } from "../../packages/core/src/explain/sensitivity.ts";
import { InputError, profileById } from "../../packages/core/src/index.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { crossing, flip, type Weight } from "../../packages/core/src/inference/sensitivity.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import {
  ALGORITHMS,
  ask,
  type Evidence,
  networkOf,
  type TableNode,
} from "../helper/bayes-oracle.ts";
import { sampleModel } from "../helper/sample-model.ts";

interface Fire {
  readonly nodes: readonly TableNode[];
  readonly flips: {
    readonly given: Evidence;
    readonly of: Evidence;
    readonly to: number;
    readonly by: readonly {
      readonly node: string;
      readonly row: number;
      readonly name: string;
      readonly at?: string;
      readonly ceiling?: string;
    }[];
  };
}

const file = join(import.meta.dirname, "../../fixtures/published/fire.json");
const { nodes, flips } = JSON.parse(readFileSync(file, "utf8")) as Fire;

describe("the fire network", () => {
  const probability = (node: string, row: number, t: number): number => {
    const changed = nodes.map((each) =>
      each.id === node
        ? { ...each, table: each.table.map((own, r) => (r === row ? [t, 1 - t] : own)) }
        : each,
    );
    return ask(ALGORITHMS.elimination, networkOf(changed), flips.of, flips.given);
  };
  const flipOf = (node: string, row: number): number | undefined => {
    const table = nodes.find(({ id }) => id === node)?.table as TableNode["table"];
    const now = table[row]?.[0] as number;
    const over = (t: number): number => probability(node, row, t) - flips.to;
    return crossing(over, now, 1, 1e-9) ?? crossing(over, now, 0, 1e-9);
  };

  it.each(flips.by.filter(({ at }) => at))("flips where it was published: $name", (by) => {
    expect(Math.abs((flipOf(by.node, by.row) as number) - Number(by.at))).toBeLessThan(1e-6);
  });

  it.each(flips.by.filter(({ ceiling }) => ceiling))("is flipped by no value of $name", (by) => {
    expect(flipOf(by.node, by.row)).toBeUndefined();
    expect(probability(by.node, by.row, 0)).toBeCloseTo(Number(by.ceiling), 6);
  });

  it("has something to look at in both tests", () => {
    expect(flips.by.map(({ at }) => at !== undefined)).toEqual([true, true, false]);
  });
});

describe("the bisection", () => {
  it("finds a change of sign either way, or says that there is none", () => {
    expect(crossing((t) => t * t - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 11);
    expect(crossing((t) => 2 - t * t, 2, 0)).toBeCloseTo(Math.SQRT2, 11);
    expect(crossing((t) => t * t + 1, 0, 2)).toBeUndefined();
  });
});

const EXACT = { posterior: { tolerance: 0 } };
const WEIGHTS: readonly Weight[] = [
  { kind: "prior", faults: [0] },
  { kind: "prior", faults: [2] },
  { kind: "sign", observation: 0, faults: [0] },
  { kind: "sign", observation: 2, faults: [2] },
  { kind: "set", observation: 0, set: 2 },
];

function first(model: DiagnosisModel): number {
  const { fault } = posterior(model, { tolerance: 0 });
  return fault.indexOf(Math.max(...fault));
}

describe("the flip of a model's number", () => {
  it.each(WEIGHTS)("stands where the first place changes hands, if anywhere: %o", (weight) => {
    const found = flip(sampleModel, weight, EXACT);
    const scan = Array.from({ length: 400 }, (_, i) => (i + 0.5) / 400);
    const holders = scan.map((t) => first(changed(weight, t / (1 - t) / 2, t)));
    if (!found) {
      expect(new Set(holders).size).toBe(1);
      return;
    }
    const beside = (db: number): number => {
      const odds = (found.to / (1 - found.to)) * 10 ** (db / 10);
      return first(changed(weight, found.to * 10 ** (db / 10), odds / (1 + odds)));
    };
    const away = Math.sign(found.moveDb) * 0.02;
    expect(beside(-away)).toBe(first(sampleModel));
    expect(beside(away)).toBe(found.first);
  });

  it("is found for some of them and for others not", () => {
    const found = WEIGHTS.map((weight) => flip(sampleModel, weight, EXACT) !== undefined);
    expect(new Set(found).size).toBe(2);
  });

  it("is not asked of a fault that is silent", () => {
    const silent: Weight = { kind: "sign", observation: 2, faults: [1] };
    expect(() => flip(sampleModel, silent)).toThrow("silent");
  });
});

/** The sample model with one number set: odds, or a probability. */
function changed(weight: Weight, odds: number, probability: number): DiagnosisModel {
  if (weight.kind === "prior") {
    return { ...sampleModel, odds: sampleModel.odds.with(weight.faults[0] as number, odds) };
  }
  if (weight.kind === "sign") {
    const fault = weight.faults[0] as number;
    const observations = sampleModel.observations.map((o, i) =>
      i === weight.observation ? { ...o, value: o.value.with(fault, probability) } : o,
    );
    return { ...sampleModel, observations };
  }
  const [look] = sampleModel.misfireObservations;
  const likelihood = (set: number): number =>
    set === weight.set ? probability : (look?.likelihood(set) as number);
  return { ...sampleModel, misfireObservations: [{ likelihood, answer: 3 }] };
}

describe("the sensitivity of a ranking", () => {
  const profile = profileById("demo.wagtail");
  if (!profile) throw new Error("demo.wagtail is gone");
  const findings = [
    { finding: "codes", answer: ["P0302"] },
    { finding: "plug.age", answer: "over-100" },
    { finding: "swap.plug", cylinder: 2, answer: "moved" },
  ];
  const told = sensitivity(profile, findings, { seed: 4, shakes: 12 });

  it("names the numbers that would change the first place, nearest first", () => {
    const moves = told.flips.map(({ moveDb }) => Math.abs(moveDb));
    expect(told.leading[0]).toBe("plug.gap-worn@leg 2");
    expect(moves).toEqual([...moves].sort((a, b) => a - b));
    expect(told.flips).toContainEqual(
      expect.objectContaining({ of: "answer", finding: "swap.plug", cylinder: 2 }),
    );
    for (const { first: next } of told.flips) expect(next).not.toBe(told.leading[0]);
  });

  it("is the same for the same seed", () => {
    expect(sensitivity(profile, findings, { seed: 4, shakes: 12 })).toEqual(told);
  });

  it("tells how often the first place holds", () => {
    const { shakes, first: held, firstThree } = told.stability;
    expect(shakes).toBe(12);
    expect(held).toBeGreaterThan(0.5);
    expect(firstThree).toBeLessThanOrEqual(1);
  });

  it("refuses what a ranking refuses", () => {
    expect(() => sensitivity(profile, [{ finding: "no-such", answer: "yes" }])).toThrow(InputError);
  });
});
