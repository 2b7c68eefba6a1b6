// Which engines a profile may be when its firing order is not known.
import { describe, expect, it } from "vitest";
import { candidateEngines } from "../../../packages/core/src/engine/candidates.ts";
import { type EngineProfile, IGNITION_KINDS } from "../../../packages/core/src/engine/profile.ts";
import { InputError } from "../../../packages/core/src/units/problem.ts";

/** `layout order` of each candidate. */
function orders(profile: EngineProfile): readonly string[] {
  return candidateEngines(profile).map(({ engine: { profile: p } }) =>
    [p.layout, p.firingOrder?.join("-"), ...(p.firingIntervals ? ["uneven"] : [])].join(" "),
  );
}

function problems(profile: EngineProfile): readonly string[] {
  try {
    candidateEngines(profile);
  } catch (error) {
    if (error instanceof InputError) return error.problems.map((p) => `${p.code} ${p.path}`);
  }
  return [];
}

describe("the candidates", () => {
  it("are one when the order is known", () => {
    const known: EngineProfile = { cylinders: 4, firingOrder: [1, 3, 4, 2], ignition: "pack" };
    const [only, ...others] = candidateEngines(known);
    expect(others).toEqual([]);
    expect(only?.weight).toBe(1);
    expect(only?.engine.profile).toEqual(known);
  });

  it.each(IGNITION_KINDS)("have weights that add up to 1 (%s)", (ignition) => {
    for (const cylinders of [2, 4, 6, 8, 10, 12]) {
      const candidates = candidateEngines({ cylinders, ignition });
      expect(candidates.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
      expect(candidates.every(({ weight }) => weight > 0)).toBe(true);
      expect(candidates.every(({ engine }) => engine.names.length === cylinders)).toBe(true);
    }
  });

  it("leave out uneven orders where a coil fires two", () => {
    expect(orders({ cylinders: 6, ignition: "rail" })).toHaveLength(9);
    expect(orders({ cylinders: 6, ignition: "coil-per-plug" })).toHaveLength(11);
    expect(orders({ cylinders: 6, ignition: "rail", pairingToleranceDeg: 20 })).toHaveLength(10);
  });

  it("follow the layout", () => {
    expect(orders({ cylinders: 4, layout: "inline", ignition: "pack" })).toEqual([
      "inline 1-3-4-2",
      "inline 1-2-4-3",
    ]);
  });

  it("follow the banks, whichever is written first", () => {
    const banks = [
      [6, 5, 4],
      [1, 2, 3],
    ];
    const found = candidateEngines({ cylinders: 6, layout: "v", banks, ignition: "pack" });
    expect(found.map(({ engine }) => engine.profile.firingOrder?.join("-"))).toEqual([
      "1-4-2-5-3-6",
      "1-4-3-6-2-5",
    ]);
    expect(found[0]?.engine.banks[0]).toEqual([5, 4, 3]);
  });

  it("follow the firing groups", () => {
    const firingGroups = [
      [2, 4],
      [1, 6],
      [3, 5],
    ];
    expect(orders({ cylinders: 6, ignition: "rail", firingGroups })).toEqual(["v 1-4-3-6-2-5"]);
  });

  it("follow the plugs that carry a coil", () => {
    expect(orders({ cylinders: 4, layout: "flat", ignition: "hybrid", coilOn: [1, 2] })).toEqual([
      "flat 1-4-3-2",
    ]);
  });

  it("keep the rest of the profile", () => {
    const profile: EngineProfile = {
      cylinders: 8,
      ignition: "distributor",
      fuel: "petrol-and-gas",
      name: "my van",
      figures: { serviceKm: 20_000 },
    };
    for (const { engine } of candidateEngines(profile))
      expect(engine.profile).toMatchObject(profile);
  });

  it("know a single cylinder without being told", () => {
    expect(candidateEngines({ cylinders: 1, ignition: "coil-per-plug" })).toHaveLength(1);
  });
});

describe("no candidate", () => {
  it("when no known order has the count", () => {
    expect(problems({ cylinders: 11, ignition: "distributor" })).toEqual([
      "no-order-fits /firingOrder",
    ]);
  });

  it("when the groups belong to no known order", () => {
    const firingGroups = [
      [1, 2],
      [3, 6],
      [4, 5],
    ];
    expect(problems({ cylinders: 6, ignition: "rail", firingGroups })).toEqual([
      "no-order-fits /firingOrder",
    ]);
  });

  it("when cylinders go by labels", () => {
    const banks = [
      ["R1", "R2", "R3"],
      ["L1", "L2", "L3"],
    ];
    expect(problems({ cylinders: 6, layout: "v", banks, ignition: "rail" })).toEqual([
      "no-order-fits /firingOrder",
    ]);
  });

  it("when the profile is not sound, with its own problems", () => {
    expect(problems({ cylinders: 5, ignition: "rail" })).toEqual(["not-pairable /ignition"]);
  });
});
