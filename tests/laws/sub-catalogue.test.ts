// A few faults of the real catalogue on a small real engine: few enough for the plain enumeration, and
// nothing else about them is simplified.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Compiled, compile } from "../../packages/core/src/compile/compile.ts";
import { instancesOf } from "../../packages/core/src/compile/prior.ts";
import type { EngineProfile } from "../../packages/core/src/engine/profile.ts";
import { resolveEngine } from "../../packages/core/src/engine/resolve-engine.ts";
import { type Finding, type Ranking, rank } from "../../packages/core/src/index.ts";
import { KNOWLEDGE, type Knowledge } from "../../packages/core/src/knowledge/knowledge.ts";
import { checkModel } from "../../packages/core/src/model/invariant.ts";
import { findingsFor } from "../helper/arbitrary-findings.ts";
import { NUMBERS, perturbed, type Spoilt } from "../helper/perturb.ts";
import { bruteForce, type PlainPosterior } from "../reference/brute-force.ts";

/** Both sides work in double precision; measured differences stay below 1e-12. */
const CLOSE = 1e-9;
const SEED = 20268;
/** The enumeration goes through 2 to this power of subsets. */
const MOST_PLACES = 13;

const inlineThree: EngineProfile = {
  name: "Inline three",
  cylinders: 3,
  layout: "inline",
  firingOrder: [1, 3, 2],
  ignition: "coil-per-plug",
};
const inlineTwo: EngineProfile = {
  name: "Inline two",
  cylinders: 2,
  layout: "inline",
  firingOrder: [1, 2],
  ignition: "pack",
};

/** The catalogue with some of its faults only. */
function only(faults: Knowledge["faults"]): Knowledge {
  return { ...KNOWLEDGE, faults };
}

function someFaults(profile: EngineProfile): fc.Arbitrary<Knowledge> {
  const engine = resolveEngine(profile);
  const here = KNOWLEDGE.faults.filter((fault) => instancesOf(engine, only([fault])).length > 0);
  return fc
    .shuffledSubarray(here, { minLength: 6, maxLength: 7 })
    .map(only)
    .filter((knowledge) => instancesOf(engine, knowledge).length < MOST_PLACES);
}

function apart(
  ours: Ranking,
  plain: PlainPosterior,
  { instances, componentKeys }: Compiled,
): number {
  const fault = new Map(ours.ranking.map((f) => [`${f.fault}@${f.place}`, f.probability]));
  const part = new Map(ours.components.map((c) => [c.component, c.probability]));
  const cylinders = ours.cylinders.length;
  const misses = (cylinder: number): number =>
    plain.set.reduce((sum, p, set) => {
      const isIn = set < 2 ** cylinders && Math.floor(set / 2 ** cylinder) % 2 === 1;
      return sum + (isIn ? p : 0);
    }, 0);
  const last = instances.length - 1;
  const pairs: (readonly [number | undefined, number | undefined])[] = [
    ...instances
      .slice(0, -1)
      .map((i, f) => [fault.get(`${i.fault.id}@${i.place.id}`), plain.fault[f]] as const),
    ...componentKeys
      .map((key, c) => [part.get(key), plain.component[c]] as const)
      .filter(([told]) => told !== undefined),
    ...ours.cylinders.map((c, cylinder) => [c.misses, misses(cylinder)] as const),
    [ours.somethingElse, plain.fault[last]],
    [ours.atRandom, plain.set[2 ** cylinders]],
    [ours.noMisfire, plain.set[0]],
    [ours.hypotheses[0]?.probability, plain.best.probability],
  ];
  return Math.max(...pairs.map(([a = -1, b = -2]) => Math.abs(a - b)));
}

describe.each([inlineThree, inlineTwo])("a few faults of the catalogue on an $name", (profile) => {
  const engine = resolveEngine(profile);

  it("are ranked as plain enumeration ranks them", () => {
    let linked = 0;
    fc.assert(
      fc.property(someFaults(profile), findingsFor(profile, 10), (knowledge, findings) => {
        const compiled = compile(engine, findings, knowledge);
        const plain = bruteForce(checkModel(compiled.model));
        const ours = rank(profile, findings, { tolerance: 0, knowledge });
        expect(ours.unsearched).toBe(0);
        expect(apart(ours, plain, compiled)).toBeLessThan(CLOSE);
        linked += compiled.model.links.length;
      }),
      { numRuns: 25, seed: SEED },
    );
    expect(linked).toBeGreaterThan(0);
  });
});

describe("the comparison with plain enumeration", () => {
  const knowledge = only(
    KNOWLEDGE.faults.filter(
      ({ id }) =>
        ["boot.leaking", "coil.single-dead", "plug.gap-wide", "pump.weak"].includes(id) ||
        id === "injector.dead",
    ),
  );
  const findings: readonly Finding[] = [
    { finding: "smell", answer: ["petrol"] },
    { finding: "spark", cylinder: 1, answer: "weak" },
    { finding: "codes", answer: ["P0301"] },
  ];
  const compiled = compile(resolveEngine(inlineThree), findings, knowledge);
  const ours = rank(inlineThree, findings, { tolerance: 0, knowledge });

  it("holds before anything is spoilt", () => {
    expect(apart(ours, bruteForce(compiled.model), compiled)).toBeLessThan(CLOSE);
  });

  it.each(NUMBERS)("fails when one number is off by one per cent: %s", (which: Spoilt) => {
    const off = bruteForce(perturbed(compiled.model, which, 0.99));
    expect(apart(ours, off, compiled)).toBeGreaterThan(100 * CLOSE);
  });

  it("fails when one answer is lost", () => {
    const [, ...rest] = findings;
    const lost = compile(resolveEngine(inlineThree), rest, knowledge);
    expect(apart(ours, bruteForce(lost.model), compiled)).toBeGreaterThan(100 * CLOSE);
  });
});
