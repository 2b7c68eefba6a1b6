// Does a field for a measured figure refuse what the library refuses, and say the bounds in the unit of the person?
import { checkFindings, FINDINGS, profileById } from "@half-order/core";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { boundsOf, readFigure, sayBounds, unitOf } from "../../packages/web/src/state/bounds.ts";
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
