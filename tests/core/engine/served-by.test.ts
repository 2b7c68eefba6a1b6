// Which cylinders is an answer about that names one of them?
import { describe, expect, it } from "vitest";
import {
  type Finding,
  type IgnitionKind,
  rank,
  resolveEngine,
  servedBy,
  servesAll,
} from "../../../packages/core/src/index.ts";

const engineWith = (ignition: IgnitionKind) =>
  resolveEngine({ cylinders: 4, ignition, firingOrder: [1, 3, 4, 2] });

describe("an answer at cylinder 3", () => {
  const [rail, single] = [engineWith("rail"), engineWith("coil-per-plug")];

  it("is about both cylinders of its coil, and about all on one connector", () => {
    expect(servedBy(rail, "cylinder", 3)).toEqual([2]);
    expect([...servedBy(rail, "coil", "3")].sort()).toEqual([1, 2]);
    expect([...servedBy(rail, "connector", 3)].sort()).toEqual([0, 1, 2, 3]);
    expect(servedBy(single, "connector", 3)).toEqual([2]);
    expect(servedBy(rail, "engine", undefined)).toEqual([]);
  });

  it("may leave the cylinder out where one connector serves all, and nowhere else", () => {
    const pushed = { finding: "connector.push", answer: "cured" };
    const told = (ignition: IgnitionKind, finding: Finding) =>
      rank({ cylinders: 4, ignition, firingOrder: [1, 3, 4, 2] }, [finding]);
    const [named] = told("rail", { ...pushed, cylinder: 3 }).ranking;
    const [first] = told("rail", pushed).ranking;
    expect(first?.fault).toBe("connector.loose");
    expect(first?.place).toBe(named?.place);
    expect(first?.probability).toBeCloseTo(named?.probability ?? 0, 12);
    expect(() => told("coil-per-plug", pushed)).toThrow(/any cylinder that the connector feeds/);
    const looked = { finding: "coil.look", answer: "cracked" };
    expect(told("distributor", looked).ranking[0]?.fault).toBe("coil.distributor");
    expect(() => told("rail", looked)).toThrow(/any cylinder that the coil fires/);
  });

  it("needs its cylinder told unless all share the thing", () => {
    expect(servesAll(rail, "connector", 3)).toBe(true);
    expect(servesAll(rail, "coil", 3)).toBe(false);
    expect(servesAll(single, "connector", 3)).toBe(false);
    expect(servesAll(engineWith("distributor"), "coil", 3)).toBe(true);
  });
});

describe("what is to be put right", () => {
  it("names the cylinder of a connector where there are several, and none where there is one", () => {
    const findings = [
      { finding: "codes", answer: ["P0302"] },
      { finding: "connector.lock", cylinder: 2, answer: "broken" },
    ];
    const told = (ignition: IgnitionKind) =>
      rank(engineWith(ignition).profile, findings).alsoPutRight.filter(
        ({ finding }) => finding === "connector.lock",
      );
    expect(told("rail").map(({ cylinder }) => cylinder)).toEqual([undefined]);
    expect(told("coil-per-plug").map(({ cylinder }) => cylinder)).toEqual([2]);
  });
});
