// Charging, dwell and available voltage against published coils, and against the circuit stepped through
// time.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import {
  availableVolts,
  chargingCurrent,
  chargingTime,
  damping,
  distributorDwell,
  dwellTime,
  finalCurrent,
  inducedVolts,
  sparkPeriod,
  storedEnergy,
  timeConstant,
} from "../../../packages/core/src/physics/coil.ts";
import { published } from "./published-physics.ts";

const { compare, left } = published("coil");
afterAll(() => expect(left()).toEqual([]));

const MS = 1000;

describe("charging", () => {
  it("follows the worked problem of a textbook", () => {
    const loop = { supplyV: 12, loopOhm: 4, inductanceH: 0.006 };
    compare("final-current", finalCurrent(loop));
    compare("energy", storedEnergy(0.006, finalCurrent(loop)) * 1000);
    compare("induced", inducedVolts(0.006, 3, 1e-6) / 1000);
    compare("time-constant", timeConstant(loop) * MS);
  });

  it("follows the currents measured on a points coil", () => {
    const loop = { supplyV: 4.45 * 2.6, loopOhm: 2.6, inductanceH: 2.6e-3 * 2.6 };
    compare("charge.5ms", chargingCurrent(loop, 5e-3));
    compare("charge.3.3ms", chargingCurrent(loop, 3.3e-3));
  });

  it("follows a coil that was 90 % charged in 4.4 ms", () => {
    const τ = 4.4e-3 / Math.LN10;
    const loop = { supplyV: 1, loopOhm: 1, inductanceH: τ };
    compare("ninety-percent", timeConstant(loop) * MS);
    expect(chargingTime(loop, 0.9)).toBeCloseTo(4.4e-3, 12);
    compare("charge.4ms", chargingCurrent(loop, 4e-3));
  });

  it.each([14, 12, 10])("takes longer on a weak battery: %s V", (supplyV) => {
    const loop = { supplyV, loopOhm: 0.7, inductanceH: 3.5e-3 };
    compare(`to-7.5A.${supplyV}V`, (chargingTime(loop, 7.5) ?? 0) * MS);
    compare("energy-7.5A", storedEnergy(loop.inductanceH, 7.5) * 1000);
  });

  it("never comes to what the resistance does not let through", () => {
    const loop = { supplyV: 12, loopOhm: 4, inductanceH: 0.006 };
    expect(chargingTime(loop, 3)).toBeUndefined();
    expect(chargingTime(loop, 4)).toBeUndefined();
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 2.999, noNaN: true }), (current) => {
        const t = chargingTime(loop, current) ?? Number.NaN;
        expect(chargingCurrent(loop, t)).toBeCloseTo(current, 9);
        expect(chargingCurrent(loop, t * 1.1)).toBeGreaterThan(current);
      }),
    );
  });
});

describe("dwell", () => {
  it.each([1000, 2000, 3000])("of 30° lasts as published at %s rpm", (rpm) => {
    compare(`dwell.30.${rpm}`, distributorDwell(30, rpm) * MS);
  });

  it("at 5000 rpm is as published", () => {
    compare("dwell.60.5000", distributorDwell(60, 5000) * MS);
    compare("dwell.35.5000", distributorDwell(35, 5000) * MS);
    const duty = { ignition: "distributor", rpm: 5000 } as const;
    compare("period.4.5000", sparkPeriod({ ...duty, cylinders: 4 }) * MS);
    compare("period.6.5000", sparkPeriod({ ...duty, cylinders: 6 }) * MS);
  });

  it.each([1000, 3000, 6000])("by ignition kind at %s rpm", (rpm) => {
    const six = { cylinders: 6, rpm };
    compare(`dwell.six.${rpm}`, dwellTime({ ...six, ignition: "distributor" }) * MS);
    for (const ignition of ["pack", "rail", "hybrid"] as const) {
      compare(`double.${rpm}`, sparkPeriod({ ...six, ignition }) * MS);
    }
    compare(`own.${rpm}`, sparkPeriod({ ...six, ignition: "coil-per-plug" }) * MS);
  });

  it("leaves out the time that the spark burns, down to nothing", () => {
    const duty = { ignition: "rail", cylinders: 6, rpm: 6000 } as const;
    expect(dwellTime(duty, { sparkS: 1.5e-3 })).toBeCloseTo(8.5e-3, 12);
    expect(dwellTime(duty, { sparkS: 1 })).toBe(0);
    expect(dwellTime({ ...duty, ignition: "distributor" }, { share: 0.5 })).toBeCloseTo(
      1 / 600,
      12,
    );
  });
});

