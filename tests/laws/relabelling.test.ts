// What the cylinders are called is of no consequence: called otherwise, the same engine with the same
// findings gets the same answer, called otherwise.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CylinderName } from "../../packages/core/src/engine/profile.ts";
import { type Ranking, rank } from "../../packages/core/src/index.ts";
import { findingsFor } from "../helper/arbitrary-findings.ts";
import { ENGINES } from "../helper/real-engines.ts";
import { type Names, namesBy, relabelledFindings, relabelledProfile } from "../helper/relabel.ts";

/** Sums are taken in another order; measured differences stay below 1e-12. */
const CLOSE = 1e-9;
const SEED = 20265;
const same: Names = (name) => name;

/** Every probability of a ranking under a key that holds no order of cylinders. */
function flat(r: Ranking, to: Names): ReadonlyMap<string, number> {
  const at = (cylinders: readonly CylinderName[]): string =>
    cylinders
      .map((name) => String(to(name)))
      .sort()
      .join("+");
  const entries: [string, number][] = [
    ...r.ranking.map((f): [string, number] => [
      `fault ${f.fault} ${f.place.split(" ")[0]} ${at(f.cylinders)}`,
      f.probability,
    ]),
    ...r.components.map((c): [string, number] => [
      `part ${c.component.split(" ").slice(0, -1).join(" ")} ${at(c.cylinders)}`,
      c.probability,
    ]),
    ...r.cylinders.map((c): [string, number] => [`cylinder ${to(c.cylinder)}`, c.misses]),
    ["at random", r.atRandom],
    ["no misfire", r.noMisfire],
    ["something else", r.somethingElse],
    ["entropy", r.entropyBits],
    ["conflict", r.fit.conflictDb],
    ...r.hypotheses.map((h, i): [string, number] => [`hypothesis ${i}`, h.probability]),
  ];
  return new Map(entries);
}

function expectSame(a: ReadonlyMap<string, number>, b: ReadonlyMap<string, number>): void {
  expect([...a.keys()].sort()).toEqual([...b.keys()].sort());
  const worst = [...a].map(([key, value]) => Math.abs(value - (b.get(key) as number)));
  expect(Math.max(...worst)).toBeLessThan(CLOSE);
}

describe("calling the cylinders otherwise", () => {
  it.each(ENGINES)("calls the answer otherwise and changes nothing else ($name)", (profile) => {
    const numbers = Array.from({ length: profile.cylinders }, (_, i) => i + 1);
    const renamed = fc.shuffledSubarray(numbers, { minLength: profile.cylinders });
    // Always with the findings that name cylinders in their answers.
    const naming = [
      { finding: "codes", answer: ["P0302", "P0300", "P0264"] },
      { finding: "counts", answer: { 1: 4, 2: 140, 3: 90 } },
    ];
    fc.assert(
      fc.property(findingsFor(profile, 8), renamed, (drawn, list) => {
        const to = namesBy(list);
        const findings = [...drawn, ...naming];
        const before = rank(profile, findings, { tolerance: 0 });
        const after = rank(relabelledProfile(profile, to), relabelledFindings(findings, to), {
          tolerance: 0,
        });
        expectSame(flat(before, to), flat(after, same));
      }),
      { numRuns: 3, seed: SEED },
    );
  });

  it("makes no difference between numbers and labels", () => {
    const [six] = ENGINES;
    if (!six) throw new Error("there are engines");
    const to = namesBy(["R1", "L1", "R2", "L2", "R3", "L3"]);
    // Trouble codes count cylinders and cannot name labels.
    const findings = [
      { finding: "lamp", answer: "blinking" },
      { finding: "counts", answer: { 2: 140, 5: 95 } },
      { finding: "plug.look", cylinder: 5, answer: "wet-petrol" },
    ];
    const before = rank(six, findings, { tolerance: 0 });
    const labelled = relabelledProfile(six, to);
    const after = rank(labelled, relabelledFindings(findings, to), { tolerance: 0 });
    expectSame(flat(before, to), flat(after, same));
  });

  it("would be noticed if the banks kept their old names", () => {
    const [six] = ENGINES;
    if (!six) throw new Error("there are engines");
    const to = namesBy([2, 1, 3, 4, 5, 6]);
    const findings = [{ finding: "codes", answer: ["P0301", "P0303"] }];
    const { neighbours: _, ...right } = relabelledProfile(six, to);
    const wrong = { ...right, banks: six.banks ?? [] };
    const answer = flat(rank(right, relabelledFindings(findings, to)), same);
    const spoilt = flat(rank(wrong, relabelledFindings(findings, to)), same);
    expect(() => expectSame(answer, spoilt)).toThrow();
  });
});
