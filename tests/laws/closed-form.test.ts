// The closed form has several ways: rows on which all speak, classes of faults, faults that are acquainted,
// faults too heavy to be strangers. Whichever a model takes, the sums are those of plain enumeration.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import { modelsOf } from "../helper/arbitrary-model.ts";
import { bruteForce } from "../reference/brute-force.ts";

const RUNS = { numRuns: 60, seed: 20267 };
const CLOSE = 1e-9;

type Observation = DiagnosisModel["observations"][number];

function withRows(
  model: DiagnosisModel,
  change: (observation: Observation) => Observation,
): DiagnosisModel {
  return { ...model, observations: model.observations.map(change) };
}

/** Every fault has a say about every choice. */
function outspoken(model: DiagnosisModel): DiagnosisModel {
  return withRows(model, (o) => ({ ...o, value: o.value.map((v) => (v < 0 ? o.background : v)) }));
}

const WAYS: readonly (readonly [string, (model: DiagnosisModel) => DiagnosisModel])[] = [
  ["as drawn", (model) => model],
  ["when every fault has a say about every choice", outspoken],
  [
    "when faults fall into few classes",
    (model) =>
      withRows(outspoken(model), (o) => ({
        ...o,
        value: o.value.map((_, f) => o.value[f % 2] as number),
      })),
  ],
  [
    "when some faults are very likely",
    (model) => ({ ...model, odds: model.odds.map((odds, f) => (f % 3 === 0 ? odds * 1e4 : odds)) }),
  ],
  [
    "when all faults are unlikely",
    (model) => ({ ...outspoken(model), odds: model.odds.map((odds) => odds / 100) }),
  ],
];

/** Many are needed before a choice on which some are silent, or a sign, is summed by trait. */
const MANY_WAYS: readonly (readonly [string, (model: DiagnosisModel) => DiagnosisModel])[] = [
  [
    "when most faults, not all, have a say about every choice",
    (model) =>
      withRows(outspoken(model), (o) =>
        o.form === "choice"
          ? { ...o, value: o.value.map((v, f) => (f % 11 === 0 ? -1 : v)) }
          : { ...o, value: o.value.map((v, f) => (f % 7 === 0 ? v : 0)) },
      ),
  ],
  [
    "when every fault may cause every sign",
    (model) => withRows(model, (o) => ({ ...o, value: o.value.map((v) => Math.max(v, 0.01)) })),
  ],
];

function expectAlike(model: DiagnosisModel, most: 2 | 3): void {
  const fast = posterior(model, { tolerance: 0, most });
  const plain = bruteForce(model, most);
  expect(fast.unsearched).toBe(0);
  for (const key of ["fault", "component", "set"] as const) {
    const off = fast[key].map((probability, i) =>
      Math.abs(probability - (plain[key][i] as number)),
    );
    expect(Math.max(...off)).toBeLessThan(CLOSE);
  }
  expect(Math.abs(fast.total / plain.total - 1)).toBeLessThan(CLOSE);
}

describe("the sums over three faults", () => {
  it.each(WAYS)("equal brute force %s", (_, change) => {
    fc.assert(
      fc.property(modelsOf([7, 10], [1, 5]).map(change), (model) => expectAlike(model, 3)),
      RUNS,
    );
  });

  it.each(MANY_WAYS)("equal brute force %s", (_, change) => {
    fc.assert(
      fc.property(modelsOf([34, 36], [1, 2]).map(change), (model) => expectAlike(model, 3)),
      { ...RUNS, numRuns: 4 },
    );
  });
});

describe("the sums over two faults", () => {
  it.each([...WAYS, ...MANY_WAYS])("equal brute force %s", (_, change) => {
    fc.assert(
      fc.property(modelsOf([7, 36], [1, 4]).map(change), (model) => expectAlike(model, 2)),
      { ...RUNS, numRuns: 10 },
    );
  });
});
