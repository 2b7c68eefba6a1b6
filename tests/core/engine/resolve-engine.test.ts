// What is worked out of a profile: names, groups, banks, neighbours, connectors and leads.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { places } from "../../../packages/core/src/engine/place.ts";
import type { EngineProfile } from "../../../packages/core/src/engine/profile.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import { InputError } from "../../../packages/core/src/units/problem.ts";

const tern: EngineProfile = {
  cylinders: 6,
  layout: "v",
  firingOrder: [1, 2, 3, 4, 5, 6],
  ignition: "rail",
};

describe("a rail on a V6", () => {
  const engine = resolveEngine(tern);

  it("fires companions together, in firing order", () => {
    expect(engine.groups).toEqual([
      [0, 3],
      [1, 4],
      [2, 5],
    ]);
    expect(engine.groupOf).toEqual([0, 1, 2, 0, 1, 2]);
    expect(engine.companions).toEqual([3, 4, 5, 0, 1, 2]);
    expect(engine.angles).toEqual([0, 120, 240, 360, 480, 600]);
  });

  it("takes the banks that engines with this order have", () => {
    expect(engine.banks).toEqual([
      [0, 2, 4],
      [1, 3, 5],
    ]);
    expect(engine.bankOf).toEqual([0, 1, 0, 1, 0, 1]);
    expect(engine.neighbours).toEqual([
      [0, 2],
      [2, 4],
      [1, 3],
      [3, 5],
    ]);
  });

  it("has one connector and no lead", () => {
    expect(engine.connectors).toEqual([{ name: "coil connector", cylinders: [0, 1, 2, 3, 4, 5] }]);
    expect(engine.hasLead).toEqual(new Array(6).fill(false));
  });

  it("names its places by cylinder", () => {
    expect(places(engine, "coil").map(({ id }) => id)).toEqual([
      "coil 1+4",
      "coil 2+5",
      "coil 3+6",
    ]);
    expect(places(engine, "lead")).toEqual([]);
    expect(places(engine, "bank").map(({ id }) => id)).toEqual(["bank 1+3+5", "bank 2+4+6"]);
  });
});

describe("each ignition", () => {
  const four = { cylinders: 4, layout: "inline", firingOrder: [1, 3, 4, 2] } as const;

  it("distributor: one coil for all, a lead to each", () => {
    const engine = resolveEngine({ ...four, ignition: "distributor" });
    expect(engine.groups).toEqual([[0, 2, 3, 1]]);
    expect(engine.companions).toEqual([3, 2, 1, 0]);
    expect(engine.connectors).toHaveLength(1);
    expect(engine.hasLead).toEqual([true, true, true, true]);
  });

  it("pack: pairs, one connector, a lead to each", () => {
    const engine = resolveEngine({ ...four, ignition: "pack" });
    expect(engine.groups).toEqual([
      [0, 3],
      [2, 1],
    ]);
    expect(engine.connectors).toEqual([{ name: "coil connector", cylinders: [0, 1, 2, 3] }]);
    expect(engine.hasLead).toEqual([true, true, true, true]);
  });

  it("hybrid: the coil sits on the one that fires first unless told otherwise", () => {
    const engine = resolveEngine({ ...four, ignition: "hybrid" });
    expect(engine.hasLead).toEqual([false, true, false, true]);
    expect(engine.connectors.map(({ name }) => name)).toEqual([
      "coil connector 1+4",
      "coil connector 3+2",
    ]);
    const told = resolveEngine({ ...four, ignition: "hybrid", coilOn: [2, 4] });
    expect(told.hasLead).toEqual([true, false, true, false]);
  });

  it("coil per plug: coils and connectors in cylinder order, no lead", () => {
    const engine = resolveEngine({ ...four, ignition: "coil-per-plug" });
    expect(engine.groups).toEqual([[0], [1], [2], [3]]);
    expect(engine.connectors.map(({ name }) => name)).toEqual(
      [1, 2, 3, 4].map((name) => `coil connector ${name}`),
    );
    expect(engine.hasLead).toEqual([false, false, false, false]);
  });

  it("keeps the connectors that the profile gives", () => {
    const connectors = [
      { name: "front", feeds: [1, 4] },
      { name: "rear", feeds: [2, 3] },
    ];
    expect(resolveEngine({ ...four, ignition: "pack", connectors }).connectors).toEqual([
      { name: "front", cylinders: [0, 3] },
      { name: "rear", cylinders: [1, 2] },
    ]);
  });
});

