// The posterior beside a general-purpose exact inference library (confirmed in oracle.test.ts): the same
// model as tables of a Bayesian network must give the same answer.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import { checkModel } from "../../packages/core/src/model/invariant.ts";
import { modelsOf } from "../helper/arbitrary-model.ts";
import { asNetwork } from "../helper/as-network.ts";
import { ALGORITHMS, ask } from "../helper/bayes-oracle.ts";
import { noisyOrModel } from "../helper/noisy-or-model.ts";
import { NUMBERS, perturbed } from "../helper/perturb.ts";
import { expectPrinted } from "../helper/printed.ts";
import { sampleModel } from "../helper/sample-model.ts";
import { type NoisyOr, plainNoisyOr, type Seen } from "../reference/plain-noisy-or.ts";

/** Both sides work in double precision; measured differences stay below 1e-13. */
const CLOSE = 1e-9;
const SEED = 20264;

type Most = 1 | 2 | 3 | "any";

/**
 * What the library says: by fault, then (where the model looks at them) by set of cylinders. By
 * junction tree: elimination gives the same and takes far longer on networks of this shape.
 */
function byLibrary(model: DiagnosisModel, most: Most = 3): readonly number[] {
  const { network, evidence, present, misfires } = asNetwork(model, most);
  const infer = ALGORITHMS["junction tree"];
  // Network and evidence are new objects and stay as they are: the library may remember them.
  const faults = Array.from({ length: model.faults }, (_, f) =>
    infer(network, { ...present(f) }, evidence),
  );
  if (model.misfireObservations.length === 0) return faults;
  const sets = Array.from({ length: 2 ** model.cylinders + 1 }, (_, set) =>
    infer(network, { ...misfires(set) }, evidence),
  );
  return [...faults, ...sets];
}

function byUs(model: DiagnosisModel, most: 1 | 2 | 3 = 3): readonly number[] {
  const { fault, set, unsearched } = posterior(checkModel(model), { tolerance: 0, most });
  expect(unsearched).toBe(0);
  return model.misfireObservations.length === 0 ? [...fault] : [...fault, ...set];
}

function apart(a: readonly number[], b: readonly number[]): number {
  expect(a.length).toBe(b.length);
  return a.reduce((most, x, i) => Math.max(most, Math.abs(x - (b[i] as number))), 0);
}

function withoutSets(model: DiagnosisModel): DiagnosisModel {
  return { ...model, misfireObservations: [] };
}

describe("the posterior and a general-purpose library", () => {
  it("agree on signs, choices, links and faults that stand alone", () => {
    fc.assert(
      fc.property(modelsOf([2, 5], [1, 1]).map(withoutSets), (model) => {
        expect(apart(byUs(model), byLibrary(model))).toBeLessThan(CLOSE);
      }),
      { numRuns: 60, seed: SEED },
    );
  });

  it("agree on which cylinders miss", () => {
    const looking = modelsOf([2, 3], [1, 2]).filter((m) => m.misfireObservations.length > 0);
    fc.assert(
      fc.property(looking, (model) => {
        expect(apart(byUs(model), byLibrary(model))).toBeLessThan(CLOSE);
      }),
      { numRuns: 15, seed: SEED },
    );
  });

  it.each([1, 2, 3] as const)("agree on up to %i faults together", (most) => {
    expect(apart(byUs(sampleModel, most), byLibrary(sampleModel, most))).toBeLessThan(CLOSE);
  });

  it("agree with elimination too", () => {
    const model = withoutSets(sampleModel);
    const { network, evidence, present } = asNetwork(model, 3);
    const others = [0, 1, 2].map((f) => ask(ALGORITHMS.elimination, network, present(f), evidence));
    expect(apart(byUs(model), others)).toBeLessThan(CLOSE);
  });

  it.each(NUMBERS)("part when one number is off by one per cent: %s", (which) => {
    const off = perturbed(sampleModel, which, 0.99);
    expect(apart(byUs(sampleModel), byLibrary(off))).toBeGreaterThan(1000 * CLOSE);
  });
});

interface Worked {
  readonly examples: readonly (NoisyOr & {
    readonly name: string;
    readonly causes: readonly string[];
    readonly findings: readonly string[];
    readonly cases: readonly {
      readonly present: readonly string[];
      readonly absent: readonly string[];
      readonly evidence?: string;
      readonly posterior: readonly string[];
      readonly best?: { readonly causes: readonly string[]; readonly probability: string };
    }[];
  })[];
}

const file = join(import.meta.dirname, "../../fixtures/worked/noisy-or.json");
const worked = JSON.parse(readFileSync(file, "utf8")) as Worked;

// The worked tables admit every subset of causes, and none of them; our hypotheses hold one to three
// faults, because somebody has already complained. One plain enumeration ties the two together: where
// it admits all subsets it gives the printed numbers, and with nothing changed but what it admits, ours.
describe.each(worked.examples)("the worked example of $name", (example) => {
  const cases = example.cases.map((c) => {
    const numbers = (ids: readonly string[]) => ids.map((id) => example.findings.indexOf(id));
    const seen: Seen = { present: numbers(c.present), absent: numbers(c.absent) };
    return { ...c, seen, model: noisyOrModel(example, seen) };
  });

  it.each(cases)("gives its printed numbers over all subsets: $present, not $absent", (c) => {
    const plain = plainNoisyOr(example, c.seen, () => true);
    const library = byLibrary(c.model, "any");
    c.posterior.forEach((text, cause) => {
      expectPrinted(plain.posterior[cause] as number, text);
      expectPrinted(library[cause] as number, text);
    });
    if (c.evidence) expectPrinted(plain.evidence, c.evidence);
    if (c.best) {
      expect(plain.best.causes.map((cause) => example.causes[cause])).toEqual(c.best.causes);
      expectPrinted(plain.best.probability, c.best.probability);
    }
  });

  it.each(cases)("is ours over one to three causes: $present, not $absent", ({ seen, model }) => {
    for (const most of [1, 2, 3] as const) {
      const plain = plainNoisyOr(example, seen, (causes) => causes >= 1 && causes <= most);
      const { best } = posterior(model, { tolerance: 0, most });
      expect(apart(byUs(model, most), plain.posterior)).toBeLessThan(CLOSE);
      expect(apart(byLibrary(model, most), plain.posterior)).toBeLessThan(CLOSE);
      expect([...(best[0]?.faults ?? [])].sort()).toEqual(plain.best.causes);
      expect(best[0]?.probability).toBeCloseTo(plain.best.probability, 9);
    }
  });
});

describe("the likeliest set and the likeliest part", () => {
  it("need not be made of one another", () => {
    // Over all subsets: the likeliest set is {D4} by itself, the likeliest part D3.
    const [example] = worked.examples;
    const [, , third] = example?.cases ?? [];
    expect(third?.best?.causes).toEqual(["D4"]);
    const numbers = third?.posterior.map(Number) ?? [];
    expect(numbers.indexOf(Math.max(...numbers))).toBe(2);
  });
});
