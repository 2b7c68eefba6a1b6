// Orders, missing torque and the speed of a crankshaft with any cylinders missing.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import type { Engine } from "../../../packages/core/src/engine/engine.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import {
  firingOrderOf,
  missingTorque,
  orderHz,
  radPerSecond,
  speedDip,
  strokeWork,
} from "../../../packages/core/src/physics/crank.ts";
import {
  crankTorque,
  crankTrace,
  segments,
} from "../../../packages/core/src/physics/crank-speed.ts";
import {
  cylinderPressure,
  cylinderTorque,
  gasTorque,
  IDLING_SIX,
  inertiaTorque,
} from "../../../packages/core/src/physics/crank-torque.ts";
import { sweptVolume } from "../../../packages/core/src/physics/cylinder.ts";
import { published } from "./published-physics.ts";
import { seededNoise } from "./seeded-noise.ts";

const { compare, left } = published("crank");
afterAll(() => expect(left()).toEqual([]));

const six = resolveEngine({
  cylinders: 6,
  layout: "inline",
  firingOrder: [1, 5, 3, 6, 2, 4],
  ignition: "rail",
});
const three = resolveEngine({ cylinders: 3, firingOrder: [1, 3, 2], ignition: "coil-per-plug" });
const four = resolveEngine({ cylinders: 4, firingOrder: [1, 3, 4, 2], ignition: "pack" });
const eight = resolveEngine({
  cylinders: 8,
  layout: "v",
  firingOrder: [1, 8, 4, 3, 6, 5, 7, 2],
  ignition: "coil-per-plug",
});
const oddFire = resolveEngine({
  cylinders: 6,
  layout: "v",
  firingOrder: [1, 6, 5, 4, 3, 2],
  firingIntervals: [90, 150, 90, 150, 90, 150],
  ignition: "coil-per-plug",
});
const engines: readonly Engine[] = [three, four, six, eight, oddFire];

describe("orders", () => {
  it.each(["0.5", "1", "1.5", "2", "2.5", "3"])("%s at 750 rpm has its frequency", (order) => {
    compare(`order.${order}.750`, orderHz(Number(order), 750));
  });

  it("at which a six fires, at 1800 rpm", () => {
    compare("order.3.1800", orderHz(firingOrderOf(6), 1800));
  });
});

describe("missing torque", () => {
  const dead = {
    six: { one: [240], companions: [0, 360], 120: [0, 120], 240: [120, 360], bank: [0, 240, 480] },
    four: { companions: [180, 540], 180: [0, 180] },
    eight: { companions: [90, 450] },
  };
  const cases = Object.entries(dead).flatMap(([cylinders, sets]) =>
    Object.entries(sets).map(([name, angles]) => [cylinders, name, angles] as const),
  );

  it.each(cases)("of a %s with %s dead is as tabled", (cylinders, name, angles) => {
    const orders = cylinders === "six" ? [0.5, 1, 1.5, 2, 2.5, 3] : [0.5, 1, 1.5, 2];
    for (const o of orders) compare(`${cylinders}.${name}.${o}`, missingTorque(angles, o));
  });

  it("never exceeds the number dead and does not care where the cycle starts", () => {
    const angles = fc.array(fc.double({ min: 0, max: 720, noNaN: true }), { maxLength: 8 });
    const order = fc.integer({ min: 1, max: 12 }).map((n) => n / 2);
    fc.assert(
      fc.property(angles, order, fc.double({ min: 0, max: 720, noNaN: true }), (dead, o, turn) => {
        const f = missingTorque(dead, o);
        expect(f).toBeLessThanOrEqual(dead.length + 1e-9);
        const turned = dead.map((angle) => angle + turn);
        expect(missingTorque(turned, o)).toBeCloseTo(f, 9);
      }),
    );
  });

  it("is what the simulated torque lacks, order by order", () => {
    const healthy = crankTorque(six, IDLING_SIX, []);
    const lost = (missing: readonly number[], order: number): number =>
      harmonic(
        crankTorque(six, IDLING_SIX, missing).map((t, i) => (healthy[i] ?? 0) - t),
        order,
      );
    for (const missing of [
      [0, 5],
      [0, 4],
      [1, 2],
      [0, 1, 2],
    ]) {
      const angles = missing.map((c) => six.angles[c] ?? 0);
      for (const order of [0.5, 1, 1.5, 2, 2.5, 3]) {
        expect(lost(missing, order) / lost([3], order)).toBeCloseTo(
          missingTorque(angles, order),
          9,
        );
      }
    }
  });
});

