// Does a field for a measured figure refuse what the library refuses, and say the bounds in the unit of the person?
import { checkFindings, FINDINGS, profileById } from "@half-order/core";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  boundsOf,
  readElsewhere,
  readFigure,
  sayBounds,
  unitOf,
} from "../../packages/web/src/state/bounds.ts";
import { chooseUnit, sayFigure, UNITS, units } from "../../packages/web/src/state/unit.ts";

const SEED = { seed: 20261128 };
const tern = profileById("demo.tern");
if (!tern) throw new Error("no engine");
const measured = FINDINGS.flatMap((row) => (row.reading ? [{ row, reading: row.reading }] : []));
const gap = boundsOf(
  measured.find(({ row }) => row.id === "plug.gap")?.reading ?? {
    unit: "",
    steps: [],
    possible: [0, 0],
  },
);

beforeEach(() => {
  vi.stubGlobal("navigator", { language: "en-GB" });
  chooseUnit("gap", "mm");
});
afterEach(() => vi.unstubAllGlobals());

describe("a figure that was typed", () => {
  it("is refused where the library refuses it, and only there", () => {
    expect(measured.length).toBeGreaterThan(5);
    fc.assert(
      fc.property(
        fc.constantFrom(...measured),
        fc.double({ min: -10_000, max: 10_000, noNaN: true }).map((n) => Number(n.toFixed(2))),
        ({ row, reading }, value) => {
          const bounds = boundsOf(reading);
          // In the unit of the library, so that both see the same number.
          if (bounds.quantity) chooseUnit(bounds.quantity, UNITS[bounds.quantity][0]);
          const given = { finding: row.id, answer: value };
          const cylinder = row.scope === "engine" ? {} : { cylinder: 1 };
          const problems = checkFindings(tern, [{ ...given, ...cylinder }]);
          const isRefused = problems.some(({ code }) => code === "reading-impossible");
          expect(readFigure(String(value), bounds, "en") === undefined).toBe(isRefused);
        },
      ),
      { ...SEED, numRuns: 400 },
    );
  });

  it.each([
    ["mm", "110"],
    ["mm", "-3"],
    ["thou", "900"],
    ["thou", "-3"],
    // Inches: 44 thou were meant.
    ["thou", "0.044"],
    ["mm", "wide"],
  ] as const)("is no gap in %s: %s", (unit, text) => {
    chooseUnit("gap", unit);
    expect(readFigure(text, gap, "en")).toBeUndefined();
  });

  it.each([
    ["mm", "1.1", 1.1],
    ["mm", "0", 0],
    ["thou", "0", 0],
    ["thou", "44", 1.1176],
  ] as const)("is a gap in %s: %s", (unit, text, stored) => {
    chooseUnit("gap", unit);
    expect(readFigure(text, gap, "en")).toBe(stored);
  });
});

describe("the bounds", () => {
  it("are told in the unit of the person, with an example in it", () => {
    expect(sayBounds(gap, "en")).toBe("Write a number from 0 to 5 mm, such as 0.9.");
    chooseUnit("gap", "thou");
    const words = sayBounds(gap, "en");
    expect(words).toContain("from 0 to 196.8 thou, such as 35.4.");
    expect(words).toContain("1 thou is a thousandth of an inch");
  });

  it("can be typed as they are told, in every unit", () => {
    for (const { reading } of measured) {
      const bounds = boundsOf(reading);
      for (const unit of bounds.quantity ? UNITS[bounds.quantity] : [undefined]) {
        if (bounds.quantity && unit) chooseUnit(bounds.quantity, unit);
        const told = [...sayBounds(bounds, "en").matchAll(/-?[\d,.]*\d/g)].slice(0, 3);
        expect(told.length).toBeGreaterThanOrEqual(2);
        for (const [figure] of told) {
          expect(readFigure(figure, bounds, "en"), `${figure} ${unitOf(bounds)}`).toBeDefined();
        }
      }
    }
  });

  it("hold a figure that the page itself shows", () => {
    chooseUnit("gap", "thou");
    expect(readFigure(sayFigure(44, units.value.gap, "en"), gap, "en")).toBe(1.1176);
  });
});

describe("a figure that was rather read in another unit", () => {
  const boundsOfRow = (id: string) => {
    const reading = measured.find(({ row }) => row.id === id)?.reading;
    if (!reading) throw new Error(id);
    return boundsOf(reading);
  };

  it.each([
    ["plug.gap", "gap", "thou", "1.2", "mm"],
    ["plug.gap", "gap", "thou", "0.9", "mm"],
    // Worn far beyond what is common.
    ["plug.gap", "gap", "thou", "1.6", "mm"],
    ["plug.gap", "gap", "mm", "44", "thou"],
    ["compression", "pressure", "psi", "12", "bar"],
    ["compression", "pressure", "psi", "1200", "kPa"],
    ["compression", "pressure", "bar", "170", "psi"],
    ["compression", "pressure", "kPa", "170", "psi"],
    ["compression", "pressure", "kPa", "12", "bar"],
  ] as const)("of %s, %s in %s: %s is %s", (id, quantity, unit, text, meant) => {
    chooseUnit(quantity, unit);
    const elsewhere = readElsewhere(text, boundsOfRow(id), "en");
    expect(elsewhere?.unit).toBe(meant);
    chooseUnit(quantity, meant);
    expect(readFigure(text, boundsOfRow(id), "en")).toBe(elsewhere?.stored);
  });

  it.each([
    ["plug.gap", "gap", "mm", "1.2"],
    ["plug.gap", "gap", "mm", "0"],
    ["plug.gap", "gap", "mm", "3"],
    ["plug.gap", "gap", "thou", "44"],
    ["plug.gap", "gap", "thou", "60"],
    // Pressed shut.
    ["plug.gap", "gap", "thou", "5"],
    ["compression", "pressure", "psi", "170"],
    // A dead cylinder.
    ["compression", "pressure", "psi", "30"],
    ["compression", "pressure", "psi", "0"],
    ["compression", "pressure", "bar", "2"],
    ["plug.gap", "gap", "mm", "wide"],
  ] as const)("is none of %s, %s in %s: %s", (id, quantity, unit, text) => {
    chooseUnit(quantity, unit);
    expect(readElsewhere(text, boundsOfRow(id), "en")).toBeUndefined();
  });

  it("is told of what is refused where nothing is common, and of what is not by the range of the manual", () => {
    const torque = { within: [1, 100], quantity: "torque", unit: "N·m" } as const;
    chooseUnit("torque", "lb·ft");
    expect(readElsewhere("90", torque, "en")?.unit).toBe("N·m");
    expect(readElsewhere("25", torque, "en")).toBeUndefined();
    expect(readElsewhere("25", { ...torque, usual: [20, 25] }, "en")?.unit).toBe("N·m");
    expect(readElsewhere("18", { ...torque, usual: [20, 25] }, "en")).toBeUndefined();
  });
});
