// From a fault at a place to the cylinders that it makes miss, and the moments at which it shows.
import { describe, expect, it } from "vitest";
import { patternOf } from "../../../packages/core/src/compile/pattern.ts";
import { fromRegimes } from "../../../packages/core/src/compile/regime.ts";
import { places } from "../../../packages/core/src/engine/place.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import { allProfiles, FAULTS, FINDINGS } from "../../../packages/core/src/index.ts";
import { SOMETHING_ELSE } from "../../../packages/core/src/knowledge/something-else.ts";
import { randomSet } from "../../../packages/core/src/model/diagnosis-model.ts";

const engines = allProfiles().map((profile) => ({
  id: profile.id,
  engine: resolveEngine(profile),
}));

describe("the cylinders that a fault makes miss", () => {
  it.each(engines)("are some set or other at every place of $id", ({ engine }) => {
    const wrong: string[] = [];
    for (const fault of [...FAULTS, SOMETHING_ELSE]) {
      for (const place of places(engine, fault.at)) {
        const pattern = [...patternOf(engine, place, fault.reach)];
        const sum = pattern.reduce((total, [, chance]) => total + chance, 0);
        const isSound = pattern.every(
          ([set, chance]) => set >= 0 && set <= randomSet(engine.names.length) && chance > 0,
        );
        if (!isSound || Math.abs(sum - 1) > 1e-12) wrong.push(`${fault.id}@${place.id}: ${sum}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it("are both companions of a double coil, and the one of a coil per plug", () => {
    const order = [1, 3, 4, 2];
    const reach = { group: 0.9, own: 0.1 };
    const pair = resolveEngine({ cylinders: 4, firingOrder: order, ignition: "rail" });
    const [coil] = places(pair, "coil");
    if (!coil) throw new Error("an engine has coils");
    expect(coil.id).toBe("coil 1+4");
    const pattern = patternOf(pair, coil, reach);
    expect(pattern.get(0b1001)).toBeCloseTo(0.9, 12);
    expect(pattern.get(0b0001)).toBeCloseTo(0.05, 12);
    const single = resolveEngine({ cylinders: 4, firingOrder: order, ignition: "coil-per-plug" });
    const [own] = places(single, "coil");
    if (!own) throw new Error("an engine has coils");
    expect([...patternOf(single, own, reach)]).toEqual([[0b0001, 1]]);
  });

  it("are the mate alone, where a coil fires two, else the own one", () => {
    const of = (ignition: "rail" | "coil-per-plug") => {
      const engine = resolveEngine({ cylinders: 4, firingOrder: [1, 3, 4, 2], ignition });
      const [leg] = places(engine, "leg");
      if (!leg) throw new Error("an engine has legs");
      return [...patternOf(engine, leg, { mate: 0.2, own: 0.8 })];
    };
    expect(of("rail")).toEqual([
      [0b1000, 0.2],
      [0b0001, 0.8],
    ]);
    expect(of("coil-per-plug")).toEqual([[0b0001, 1]]);
  });
});

describe("the moments at which a fault shows", () => {
  const choices = FINDINGS.filter((f) => f.kind === "choice" && (f.byRegime || f.byShows));
  const signs = FINDINGS.filter((f) => f.kind === "presence" && f.byRegime);

  it("are asked for", () => {
    expect(choices.length).toBeGreaterThan(3);
    expect(signs.length).toBeGreaterThan(0);
  });

  it.each(choices)("share out the options of $id, whatever the fault", (finding) => {
    for (const fault of FAULTS) {
      const shares = fromRegimes(fault, finding) ?? {};
      expect(Object.keys(shares).sort()).toEqual(Object.keys(finding.options).sort());
      const sum = Object.values(shares).reduce((a, b) => a + b, 0);
      expect(Math.abs(sum - 1)).toBeLessThan(1e-12);
      for (const share of Object.values(shares)) expect(share).toBeGreaterThan(0);
    }
  });

  it.each(signs)("give $id a chance between 0 and 1", (finding) => {
    for (const fault of FAULTS) {
      for (const chance of Object.values(fromRegimes(fault, finding) ?? {})) {
        expect(chance).toBeGreaterThanOrEqual(0);
        expect(chance).toBeLessThanOrEqual(1);
      }
    }
  });
});