describe("the pulses of one cylinder", () => {
  it("do the work of the mean effective pressure over a cycle", () => {
    const step = 0.1;
    const angles = Array.from({ length: 7200 }, (_, i) => (i + 0.5) * step - 360);
    const work = (strength: number): number =>
      angles.reduce((sum, a) => sum + gasTorque(IDLING_SIX, a, strength), 0) *
      ((step * Math.PI) / 180);
    const { meanPressurePa, geometry } = IDLING_SIX;
    expect(work(1) - work(0)).toBeCloseTo(strokeWork(meanPressurePa, sweptVolume(geometry)), 2);
    compare("stroke-work", strokeWork(meanPressurePa, sweptVolume(geometry)));
  });

  it("are the same before top dead centre whether it fires or not", () => {
    for (const angle of [-300, -180, -90, -1]) {
      expect(cylinderTorque(IDLING_SIX, angle, 1)).toBe(cylinderTorque(IDLING_SIX, angle, 0));
    }
    expect(cylinderPressure(IDLING_SIX, 20, 1)).toBeGreaterThan(
      cylinderPressure(IDLING_SIX, 20, 0),
    );
    expect(cylinderPressure(IDLING_SIX, 200, 1)).toBe(101_325);
  });

  it("of the moving mass give back what they take", () => {
    const sum = Array.from({ length: 720 }, (_, i) => inertiaTorque(IDLING_SIX, i)).reduce(
      (a, b) => a + b,
    );
    expect(Math.abs(sum)).toBeLessThan(1e-6);
  });
});

