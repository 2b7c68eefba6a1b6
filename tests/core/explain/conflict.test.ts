// How often does a sound story raise the warning that its answers disagree, and how often does a mixed one?
import { describe, expect, it } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { type Engine, type Finding, rank } from "../../../packages/core/src/index.ts";
import { conflictDb } from "../../../packages/core/src/inference/fit.ts";
import { randomOf, samplerOf } from "../../../packages/core/src/instrument/index.ts";
import { KNOWLEDGE } from "../../../packages/core/src/knowledge/knowledge.ts";
import { KINDS } from "../../helper/calibration-case.ts";

/** The bar of `explain/rank.ts`. */
const BAR_DB = 8;
const CASES = 100;
const SEED = 910;

/** The first questions tell the story and the codes, the last ones what was tried and measured. */
const HALF = 6;

interface Drawn {
  readonly engine: Engine;
  readonly findings: readonly Finding[];
  /** The order in which the questions happened to be asked. */
  readonly order: readonly number[];
  /** Another story on the same engine. */
  readonly other: readonly Finding[];
}

const drawn: readonly Drawn[] = KINDS.flatMap(({ engine, questions }, k) => {
  const random = randomOf(SEED + k);
  const sampler = samplerOf(engine, KNOWLEDGE, questions, 3);
  return Array.from({ length: CASES }, () => {
    const at = questions.map(() => random.uniform());
    const order = [...at.keys()].sort((a, b) => (at[a] ?? 0) - (at[b] ?? 0));
    const [{ findings }, { findings: other }] = [sampler.draw(random), sampler.draw(random)];
    return { engine, findings, order, other };
  });
});

/** The part of all cases that lies above the bar. */
function above(findingsOf: (each: Drawn) => readonly Finding[]): number {
  const raised = drawn.filter(
    (each) => conflictDb(compile(each.engine, findingsOf(each), KNOWLEDGE).model) > BAR_DB,
  );
  return raised.length / drawn.length;
}

describe("the bar of conflict", () => {
  it.each([4, 7, 13])(
    "is passed by at most one in twenty of 500 sound stories of %i answers",
    (n) => {
      expect(drawn).toHaveLength(500);
      const asked = ({ findings, order }: Drawn) =>
        order.slice(0, n).map((q) => findings[q] as Finding);
      expect(above(asked)).toBeLessThanOrEqual(0.05);
    },
  );

  it("is passed by four in ten or more where what was measured belongs to another story", () => {
    const mixed = ({ findings, other }: Drawn) => [
      ...findings.slice(0, HALF),
      ...other.slice(HALF),
    ];
    expect(above(mixed)).toBeGreaterThanOrEqual(0.4);
  });

  it("is where a suspect is named, and not below it", () => {
    const [kind] = KINDS;
    if (!kind) throw new Error("no kinds");
    const { engine, questions } = kind;
    const random = randomOf(SEED);
    const sampler = samplerOf(engine, KNOWLEDGE, questions, 3);
    let named = 0;
    for (let i = 0; i < 20; i++) {
      const [a, b] = [sampler.draw(random).findings, sampler.draw(random).findings];
      const { fit } = rank(engine.profile, [...a.slice(0, 6), ...b.slice(6)]);
      expect(fit.suspect !== undefined).toBe(fit.conflictDb > BAR_DB);
      if (fit.suspect) named++;
    }
    expect(named).toBeGreaterThan(0);
  });
});
