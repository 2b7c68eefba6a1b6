// Reading trouble codes, and what stored codes tell of the cylinders that miss.
import { describe, expect, it } from "vitest";
import { codesLikelihood, normalCode, readCodes } from "../../../packages/core/src/compile/code.ts";
import { randomSet } from "../../../packages/core/src/model/diagnosis-model.ts";

const misfire = (...codes: string[]): readonly number[] => readCodes(codes).misfire;
const cylinders = (option: string, ...codes: string[]): readonly number[] | undefined =>
  readCodes(codes).families.get(option);

describe("the form of a code", () => {
  it.each(["P0301", "P02CD", "P0A24", "C0510", "B1782", "U0100", "U3FFF"])("accepts %s", (code) => {
    expect(normalCode(code)).toBe(code);
  });

  it.each([
    ["p0301", "P0301"],
    ["  P0301 ", "P0301"],
    [" p02cd\n", "P02CD"],
  ])("accepts lower case and blanks around: %j", (text, code) => {
    expect(normalCode(text)).toBe(code);
  });

  it.each(["P4301", "P030", "P03G1", "X0301", "P03011", "", "0301", "P 0301"])(
    "refuses %j",
    (t) => {
      expect(normalCode(t)).toBeUndefined();
    },
  );
});

describe("a misfire code", () => {
  it("names its cylinder in decimal digits", () => {
    expect(misfire("P0301")).toEqual([1]);
    expect(misfire("P0310")).toEqual([10]);
    expect(misfire("P0312")).toEqual([12]);
  });

  it("names none in hexadecimal digits, above twelve, or when it stands for several", () => {
    expect(misfire("P030A")).toEqual([]);
    expect(misfire("P0313", "P0314", "P0316")).toEqual([]);
    expect(readCodes(["P0300"])).toMatchObject({ misfire: [], several: true });
  });

  it("counts once however often and in whatever order it is listed", () => {
    expect(misfire("P0305", "p0302", " P0305 ")).toEqual([2, 5]);
  });

  it("of another kind of letter or owner is none", () => {
    expect(misfire("U0301", "B0301", "P1301", "P2301")).toEqual([]);
  });
});

describe("an injector code", () => {
  it.each([
    ["P0201", 1],
    ["P0212", 12],
    ["P0261", 1],
    ["P0263", 1],
    ["P0264", 2],
    ["P0279", 7],
    ["P0281", 7],
    ["P0296", 12],
  ])("%s is of cylinder %i", (code, cylinder) => {
    expect(cylinders("injector-circuit", code)).toEqual([cylinder]);
  });
});

describe("other codes", () => {
  it.each([
    ["P0171", "lean"],
    ["P0175", "rich"],
    ["P0351", "coil-circuit"],
    ["P0362", "coil-circuit"],
    ["P2300", "coil-circuit"],
    ["P2335", "coil-circuit"],
    ["P0335", "crank"],
    ["P0340", "cam"],
    ["P0017", "timing"],
    ["P0363", "fuel-cut"],
    ["P0316", "cold-start"],
    ["P0315", "not-learned"],
    ["P050D", "idle"],
  ])("%s belongs to %s", (code, option) => {
    expect([...readCodes([code]).families.keys()]).toEqual([option]);
  });

  it("name no coil's cylinders: a letter is not a cylinder", () => {
    expect(cylinders("coil-circuit", "P0352")).toEqual([]);
  });

  it("that belong to no family are left aside: a knock limit is no coil code", () => {
    expect(readCodes(["P2336", "P1301", "rubbish"]).families.size).toBe(0);
  });
});

describe.each([2, 3, 4, 5, 6])("the chance of codes on %i cylinders", (n) => {
  const everySet = Array.from({ length: randomSet(n) + 1 }, (_, set) => set);

  it("adds up to 1 over everything that may be stored, whatever really misses", () => {
    for (const real of everySet) {
      let sum = 0;
      for (let named = 0; named < 2 ** n; named++) {
        for (const several of [false, true]) sum += codesLikelihood(n, named, several)(real);
      }
      expect(Math.abs(sum - 1)).toBeLessThan(1e-12);
    }
  });

  it("is never zero", () => {
    for (const named of [0, 1, 2 ** n - 1]) {
      for (const real of everySet) expect(codesLikelihood(n, named, true)(real)).toBeGreaterThan(0);
    }
  });

  it("is largest, for the code of one cylinder alone, where that cylinder misses", () => {
    const likelihood = codesLikelihood(n, 0b10, false);
    const best = Math.max(...everySet.map(likelihood));
    expect(likelihood(0b10)).toBe(best);
  });
});
