// Cases in which looks at two outputs hang on one hiding, and on when the trouble is there: drawn from the
// model itself, is the posterior right about them?
import { describe, expect, it } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import {
  type AnsweredCase,
  deviations,
  type Question,
  randomOf,
  samplerOf,
} from "../../packages/core/src/instrument/index.ts";
import { KNOWLEDGE, type Knowledge } from "../../packages/core/src/knowledge/knowledge.ts";
import { KINDS } from "../helper/calibration-case.ts";

/** As in the law of calibration: a right posterior fails for less than one seed in 500. */
const LIMIT = 4.5;
const CASES = 250;

const QUESTIONS: readonly Question[] = [
  { finding: "codes" },
  { finding: "spark", cylinder: 4 },
  { finding: "regime.warmth" },
  { finding: "complaint.now" },
  { finding: "spark", cylinder: 1 },
  { finding: "coil.resistance", cylinder: 1 },
];

/** Tables without a word about how a look is made: each output counts as a witness of its own. */
const UNAWARE: Knowledge = {
  ...KNOWLEDGE,
  findings: new Map([...KNOWLEDGE.findings].map(([id, { made: _, ...row }]) => [id, row])),
};

const drawn = KINDS.filter(({ name }) => /rail|packs/.test(name)).map(({ engine }, k) => {
  const sampler = samplerOf(engine, KNOWLEDGE, QUESTIONS, 2);
  const random = randomOf(20290 + k);
  return { engine, cases: Array.from({ length: CASES }, () => sampler.draw(random)) };
});

function answered(knowledge: Knowledge): readonly AnsweredCase[] {
  return drawn.flatMap(({ engine, cases }) =>
    cases.map(({ truth, findings }) => {
      const { model, instances } = compile(engine, findings, knowledge);
      const { fault, set } = posterior(model, { most: 2 });
      return { truth, fault, set, types: instances.map(({ fault: { id } }) => id) };
    }),
  );
}

/** Log score of what is true, nats over all cases; higher is better. */
function score(cases: readonly AnsweredCase[]): number {
  return cases.reduce((sum, { truth, fault }) => {
    const each = truth.faults.map((f) => Math.log(fault[f] as number));
    return sum + each.reduce((a, b) => a + b, 0);
  }, 0);
}

describe("looks that may all miss a fault together", () => {
  const right = answered(KNOWLEDGE);

  it("are calibrated, with two faults too", () => {
    const all = deviations(right);
    expect(all.length).toBeGreaterThan(10);
    expect(all.filter(({ z }) => Math.abs(z) > LIMIT)).toEqual([]);
  });

  it("foretell better than when each output is a witness of its own", () => {
    expect(score(right)).toBeGreaterThan(score(answered(UNAWARE)) + 5);
  });
});
