// A repair with all that belongs to it.
import { describe, expect, it } from "vitest";
import { mend } from "../../../packages/core/src/advice/mend.ts";
import type { EngineProfile } from "../../../packages/core/src/engine/profile.ts";
import { profileById } from "../../../packages/core/src/engine/profile-library.ts";
import type { Finding } from "../../../packages/core/src/knowledge/answer.ts";
import { KNOWLEDGE } from "../../../packages/core/src/knowledge/knowledge.ts";
import { InputError } from "../../../packages/core/src/units/problem.ts";

const rail = profileById("generic.i4.1342.rail") as EngineProfile;
const PAIR: readonly Finding[] = [
  { finding: "lamp", answer: "steady" },
  { finding: "codes", answer: ["P0302", "P0303"] },
  { finding: "plug.gap", cylinder: 2, answer: "very-wide" },
];

describe("a repair", () => {
  it("names the faults that it is for, and how likely each is", () => {
    const { faults, cures } = mend(rail, PAIR, { repair: "repair.rail" });
    expect(faults[0]?.fault).toBe("coil.half-dead");
    const row = KNOWLEDGE.repairs.find(({ id }) => id === "repair.rail");
    for (const { fault, works } of faults) {
      expect(row?.mends.find((each) => each.fault === fault)?.works).toBe(works);
    }
    expect(cures).toBeGreaterThan(0.1);
    expect(cures).toBeLessThanOrEqual(1);
  });

  it("of a coil asks for the worn plugs that would kill the new one too", () => {
    const { alsoPutRight } = mend(rail, PAIR, { repair: "repair.rail" });
    expect(alsoPutRight.map(({ finding }) => finding)).toContain("plug.gap");
  });

  it("asks for nothing beside it that it does itself", () => {
    const single = profileById("generic.i4.1342.coil-per-plug") as EngineProfile;
    const found: readonly Finding[] = [
      { finding: "codes", answer: ["P0303"] },
      { finding: "boot.look", cylinder: 3, answer: "burn" },
    ];
    const beside = (repair: string): readonly string[] =>
      mend(single, found, { repair, cylinder: 3 }).alsoPutRight.map(({ finding }) => finding);
    expect(beside("repair.boot-one")).toEqual([]);
    expect(beside("repair.plug-and-boot")).toEqual([]);
    expect(beside("repair.coil-single")).toEqual(["boot.look"]);
    // The boot of another cylinder is not renewed with it.
    const elsewhere = mend(single, found, { repair: "repair.boot-one", cylinder: 2 });
    expect(elsewhere.alsoPutRight.map(({ cylinder }) => cylinder)).toEqual([3]);
  });

  it("is proven in rain or after a night only where the misfire had to do with that", () => {
    const single = profileById("generic.i4.1342.coil-per-plug") as EngineProfile;
    const boot: readonly Finding[] = [
      { finding: "codes", answer: ["P0303"] },
      { finding: "boot.look", cylinder: 3, answer: "burn" },
    ];
    const driven = (...more: Finding[]): readonly string[] =>
      mend(single, [...boot, ...more], { repair: "repair.boot-one", cylinder: 3 }).proof?.trial.map(
        ({ regime }) => regime,
      ) ?? [];
    expect(driven()).toEqual(["pull", "cruise", "hotIdle"]);
    expect(driven({ finding: "regime.weather", answer: "wet-only" })).toContain("wet");
    expect(driven({ finding: "regime.standing", answer: "night" })).toContain("coldStart");
  });

  it("names no place where there is only one, as at the connector of a rail", () => {
    expect(mend(rail, PAIR, { repair: "repair.connector-home" }).name).toBe(
      "Press the coil connector home until it clicks",
    );
  });

  it("says what is not to be bought yet: dear and unlikely", () => {
    const { notYet } = mend(rail, PAIR, { repair: "repair.connector-home" });
    expect(notYet.length).toBeGreaterThan(0);
    for (const { repair, cures } of notYet) {
      const row = KNOWLEDGE.repairs.find(({ id }) => id === repair);
      expect(["medium", "large"]).toContain(row?.parts);
      expect(cures).toBeLessThan(0.05);
    }
  });

  it("counts what lies over its cylinder, and not when that is off already", () => {
    const covers = [{ name: "inlet manifold", cylinders: [1, 2], minutes: 90 }];
    const minutes = (cylinder: number, profile: EngineProfile, open: readonly string[] = []) =>
      mend(profile, PAIR, { repair: "repair.plug-one", cylinder }, { open }).minutes;
    const covered = { ...rail, covers };
    expect(minutes(2, covered)).toBe(minutes(2, rail) + 90);
    expect(minutes(3, covered)).toBe(minutes(3, rail));
    const { opens } = mend(covered, PAIR, { repair: "repair.plug-one", cylinder: 2 });
    const cover = opens.find(({ say }) => say === "inlet manifold off");
    expect(minutes(2, covered, [cover?.id ?? ""])).toBe(minutes(2, rail));
  });

  it("ends with putting back and proof", () => {
    const { putBack, proof } = mend(rail, PAIR, { repair: "repair.rail" });
    const ids = putBack.map(({ id }) => id);
    // until it clicks, and only then locked
    expect(ids).toContain("connector.click");
    if (ids.includes("connector.lock")) {
      expect(ids.indexOf("connector.lock")).toBeGreaterThan(ids.indexOf("connector.click"));
    }
    expect(proof?.trials).toBeGreaterThanOrEqual(1);
    expect(proof?.believed).toBeGreaterThanOrEqual(0.95);
  });

  it("is refused with the reason when there is none such, or no such place", () => {
    expect(() => mend(rail, PAIR, { repair: "repair.nothing" })).toThrow(InputError);
    expect(() => mend(rail, PAIR, { repair: "repair.plug-one" })).toThrow(/cylinder/);
    expect(() => mend(rail, PAIR, { repair: "repair.coil-single", cylinder: 1 })).toThrow(
      InputError,
    );
  });
});
