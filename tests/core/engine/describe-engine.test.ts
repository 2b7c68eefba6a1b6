// An engine in words and names, as a person reads it.
import { describe, expect, it } from "vitest";
import { describeEngine } from "../../../packages/core/src/engine/describe-engine.ts";
import { allProfiles, engineById } from "../../../packages/core/src/engine/profile-library.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";

describe("a described engine", () => {
  const engine = engineById("demo.tern");
  const description = engine && describeEngine(engine);

  it("is written with the names of its cylinders", () => {
    expect(description).toMatchObject({
      id: "demo.tern",
      name: "Tern 3.0",
      isInvented: true,
      ignition: "rail",
      firingOrder: [1, 2, 3, 4, 5, 6],
      pairs: [
        [1, 4],
        [2, 5],
        [3, 6],
      ],
      groups: [
        [1, 4],
        [2, 5],
        [3, 6],
      ],
      banks: [
        [1, 3, 5],
        [2, 4, 6],
      ],
      connectors: [{ name: "coil connector", feeds: [1, 2, 3, 4, 5, 6] }],
      mismatchDeg: 0,
    });
    expect(description?.cylinders[4]).toEqual({
      name: 5,
      angleDeg: 480,
      companion: 2,
      bank: 1,
      hasLead: false,
    });
  });

  it("says which cylinders one coil can fire", () => {
    expect(description?.explanation).toContain("1/4, 2/5, 3/6");
  });

  it("survives being written as JSON", () => {
    for (const profile of allProfiles()) {
      const described = describeEngine(resolveEngine(profile));
      expect(JSON.parse(JSON.stringify(described))).toEqual(described);
    }
  });
});

describe("an engine that cannot be paired", () => {
  it("says why", () => {
    const engine = engineById("demo.wagtail");
    const description = engine && describeEngine(engine);
    expect(description).toMatchObject({ pairs: [], mismatchDeg: 120 });
    expect(description?.explanation).toContain("odd");
  });

  it("says how its maker pairs it all the same", () => {
    const { explanation, pairs } = describeEngine(
      resolveEngine({
        cylinders: 6,
        layout: "v",
        firingOrder: [1, 6, 5, 4, 3, 2],
        firingIntervals: [132, 108, 132, 108, 132, 108],
        ignition: "pack",
        pairingToleranceDeg: 20,
      }),
    );
    expect(pairs).toHaveLength(3);
    expect(explanation).toContain("Paired within the tolerance: 1/4, 6/3, 5/2, at most 12° off.");
  });

  it("says that a single cylinder has no other", () => {
    const engine = resolveEngine({ cylinders: 1, ignition: "coil-per-plug" });
    expect(describeEngine(engine).explanation).toContain("no other");
  });
});
