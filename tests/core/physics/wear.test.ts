// Gap against distance.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import {
  distanceToGap,
  GAP_GROWTH_M_PER_KM,
  type PlugLife,
  wornElectrode,
  wornGap,
} from "../../../packages/core/src/physics/wear.ts";
import { published } from "./published-physics.ts";

const { compare, left } = published("wear");
afterAll(() => expect(left()).toEqual([]));

const nickel: PlugLife = { newGapM: 1.1e-3, electrode: "nickel", ignition: "coil-per-plug" };

describe("a nickel plug", () => {
  it("grows as published", () => {
    compare("nickel.30000km", (wornGap(nickel, 30_000).likely - nickel.newGapM) * 1000);
    compare("nickel.low", GAP_GROWTH_M_PER_KM.nickel.low * 10_000 * 1000);
  });

  it("reaches its limit where the booklet's rate puts it", () => {
    compare("nickel.1.4mm", distanceToGap(nickel, 1.4e-3).likely);
    compare("nickel.1.5mm", distanceToGap(nickel, 1.5e-3).likely);
  });
});

describe("any plug", () => {
  const life = fc.record({
    newGapM: fc.double({ min: 0.5e-3, max: 1.5e-3, noNaN: true }),
    electrode: fc.constantFrom(
      ...(["nickel", "platinum", "double-platinum", "iridium", "other"] as const),
    ),
    ignition: fc.constantFrom(
      ...(["distributor", "pack", "rail", "hybrid", "coil-per-plug"] as const),
    ),
  });
  const km = fc.double({ min: 1, max: 200_000, noNaN: true });

  it("widens with distance, low before likely before high, and there and back agree", () => {
    fc.assert(
      fc.property(life, km, (plug, distance) => {
        const gap = wornGap(plug, distance);
        expect(gap.low).toBeLessThan(gap.likely);
        expect(gap.likely).toBeLessThan(gap.high);
        expect(wornGap(plug, distance * 1.1).low).toBeGreaterThan(gap.low);
        expect(distanceToGap(plug, gap.likely).likely / distance).toBeCloseTo(1, 6);
        expect(distanceToGap(plug, gap.high).low / distance).toBeCloseTo(1, 6);
      }),
    );
  });

  it("wears no slower on a double coil than on one of its own", () => {
    fc.assert(
      fc.property(life, km, (plug, distance) => {
        const own = wornGap({ ...plug, ignition: "coil-per-plug" }, distance);
        const double = wornGap({ ...plug, ignition: "rail" }, distance);
        expect(double.low).toBe(own.low);
        expect(double.likely).toBeGreaterThan(own.likely);
        expect(double.high - plug.newGapM).toBeCloseTo(2 * (own.high - plug.newGapM), 12);
      }),
    );
  });

  it("that is there already has nowhere to go", () => {
    expect(distanceToGap(nickel, 1e-3)).toEqual({ low: 0, likely: 0, high: 0 });
  });

  it("wears where the electrons leave", () => {
    expect(wornElectrode(false)).toBe("centre");
    expect(wornElectrode(true)).toBe("ground");
  });
});