describe("banks and names", () => {
  it("knows an order begun at another cylinder", () => {
    const engine = resolveEngine({ ...tern, firingOrder: [4, 5, 6, 1, 2, 3] });
    expect(engine.banks).toEqual([
      [0, 2, 4],
      [1, 3, 5],
    ]);
  });

  it("takes the banks of the order when only one layout has it", () => {
    const { layout: _, ...unknown } = tern;
    expect(resolveEngine(unknown).banks).toHaveLength(2);
    const shared = { cylinders: 4, firingOrder: [1, 3, 2, 4], ignition: "distributor" } as const;
    expect(resolveEngine(shared).banks).toEqual([[0, 1, 2, 3]]);
  });

  it("halves a V engine with an order of its own", () => {
    const engine = resolveEngine({ ...tern, firingOrder: [1, 5, 3, 6, 2, 4] });
    expect(engine.banks).toEqual([
      [0, 1, 2],
      [3, 4, 5],
    ]);
  });

  it("counts labels bank by bank, also without banks", () => {
    const engine = resolveEngine({
      cylinders: 6,
      layout: "v",
      firingOrder: ["L1", "R3", "R1", "L2", "L3", "R2"],
      ignition: "coil-per-plug",
    });
    expect(engine.names).toEqual(["L1", "L2", "L3", "R1", "R2", "R3"]);
    expect(engine.banks).toEqual([
      [0, 1, 2],
      [3, 4, 5],
    ]);
  });

  it("keeps given neighbours, lower index first", () => {
    const engine = resolveEngine({ ...tern, neighbours: [[5, 1]] });
    expect(engine.neighbours).toEqual([[0, 4]]);
  });

  it("knows the order of a single cylinder", () => {
    const engine = resolveEngine({ cylinders: 1, ignition: "coil-per-plug" });
    expect(engine.order).toEqual([0]);
    expect(engine.groups).toEqual([[0]]);
    expect(engine.companions).toEqual([undefined]);
    expect(engine.banks).toEqual([[0]]);
  });
});

describe("a tolerance", () => {
  const crossPlane: EngineProfile = {
    cylinders: 4,
    layout: "inline",
    firingOrder: [1, 3, 2, 4],
    firingIntervals: [270, 180, 90, 180],
    ignition: "pack",
    pairingToleranceDeg: 90,
  };

  it("pairs uneven engines", () => {
    expect(resolveEngine(crossPlane).companions).toEqual([1, 0, 3, 2]);
  });

  it("lets the maker choose other partners", () => {
    const firingGroups = [
      [1, 3],
      [4, 2],
    ];
    const { message } = refusal({ ...crossPlane, firingGroups });
    expect(message).toContain("/firingGroups/1");
    const chosen = resolveEngine({
      ...crossPlane,
      firingIntervals: [300, 60, 300, 60],
      firingGroups: [
        [1, 3],
        [4, 2],
      ],
    });
    expect(chosen.groups).toEqual([
      [0, 2],
      [1, 3],
    ]);
    expect(chosen.companions).toEqual([2, 3, 0, 1]);
  });
});

function refusal(profile: EngineProfile): InputError {
  try {
    resolveEngine(profile);
  } catch (error) {
    if (error instanceof InputError) return error;
  }
  throw new Error("refusal: the profile was accepted");
}

describe("a refusal", () => {
  it("asks for the firing order and points to the candidates", () => {
    const { problems } = refusal({ cylinders: 6, ignition: "rail" });
    expect(problems).toMatchObject([{ code: "order-missing", path: "/firingOrder" }]);
    expect(problems[0]?.hint).toContain("candidateEngines");
  });

  it("carries every problem of the profile", () => {
    const { problems } = refusal({
      ...tern,
      firingOrder: [1, 2, 3, 3, 5, 6],
      cylinders: 6,
      coilOn: [1],
    });
    expect(problems.map(({ code }) => code)).toEqual(["order-repeats", "coil-on-not-hybrid"]);
  });
});

describe("the laws of a resolved engine", () => {
  const profile = fc
    .record({
      half: fc.integer({ min: 1, max: 6 }),
      ignition: fc.constantFrom("distributor", "pack", "rail", "hybrid", "coil-per-plug"),
      layout: fc.constantFrom("inline", "v", "flat"),
    } as const)
    .chain(({ half, ignition, layout }) => {
      const names = Array.from({ length: half * 2 }, (_, i) => i + 1);
      return fc
        .shuffledSubarray(names, { minLength: names.length })
        .map((firingOrder) => ({ cylinders: names.length, ignition, layout, firingOrder }));
    });

  it("has each cylinder in one group, one bank and one connector", () => {
    fc.assert(
      fc.property(profile, (given) => {
        const engine = resolveEngine(given);
        const all = engine.names.map((_, c) => c);
        const sorted = (lists: readonly (readonly number[])[]): readonly number[] =>
          lists.flat().sort((a, b) => a - b);
        expect(sorted(engine.groups)).toEqual(all);
        expect(sorted(engine.banks)).toEqual(all);
        expect(sorted(engine.connectors.map(({ cylinders }) => cylinders))).toEqual(all);
        for (const [a, b] of engine.neighbours) expect(a).toBeLessThan(b);
      }),
    );
  });
});
