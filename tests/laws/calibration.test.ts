// Cases drawn from the model are answered as often right as the posterior says.
import { describe, expect, it } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import {
  type AnsweredCase,
  type DrawnCase,
  deviations,
  randomOf,
  samplerOf,
} from "../../packages/core/src/instrument/index.ts";
import { KNOWLEDGE, type Knowledge } from "../../packages/core/src/knowledge/knowledge.ts";
import type { FaultRow } from "../../packages/core/src/knowledge/schema.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import { KINDS, type Kind } from "../helper/calibration-case.ts";

/**
 * About 50 deviations are judged in a run. With the fewest hits admitted (20 expected) a Poisson count
 * lies beyond 4.5 with probability 3e-5, with many hits 7e-6: a right posterior fails for less than one
 * seed in 500. The seed is fixed, so it fails always or never.
 */
const LIMIT = 4.5;
const SEED = 20270;

/** Cases with up to two faults are answered ten times as fast: many of them, and some with three. */
const RUNS = { pairs: { most: 2, cases: 200 }, triples: { most: 3, cases: 25 } } as const;
type Run = (typeof RUNS)[keyof typeof RUNS];

interface Drawn {
  readonly kind: Kind;
  readonly cases: readonly DrawnCase[];
}

function drawn({ most, cases }: Run): readonly Drawn[] {
  return KINDS.map((kind, k) => {
    const sampler = samplerOf(kind.engine, KNOWLEDGE, kind.questions, most);
    const random = randomOf(SEED + k);
    return { kind, cases: Array.from({ length: cases }, () => sampler.draw(random)) };
  });
}

type Change = (model: DiagnosisModel, answers: readonly string[]) => DiagnosisModel;

function answered(
  from: readonly Drawn[],
  most: 2 | 3,
  knowledge: Knowledge = KNOWLEDGE,
  change: Change = (model) => model,
): readonly AnsweredCase[] {
  return from.flatMap(({ kind: { engine }, cases }) =>
    cases.map(({ truth, findings }) => {
      const { model, instances } = compile(engine, findings, knowledge);
      const asked = findings.map(({ finding }) => finding);
      const { fault, set } = posterior(change(model, asked), { most });
      return { truth, fault, set, types: instances.map(({ fault: { id } }) => id) };
    }),
  );
}

function worst(cases: readonly AnsweredCase[]): { of: string; z: number } {
  return deviations(cases).reduce(
    (most, { of, z }) => (Math.abs(z) > Math.abs(most.z) ? { of, z } : most),
    { of: "", z: 0 },
  );
}

const pairs = drawn(RUNS.pairs);
const right = answered(pairs, 2);

describe("the posterior of cases drawn from the model", () => {
  it("is calibrated over five kinds of engines, up to two faults together", () => {
    const all = deviations(right);
    expect(all.length).toBeGreaterThan(25);
    expect(all.filter(({ z }) => Math.abs(z) > LIMIT)).toEqual([]);
  });

  it("is calibrated with up to three faults together", () => {
    const all = deviations(answered(drawn(RUNS.triples), 3));
    expect(all.length).toBeGreaterThanOrEqual(3);
    expect(all.filter(({ z }) => Math.abs(z) > LIMIT)).toEqual([]);
  });
});

// Mistakes of this size are noticed in these few hundred cases. Smaller ones are not: leaks of codes times
// three, another reach of one fault, a quarter of all cases with two faults, or hit and spared exchanged in
// one look at one cylinder stayed below the limit when they were tried. `npm run evaluate` sees finer.
describe("a posterior that is wrong in one place", () => {
  const some = pairs.slice(0, 2);

  it("is right before it is altered", () => {
    const length = some.reduce((sum, { cases }) => sum + cases.length, 0);
    expect(Math.abs(worst(right.slice(0, length)).z)).toBeLessThan(LIMIT);
  });

  it("is noticed when one fault has three times its share", () => {
    const wrong = withFault("plug.gap-worn", (row) => ({
      ...row,
      shares: Object.fromEntries(Object.entries(row.shares).map(([kind, s]) => [kind, 3 * s])),
    }));
    const { of, z } = worst(answered(some, 2, wrong));
    expect(of).toBe("fault plug.gap-worn");
    expect(z).toBeLessThan(-LIMIT);
  });

  it("is noticed when the codes are counted twice", () => {
    const twice: Change = (model, asked) => ({
      ...model,
      misfireObservations: model.misfireObservations.flatMap((o) =>
        asked[o.answer] === "codes" ? [o, o] : [o],
      ),
    });
    const { of, z } = worst(answered(some, 2, KNOWLEDGE, twice));
    expect(of).toBe("set that misses, nats");
    expect(z).toBeGreaterThan(LIMIT);
  });
});

function withFault(id: string, change: (row: FaultRow) => FaultRow): Knowledge {
  const faults = KNOWLEDGE.faults.map((row) => (row.id === id ? change(row) : row));
  return { ...KNOWLEDGE, faults };
}