describe("speed", () => {
  it.each(["0.2", "0.15", "0.3"])("dips as worked out with %s kg·m²", (inertia) => {
    const workJ = strokeWork(150_000, sweptVolume(IDLING_SIX.geometry));
    compare(`dip.${inertia}`, speedDip({ workJ, inertiaKgM2: Number(inertia), rpm: 750 }));
  });

  it("lacks half orders when companions miss, and shows them when one does", () => {
    const at = (missing: readonly number[], order: number): number =>
      harmonic(crankTrace(six, IDLING_SIX, { missing, cycles: 1 }).speed, order);
    const one = at([3], 0.5);
    expect(one).toBeGreaterThan(0.5);
    // The speed is not quite linear in the torque, the rest is rounding of the step.
    expect(at([0, 5], 0.5) / one).toBeLessThan(1e-6);
    expect(at([0, 5], 1)).toBeGreaterThan(at([3], 1));
    expect(at([], 0.5) / one).toBeLessThan(1e-6);
  });

  it("keeps its mean and repeats each cycle without noise", () => {
    const { speed } = crankTrace(six, IDLING_SIX, { missing: [1], cycles: 3 });
    const square = speed.reduce((sum, ω) => sum + ω * ω, 0) / speed.length;
    expect(Math.sqrt(square)).toBeCloseTo(radPerSecond(750), 9);
    expect(speed.slice(360, 720)).toEqual(speed.slice(0, 360));
  });

  it("loses in the segment of a missing cylinder what the dip formula says", () => {
    const trace = crankTrace(six, IDLING_SIX, { missing: [3], cycles: 2 });
    const healthy = segments(six, crankTrace(six, IDLING_SIX, { missing: [], cycles: 2 }));
    const dip = radPerSecond(speedDip({ workJ: 74.8, inertiaKgM2: 0.2, rpm: 750 }));
    const lost = segments(six, trace).map((s, i) => (healthy[i]?.gainRadS ?? 0) - s.gainRadS);
    // The load is a sixth lighter, and the last third of the stroke falls into the next segment.
    expect(Math.max(...lost) / dip).toBeGreaterThan(0.6);
    expect(Math.max(...lost) / dip).toBeLessThan(1);
  });

  it.each(engines)("lets a monitor find any one or two missing: $order", (engine) => {
    for (const missing of singlesAndPairs(engine.names.length)) {
      const trace = crankTrace(engine, IDLING_SIX, { missing, cycles: 2, stepDeg: 2 });
      expect(weakest(engine, trace, missing.length), `missing ${missing}`).toEqual(missing);
    }
  });

  it("lets a monitor find a missing cylinder through noise, the same for the same seed", () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const record = (): ReturnType<typeof crankTrace> =>
        crankTrace(six, IDLING_SIX, {
          missing: [2],
          cycles: 20,
          noise: seededNoise(seed),
          strokeSpread: 0.1,
          sampleSpread: 0.001,
        });
      expect(weakest(six, record(), 1)).toEqual([2]);
      expect(record().speed).toEqual(record().speed);
    }
  });

  it("joins cycles without a jump when strokes differ", () => {
    const { speed } = crankTrace(six, IDLING_SIX, {
      missing: [],
      cycles: 10,
      noise: seededNoise(7),
      strokeSpread: 0.2,
    });
    const jumps = speed.slice(1).map((ω, i) => Math.abs(ω - (speed[i] ?? ω)));
    const atJoint = jumps.filter((_, i) => (i + 1) % 360 === 0);
    expect(Math.max(...atJoint)).toBeLessThanOrEqual(Math.max(...jumps));
    expect(Math.max(...jumps)).toBeLessThan(0.5);
  });

  it("refuses steps that do not fit and engines that stall", () => {
    expect(() => crankTrace(six, IDLING_SIX, { missing: [], cycles: 1, stepDeg: 7 })).toThrow(
      /720/,
    );
    const slow = { ...IDLING_SIX, rpm: 60, inertiaKgM2: 0.02 };
    expect(() => crankTrace(six, slow, { missing: [0, 1], cycles: 1 })).toThrow(/stalls/);
  });

  it("adds up to the time of the cycle", () => {
    const found = segments(six, crankTrace(six, IDLING_SIX, { missing: [0], cycles: 2 }));
    expect(found).toHaveLength(11);
    const first = found.filter(({ cycle }) => cycle === 0).reduce((sum, s) => sum + s.seconds, 0);
    expect(first).toBeCloseTo(0.16, 3);
    expect(found.map(({ cylinder }) => cylinder).slice(0, 6)).toEqual(six.order);
  });
});

/** Amplitude at an order of one cycle of samples. */
function harmonic(samples: Float64Array, order: number): number {
  let [re, im] = [0, 0];
  samples.forEach((value, i) => {
    const phase = (order * 4 * Math.PI * i) / samples.length;
    re += value * Math.cos(phase);
    im += value * Math.sin(phase);
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}

function singlesAndPairs(count: number): readonly (readonly number[])[] {
  const all = Array.from({ length: count }, (_, c) => c);
  return all.flatMap((a) => [[a], ...all.slice(a + 1).map((b) => [a, b])]);
}

/** A plain monitor: the cylinders whose segments gain least against those of a healthy engine. */
function weakest(
  engine: Engine,
  trace: ReturnType<typeof crankTrace>,
  count: number,
): readonly number[] {
  const gains = (t: ReturnType<typeof crankTrace>): readonly number[] => {
    const sums = new Array<number>(engine.names.length).fill(0);
    const found = segments(engine, t).filter(({ cycle }) => cycle < t.speed.length / 360 - 1);
    for (const { cylinder, gainRadS } of found) sums[cylinder] = (sums[cylinder] ?? 0) + gainRadS;
    return sums;
  };
  const cycles = (trace.speed.length * trace.stepDeg) / 720;
  const healthy = gains(crankTrace(engine, IDLING_SIX, { missing: [], cycles }));
  const loss = gains(trace).map((gain, c) => gain - (healthy[c] ?? 0));
  return [...loss.keys()]
    .sort((a, b) => (loss[a] ?? 0) - (loss[b] ?? 0))
    .slice(0, count)
    .sort((a, b) => a - b);
}