describe("available voltage", () => {
  const secondary = { energyJ: 0.036, capacitanceF: 80e-12, inductanceH: 20 };

  it("without a leak is all energy in the capacitance", () => {
    compare(
      "available.30mJ",
      availableVolts({ energyJ: 0.03, efficiency: 0.5, capacitanceF: 75e-12 }) / 1000,
    );
    compare(
      "available.60mJ",
      availableVolts({ energyJ: 0.06, efficiency: 0.6, capacitanceF: 80e-12 }) / 1000,
    );
    compare("leak.none", availableVolts(secondary) / 1000);
  });

  it.each(["10", "1", "0.5", "0.2", "0.1"])("over a leak of %s MΩ is as worked out", (mega) => {
    const leakOhm = Number(mega) * 1e6;
    const volts = availableVolts(secondary, leakOhm);
    compare(`leak.${mega}`, volts / 1000);
    expect(volts / steppedPeak(secondary, leakOhm)).toBeCloseTo(1, 5);
  });

  it("passes critical damping without a jump", () => {
    const critical = Math.sqrt(secondary.inductanceH / secondary.capacitanceF) / 2;
    expect(damping(secondary, critical)).toBeCloseTo(1, 12);
    const at = availableVolts(secondary, critical) / availableVolts(secondary);
    expect(at).toBeCloseTo(Math.exp(-1), 9);
    for (const side of [1 - 1e-6, 1 + 1e-6]) {
      const near = availableVolts(secondary, critical * side) / availableVolts(secondary);
      expect(near).toBeCloseTo(at, 5);
    }
  });

  it("falls as the leak grows, from all to nothing", () => {
    const leak = fc.double({ min: 1e3, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(leak, fc.double({ min: 1.01, max: 10, noNaN: true }), (ohm, factor) => {
        const volts = availableVolts(secondary, ohm);
        expect(volts).toBeGreaterThan(0);
        expect(volts).toBeLessThan(availableVolts(secondary, ohm * factor));
        expect(volts).toBeLessThan(availableVolts(secondary));
      }),
    );
    expect(availableVolts(secondary, Number.POSITIVE_INFINITY)).toBe(availableVolts(secondary));
    expect(availableVolts(secondary, 0)).toBe(0);
  });
});

/** First peak of winding, capacitance and leak in parallel, by Runge and Kutta's rule. */
function steppedPeak(
  {
    energyJ,
    capacitanceF,
    inductanceH,
  }: Required<Record<"energyJ" | "capacitanceF" | "inductanceH", number>>,
  leakOhm: number,
): number {
  const slope = ([i, v]: readonly [number, number]): [number, number] => [
    -v / inductanceH,
    (i - v / leakOhm) / capacitanceF,
  ];
  const h = Math.min(Math.sqrt(inductanceH * capacitanceF), leakOhm * capacitanceF) / 500;
  let [i, v] = [Math.sqrt((2 * energyJ) / inductanceH), 0];
  for (;;) {
    const a = slope([i, v]);
    const b = slope([i + (h / 2) * a[0], v + (h / 2) * a[1]]);
    const c = slope([i + (h / 2) * b[0], v + (h / 2) * b[1]]);
    const d = slope([i + h * c[0], v + h * c[1]]);
    const next = v + (h / 6) * (a[1] + 2 * b[1] + 2 * c[1] + d[1]);
    if (next < v) return v;
    i += (h / 6) * (a[0] + 2 * b[0] + 2 * c[0] + d[0]);
    v = next;
  }
}
