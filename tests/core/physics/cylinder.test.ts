// Piston, volume and squeezed charge against worked numbers.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { IDLING_SIX } from "../../../packages/core/src/physics/crank-torque.ts";
import {
  chargeAt,
  clearanceVolume,
  compress,
  cylinderVolume,
  effectiveCompressionRatio,
  pistonTravel,
  sweptVolume,
  travelCurvature,
  travelSlope,
} from "../../../packages/core/src/physics/cylinder.ts";
import { published } from "./published-physics.ts";

const { compare, left } = published("cylinder");
afterAll(() => expect(left()).toEqual([]));

const { geometry } = IDLING_SIX;
const CM3 = 1e6;

describe("the crank-slider", () => {
  it("has the volumes of the drawing", () => {
    compare("swept", sweptVolume(geometry) * CM3);
    compare("six", sweptVolume(geometry) * 6 * 1000);
    compare("clearance", clearanceVolume(geometry) * CM3);
    compare("volume.15", cylinderVolume(geometry, 15) * CM3);
    compare("ratio.15", cylinderVolume(geometry, 180) / cylinderVolume(geometry, -15));
  });

  it.each([15, 30, 60, 90])("is where it should be at %s°", (angle) => {
    compare(`travel.${angle}`, pistonTravel(geometry, angle) * 1000);
    expect(pistonTravel(geometry, -angle)).toBeCloseTo(pistonTravel(geometry, angle), 12);
  });

  it("goes from nothing to the whole stroke, and has the slopes of its curve", () => {
    expect(pistonTravel(geometry, 0)).toBe(0);
    expect(pistonTravel(geometry, 180)).toBeCloseTo(geometry.strokeM, 12);
    const h = 0.01;
    const perRadian = 180 / Math.PI / (2 * h);
    fc.assert(
      fc.property(fc.double({ min: -360, max: 360, noNaN: true }), (angle) => {
        const rise = pistonTravel(geometry, angle + h) - pistonTravel(geometry, angle - h);
        const bend = travelSlope(geometry, angle + h) - travelSlope(geometry, angle - h);
        expect(travelSlope(geometry, angle)).toBeCloseTo(rise * perRadian, 8);
        expect(travelCurvature(geometry, angle)).toBeCloseTo(bend * perRadian, 8);
      }),
    );
  });

  it("squeezes less when the inlet shuts late", () => {
    expect(effectiveCompressionRatio(geometry, 0)).toBeCloseTo(10.5, 12);
    const late = effectiveCompressionRatio(geometry, 60);
    expect(late).toBeGreaterThan(7.5);
    expect(late).toBeLessThan(9.5);
  });
});

describe("a squeezed charge", () => {
  it("reads on the gauge as published", () => {
    const { pressurePa: psi } = compress({ pressurePa: 14.7, temperatureK: 300 }, 7.5);
    compare("cranking-absolute", psi);
    compare("cranking-gauge", psi - 14.7);
    compare("power.10.5", compress({ pressurePa: 1, temperatureK: 1 }, 10.5).pressurePa);
    compare("power.8", compress({ pressurePa: 1, temperatureK: 1 }, 8).pressurePa);
  });

  it("has the worked pressure and temperature at the spark", () => {
    const at = (pressurePa: number) => chargeAt(geometry, { pressurePa, temperatureK: 330 }, -15);
    compare("idle.pressure", at(35_000).pressurePa / 1e5);
    compare("full.pressure", at(98_000).pressurePa / 1e5);
    compare("temperature", at(98_000).temperatureK);
  });

  it("keeps to the gas law and rises towards the top", () => {
    fc.assert(
      fc.property(fc.double({ min: -179, max: -1, noNaN: true }), (angle) => {
        const charge = { pressurePa: 1e5, temperatureK: 330 };
        const now = chargeAt(geometry, charge, angle);
        const then = chargeAt(geometry, charge, angle + 0.5);
        const amount = (now.pressurePa * cylinderVolume(geometry, angle)) / now.temperatureK;
        expect(amount / ((1e5 * cylinderVolume(geometry, 180)) / 330)).toBeCloseTo(1, 10);
        expect(then.pressurePa).toBeGreaterThan(now.pressurePa);
      }),
    );
  });

  it("starts from where it was closed in", () => {
    const charge = { pressurePa: 1e5, temperatureK: 330, closedDeg: 120 };
    expect(chargeAt(geometry, charge, 120).pressurePa).toBe(1e5);
    expect(chargeAt(geometry, charge, 0).pressurePa).toBeLessThan(
      chargeAt(geometry, { pressurePa: 1e5, temperatureK: 330 }, 0).pressurePa,
    );
  });
});
