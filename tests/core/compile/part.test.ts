// Which part of the engine a fault would be mended at.
import { describe, expect, it } from "vitest";
import { rank } from "../../../packages/core/src/index.ts";
import { ENGINES } from "../../helper/real-engines.ts";

const [six] = ENGINES;
if (!six) throw new Error("there are engines");
const { components, ranking } = rank(six, []);

/** Cylinders of all parts of one name. */
function at(part: string): readonly string[] {
  return components.filter((c) => c.part === part).map((c) => c.cylinders.join());
}

describe("a part", () => {
  it("of the whole engine has all cylinders, wherever its faults sit", () => {
    expect(at("control unit")).toEqual(["1,2,3,4,5,6"]);
    expect(at("valve clearance")).toEqual(["1,2,3,4,5,6"]);
  });

  it("of a bank is one for its bank, though its faults sit at single cylinders", () => {
    expect([...at("cover gasket")].sort()).toEqual(["1,3,5", "2,4,6"]);
    const leaks = ranking.filter(({ fault }) => fault === "well.oil");
    expect(leaks).toHaveLength(6);
    expect(new Set(leaks.map(({ component }) => component)).size).toBe(2);
  });

  it("that is a coil is that of both companions", () => {
    expect([...at("coil")].sort()).toEqual(["1,4", "2,5", "3,6"]);
  });
});
