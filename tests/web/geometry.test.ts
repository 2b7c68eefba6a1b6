// Does the dial show what is true of the engine?
import { allProfiles, type EngineProfile, resolveEngine } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { blockPlan } from "../../packages/web/src/diagram/block-geometry.ts";
import {
  coilLie,
  discRadius,
  filled,
  gap,
  PITCH_ASKED,
  pointAt,
  RADIUS,
  seats,
} from "../../packages/web/src/diagram/geometry.ts";

const engineOf = (profile: EngineProfile) => resolveEngine(profile);
const all = allProfiles().map((profile) => [profile.id ?? "", engineOf(profile)] as const);
const distance = (a: { x: number; y: number }, b: { x: number; y: number }): number =>
  Math.hypot(a.x - b.x, a.y - b.y);

describe("a seat on the dial", () => {
  it("is on top for 0°, on the right for 180°, below for 360°", () => {
    expect(pointAt(0, 100)).toEqual({ x: 0, y: -100 });
    expect(pointAt(180, 100)).toEqual({ x: 100, y: 0 });
    expect(pointAt(360, 100)).toEqual({ x: 0, y: 100 });
  });

  it.each(all)("of a companion faces its own across the centre: %s", (_, engine) => {
    const places = seats(engine.angles);
    engine.companions.forEach((companion, cylinder) => {
      if (
        companion === undefined ||
        gap(engine.angles[cylinder] ?? 0, engine.angles[companion] ?? 0) !== 360
      ) {
        return;
      }
      const [a, b] = [places[cylinder]?.at, places[companion]?.at];
      expect((a?.x ?? 0) + (b?.x ?? 0)).toBeCloseTo(0, 1);
      expect((a?.y ?? 0) + (b?.y ?? 0)).toBeCloseTo(0, 1);
    });
  });

  it.each(all)("never touches another: %s", (_, engine) => {
    const places = seats(engine.angles);
    const radius = discRadius(places);
    expect(radius).toBeGreaterThan(12);
    places.forEach(({ at: a }, i) => {
      for (const { at: b } of places.slice(i + 1))
        expect(distance(a, b)).toBeGreaterThan(2 * radius);
    });
  });

  it("leaves room for fingers with sixteen cylinders on a narrow phone", () => {
    const angles = Array.from({ length: 16 }, (_, i) => i * 45);
    const [a, b] = seats(angles, PITCH_ASKED);
    const scale = 328 / 412;
    expect(distance(a?.at ?? pointAt(0, 0), b?.at ?? pointAt(0, 0)) * scale).toBeGreaterThan(48);
  });
});

describe("a coil on the dial", () => {
  it("goes through the centre when it fires exact companions", () => {
    const engine = engineOf({ cylinders: 4, ignition: "rail", firingOrder: [1, 3, 4, 2] });
    const lie = coilLie(engine, engine.groups[0] ?? [], 24);
    expect(lie.kind).toBe("bar");
    if (lie.kind !== "bar") return;
    expect(lie.from.x + lie.to.x).toBeCloseTo(0, 1);
    expect(lie.from.y + lie.to.y).toBeCloseTo(0, 1);
  });

  it("misses the centre on an engine that fires unevenly", () => {
    const engine = engineOf({
      cylinders: 6,
      layout: "v",
      ignition: "pack",
      firingOrder: [1, 6, 5, 4, 3, 2],
      firingIntervals: [90, 150, 90, 150, 90, 150],
      pairingToleranceDeg: 30,
    });
    const lie = coilLie(engine, engine.groups[0] ?? [], 24);
    if (lie.kind !== "bar") throw new Error("expected a bar");
    const middle = { x: (lie.from.x + lie.to.x) / 2, y: (lie.from.y + lie.to.y) / 2 };
    expect(distance(middle, { x: 0, y: 0 })).toBeGreaterThan(3);
  });

  it("sits on one plug of each pair of a hybrid, in the centre of a distributor", () => {
    const order = { cylinders: 4, firingOrder: [1, 3, 4, 2] } as const;
    const hybrid = engineOf({ ...order, ignition: "hybrid" });
    for (const group of hybrid.groups) {
      const lie = coilLie(hybrid, group, 24);
      expect(lie.kind === "cross" && lie.ends.length).toBe(1);
    }
    const distributor = engineOf({ ...order, ignition: "distributor" });
    expect(coilLie(distributor, distributor.groups[0] ?? [], 24).kind).toBe("centre");
  });
});

describe("a disc", () => {
  it("is empty at 0, whole at 1, and half full at a half", () => {
    expect(filled({ x: 0, y: 0 }, 20, 0)).toBe("");
    expect(filled({ x: 0, y: 0 }, 20, 1)).toContain("a20 20");
    expect(filled({ x: 0, y: 0 }, 20, 0.5)).toBe("M-20 0A20 20 0 0 0 20 0Z");
  });

  it("lies within the ring of degrees", () => {
    expect(RADIUS.pitch + 24).toBeLessThan(RADIUS.scale);
  });
});

describe("the block", () => {
  it.each(all)("gives each cylinder a place of its own: %s", (_, engine) => {
    const { at, width, height } = blockPlan(engine);
    expect(new Set(at.map(({ x, y }) => `${x} ${y}`)).size).toBe(engine.names.length);
    for (const { x, y } of at) {
      expect(x > 0 && x < width && y > 0 && y < height).toBe(true);
    }
  });

  it("tells a V from a flat engine", () => {
    const [v, flat] = (["v", "flat"] as const).map((layout) =>
      blockPlan(
        resolveEngine({ cylinders: 6, layout, ignition: "rail", firingOrder: [1, 4, 5, 2, 3, 6] }),
      ),
    );
    expect(v?.arms).not.toBe("");
    expect(flat?.arms).toBe("");
    expect(flat?.height).toBeGreaterThan(v?.height ?? Number.POSITIVE_INFINITY);
  });
});
