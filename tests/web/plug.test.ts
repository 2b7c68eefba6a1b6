// Can every look of a plug be told from every other, in its drawing and in words?
import { FINDINGS } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { resolveEngine } from "../../packages/core/src/index.ts";
import { sayPlug } from "../../packages/web/src/diagram/plug.tsx";
import {
  BLISTERS,
  crustLumps,
  DROPS,
  drop,
  GLEAMS,
  gleam,
  PLUG_BOX,
  PLUG_DAMAGES,
  PLUG_GAPS,
  PLUG_LOOKS,
  plugShape,
  sootDots,
} from "../../packages/web/src/diagram/plug-geometry.ts";
import { inOrder } from "../../packages/web/src/diagram/plug-picker.tsx";

const optionsOf = (id: string): readonly string[] =>
  Object.keys(FINDINGS.find((row) => row.id === id)?.options ?? {});

describe("the drawings", () => {
  it("are of every look, damage and gap that is asked for, and of no other", () => {
    expect([...PLUG_LOOKS]).toEqual(optionsOf("plug.look"));
    expect([...PLUG_DAMAGES]).toEqual(optionsOf("plug.damage"));
    expect([...PLUG_GAPS]).toEqual(optionsOf("plug.gap"));
  });

  it("open the gap in the order of the answers", () => {
    const widths = PLUG_GAPS.map((gap) => {
      const [from, to] = plugShape("none", gap).gapLine;
      return from.y - to.y;
    });
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
    expect(new Set(widths).size).toBe(PLUG_GAPS.length);
    expect(Math.min(...widths)).toBeGreaterThan(0);
  });

  it("change the shape with every damage that changes the metal", () => {
    const shapes = (["none", "worn-round", "bent"] as const).map((damage) => {
      const { pin, strap } = plugShape(damage, "in-limit");
      return pin + strap;
    });
    expect(new Set(shapes).size).toBe(3);
    expect(plugShape("worn-round", "in-limit").worn).not.toBe("");
    expect(plugShape("none", "in-limit").worn).toBe("");
  });

  it("stay in their box", () => {
    const { x, y, width, height } = PLUG_BOX;
    for (const gap of PLUG_GAPS) {
      const points = [
        ...sootDots(gap).map((at) => ({ ...at, r: 1.3 })),
        ...crustLumps(gap),
        ...BLISTERS,
        ...GLEAMS.map((at) => ({ ...at, r: at.size })),
        ...DROPS.map((at) => ({ ...at, r: at.size * 2 })),
      ];
      for (const at of points) {
        expect(at.x - at.r).toBeGreaterThanOrEqual(x);
        expect(at.x + at.r).toBeLessThanOrEqual(x + width);
        expect(at.y - at.r).toBeGreaterThanOrEqual(y);
        expect(at.y + at.r).toBeLessThanOrEqual(y + height);
      }
      const numbers = Object.values(plugShape("none", gap)).flatMap((path) =>
        typeof path === "string" ? (path.match(/-?\d+(?:\.\d+)?/g) ?? []) : [],
      );
      expect(numbers.map(Number).every((value) => value >= y && value <= y + height)).toBe(true);
    }
  });

  it("are made of paths that hold numbers only", () => {
    const damaged = PLUG_DAMAGES.flatMap((damage) =>
      PLUG_GAPS.map((gap) => Object.values(plugShape(damage, gap)).flat()),
    ).flat();
    const paths = [
      ...damaged.filter((part) => typeof part === "string"),
      drop({ x: 1, y: 2 }, 5),
      gleam({ x: 1, y: 2 }, 5),
    ];
    expect(paths.length).toBeGreaterThan(100);
    for (const path of paths) expect(path).toMatch(/^[MLHVQCAZmlhvqcaz0-9 .-]*$/);
  });

  it("scatter soot without two dots in one place", () => {
    const dots = sootDots("in-limit");
    expect(new Set(dots.map(({ x, y }) => `${x} ${y}`)).size).toBe(dots.length);
  });
});

describe("the words", () => {
  it("differ for every look", () => {
    const words = PLUG_LOOKS.map((look) => sayPlug({ look }));
    expect(new Set([...words, sayPlug({})]).size).toBe(PLUG_LOOKS.length + 1);
  });

  it("tell everything that is drawn", () => {
    const words = sayPlug({ look: "dry-black", damage: "crack", gap: "wide" });
    expect(words).toMatch(/soot.*crack.*too wide/);
  });
});

describe("the row of plugs", () => {
  it("stands as the cylinders do, bank by bank", () => {
    const engine = resolveEngine({
      cylinders: 6,
      ignition: "rail",
      firingOrder: ["R1", "L2", "R2", "L3", "L1", "R3"],
      banks: [
        ["R1", "R2", "R3"],
        ["L1", "L2", "L3"],
      ],
    });
    expect(inOrder(engine)).toEqual(["R1", "R2", "R3", "L1", "L2", "L3"]);
  });
});
