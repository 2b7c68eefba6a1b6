// An engine known in part is answered with the answers for all engines it may be, weighed.
import { describe, expect, it } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { candidateEngines } from "../../packages/core/src/engine/candidates.ts";
import type { EngineProfile } from "../../packages/core/src/engine/profile.ts";
import { type Finding, type Ranking, rank } from "../../packages/core/src/index.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";

const CLOSE = 1e-9;
const exact = { tolerance: 0 };

const findings: readonly Finding[] = [
  { finding: "codes", answer: ["P0302", "P0303"] },
  { finding: "lamp", answer: "blinking" },
  { finding: "plug.look", cylinder: 3, answer: "dry-black" },
];

const KNOWN_IN_PART: readonly (EngineProfile & { name: string })[] = [
  { name: "four cylinders, coil packs", cylinders: 4, ignition: "pack" },
  { name: "a V6 with a rail", cylinders: 6, layout: "v", ignition: "rail" },
];

function probabilities(r: Ranking): ReadonlyMap<string, number> {
  return new Map([
    ...r.ranking.map((f): [string, number] => [`${f.fault}@${f.place}`, f.probability]),
    ...r.components.map((c): [string, number] => [`part ${c.component}`, c.probability]),
    ...r.cylinders.map((c): [string, number] => [`cylinder ${c.cylinder}`, c.misses]),
    ["at random", r.atRandom],
    ["no misfire", r.noMisfire],
    ["something else", r.somethingElse],
  ]);
}

describe.each(KNOWN_IN_PART)("an engine known in part: $name", (profile) => {
  const mixed = rank(profile, findings, exact);
  const candidates = candidateEngines(profile).map(({ engine, weight }) => ({
    engine,
    weight,
    order: engine.order.map((c) => engine.names[c]).join("-"),
    ranking: rank(engine.profile, findings, exact),
  }));
  // Two layouts may share a firing order, so a weight is found by order and first place.
  const told = (order: string): number =>
    (mixed.orders ?? [])
      .filter((o) => o.firingOrder.join("-") === order)
      .reduce((sum, o) => sum + o.probability, 0);

  /** P(engine | findings) by Bayes' rule, from the exact totals. */
  const evidence = candidates.map(({ engine, weight }) => {
    const total = (answers: readonly Finding[]): number =>
      posterior(compile(engine, answers, KNOWLEDGE).model, exact).total;
    return (weight * total(findings)) / total([]);
  });
  const all = evidence.reduce((a, b) => a + b, 0);
  const weights = evidence.map((e) => e / all);

  it("may be one of several, and tells how likely each is", () => {
    expect(candidates.length).toBeGreaterThan(2);
    expect((mixed.orders ?? []).reduce((sum, o) => sum + o.probability, 0)).toBeCloseTo(1, 12);
    const byOrder = new Map<string, number>();
    candidates.forEach(({ order }, i) => {
      byOrder.set(order, (byOrder.get(order) ?? 0) + (weights[i] as number));
    });
    // The ranking may leave a little of each sum unsearched.
    for (const [order, weight] of byOrder)
      expect(Math.abs(told(order) - weight)).toBeLessThan(1e-6);
  });

  it("is answered with the weighted sum of the answers for each", () => {
    const sums = new Map<string, number>();
    for (const order of mixed.orders ?? []) {
      const name = order.firingOrder.join("-");
      const fitting = candidates.filter((c) => c.order === name);
      const own = fitting.length === 1 ? fitting[0] : undefined;
      // Of candidates that share an order, the weights worked out above tell which is which.
      const candidate =
        own ??
        fitting.toSorted(
          (a, b) =>
            Math.abs((weights[candidates.indexOf(a)] as number) - order.probability) -
            Math.abs((weights[candidates.indexOf(b)] as number) - order.probability),
        )[0];
      if (!candidate) throw new Error(`no candidate ${name}`);
      for (const [key, p] of probabilities(candidate.ranking)) {
        sums.set(key, (sums.get(key) ?? 0) + order.probability * p);
      }
    }
    const ours = probabilities(mixed);
    expect([...ours.keys()].sort()).toEqual([...sums.keys()].sort());
    const worst = [...ours].map(([key, p]) => Math.abs(p - (sums.get(key) as number)));
    expect(Math.max(...worst)).toBeLessThan(CLOSE);
  });
});
