// Does somebody who watches a broken engine see what the simulator says, and the rhythm that the mechanics
// of crankshafts demand?
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allProfiles, profileById } from "../../../packages/core/src/engine/profile-library.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import { missingTorque } from "../../../packages/core/src/physics/crank.ts";
import { crankRhythm } from "../../../packages/core/src/physics/crank-rhythm.ts";
import { IDLING_SIX } from "../../../packages/core/src/physics/crank-torque.ts";
import { simulate } from "../../../packages/core/src/physics/simulate.ts";
import type { SimulatedFaultId } from "../../../packages/core/src/physics/simulated-break.ts";
import { soundEngine } from "../../../packages/core/src/physics/simulated-engine.ts";
import { brokenFigures } from "../../../packages/core/src/physics/simulated-figure.ts";
import {
  SIMULATED_REGIME_NAMES,
  SIMULATED_REGIMES,
} from "../../../packages/core/src/physics/simulated-regime.ts";
import { sparkNeeds } from "../../../packages/core/src/physics/simulated-spark.ts";
import { breakablePlaces, watch } from "../../../packages/core/src/physics/simulated-watch.ts";
import { randomOf } from "../../../packages/core/src/units/random.ts";
import { relabelledProfile } from "../../helper/relabel.ts";

function engineOf(id: string) {
  const profile = profileById(id);
  if (!profile) throw new Error(`no profile ${id}`);
  return resolveEngine(profile);
}

const SIX = engineOf("generic.i6.153624.pack");
const KINDS = [
  "generic.i4.1342.distributor",
  "generic.i4.1342.pack",
  "generic.v6.123456.hybrid",
  "generic.i3.132.coil-per-plug",
].map(engineOf);

function placeOf(engine: typeof SIX, id: string) {
  const found = breakablePlaces(engine).find(({ place }) => place.id === id);
  if (!found) throw new Error(`no place ${id}`);
  return found.place;
}

function watched(engine: typeof SIX, fault: SimulatedFaultId, id: string, seed = 3) {
  const seen = watch(engine, { fault, place: placeOf(engine, id) }, seed);
  if (!seen) throw new Error(`${fault} at ${id} was not noticed`);
  return seen;
}

describe("what is watched", () => {
  it.each(KINDS.map((engine) => [engine.profile.id, engine] as const))(
    "on %s is the case of the simulator, at every kind of place",
    (_, engine) => {
      const all = breakablePlaces(engine);
      const kinds = [...new Set(all.map(({ place }) => place.kind))];
      for (const kind of kinds) {
        const { place, faults } = all.findLast(
          (each) => each.place.kind === kind,
        ) as (typeof all)[0];
        const fault = faults[0] as SimulatedFaultId;
        const seen = watch(engine, { fault, place }, 11);
        const drive = simulate(engine, { fault, place }, randomOf(11)).drive;
        expect(seen?.regimes.map(({ regime }) => regime)).toEqual(SIMULATED_REGIME_NAMES);
        for (const { regime, share, dark, blackout } of seen?.regimes ?? []) {
          expect(share).toEqual(drive[regime].share);
          expect(dark).toEqual(drive[regime].dark);
          expect(blackout).toBe(drive[regime].blackout);
        }
        expect(seen?.broken.length, `${fault} at ${place.id}`).toBeGreaterThan(0);
      }
    },
  );

  it("strikes nobody whom the break leaves as it was, and looks where it takes most", () => {
    const eight = engineOf("generic.v8.18436572.pack");
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const seen = watched(eight, "plug.gap-worn", "leg 3", seed);
      for (const { struck, share, cycles } of seen.regimes) {
        expect([[], [2]]).toContainEqual(struck);
        expect(cycles).toHaveLength(24);
        for (const c of struck) expect(share[c]).toBeGreaterThan(0.03);
      }
      const most = Math.max(...seen.regimes.map(({ share }) => share[2] ?? 0));
      const worst = seen.regimes.find(({ regime }) => regime === seen.worst);
      expect(worst?.share[2]).toBeGreaterThanOrEqual(0.9 * most);
    }
  });

  it("names no figure of an engine in which nothing is broken", () => {
    for (const engine of KINDS)
      for (const km of [100, 30_000, 110_000])
        expect(brokenFigures(soundEngine(engine, km, randomOf(km)))).toEqual([]);
  });

  it("says that an engine does not run when its only coil has no driver", () => {
    const two = engineOf("generic.i2.12.rail");
    expect(
      watch(two, { fault: "driver.dead", place: placeOf(two, "coil 1+2") }, 1),
    ).toBeUndefined();
  });

  it("has codes of the cylinders that drop out, from nearly all makers", () => {
    const { codes, counts, regimes } = watched(SIX, "driver.dead", "coil 1+6");
    expect(regimes.every(({ share }) => share[0] === 1 && share[5] === 1)).toBe(true);
    expect(codes[0]).toEqual({ what: "P0300", share: 1 });
    const named = codes.filter(({ what }) => /^P030[1-9]$/.test(what));
    expect(named.map(({ what }) => what).sort()).toEqual(["P0301", "P0306"]);
    expect(counts[0]).toBeGreaterThan(20 * (counts[1] ?? 0));
  });
});

describe("the circuit of a double coil", () => {
  it("dies with both plugs when one leg is open, with one when a leg is shorted", () => {
    const shorted = watched(SIX, "coil.leg-leaks", "leg 1").regimes.find(
      ({ regime }) => regime === "pull",
    );
    const [one, six] = shorted?.pair ?? [];
    expect(one?.legs.map(({ cylinder, sparks }) => [cylinder, sparks])).toEqual([
      [0, false],
      [5, true],
    ]);
    expect(six?.legs[0]).toMatchObject({ cylinder: 5, sparks: true, stroke: "compression" });
    const open = Array.from({ length: 20 }, (_, seed) =>
      watched(SIX, "boot.no-contact", "leg 1", seed),
    ).find(({ broken }) => broken[0]?.value === Number.POSITIVE_INFINITY);
    for (const { pair } of open?.regimes ?? []) {
      for (const { legs, neededV } of pair) {
        expect(neededV).toBeUndefined();
        expect(legs.map(({ sparks }) => sparks)).toEqual([false, false]);
      }
    }
    expect(open).toBeDefined();
  });

  it("passes no gap by where nothing leaks, however far the coil falls short", () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const rows = watched(SIX, "plug.gap-worn", "leg 1", seed).regimes;
      const firings = rows.flatMap(({ pair }) => pair);
      expect(firings.flatMap(({ legs }) => legs.map(({ state }) => state))).not.toContain(
        "shorted",
      );
      for (const { legs, neededV, availableV } of firings)
        expect(legs.map(({ sparks }) => sparks)).toEqual(
          legs.map(() => (neededV ?? Number.POSITIVE_INFINITY) <= availableV),
        );
    }
  });

  it("needs more volts for a wider gap with all else the same", () => {
    // Both published fits (see breakdown.ts) grow with the gap; so must what lies beyond their range.
    const parts = soundEngine(SIX, 30_000, randomOf(5));
    for (const way of Object.values(SIMULATED_REGIMES)) {
      let before = 0;
      for (let gapM = 0.3e-3; gapM < 2.6e-3; gapM += 0.05e-3) {
        for (const plug of parts.plugs) plug.gapM = gapM;
        const needed = sparkNeeds(parts, way).plugV[0] ?? 0;
        expect(needed).toBeGreaterThan(before);
        before = needed;
      }
    }
  });

  it("has one plug of each pair reversed, and both legs add up", () => {
    const { regimes } = watched(SIX, "plug.gap-worn", "leg 2");
    for (const { pair } of regimes) {
      expect(pair.map(({ legs }) => legs[0].cylinder).sort()).toEqual([1, 4]);
      for (const { legs, neededV } of pair) {
        expect(legs.filter(({ isReversed }) => isReversed)).toHaveLength(1);
        expect(legs[0].plugV + legs[1].plugV).toBeCloseTo(neededV ?? 0, 6);
        expect(legs[0].plugV).toBeGreaterThan(legs[1].plugV);
      }
    }
  });

  it("is not there where each plug has its own coil", () => {
    const three = engineOf("generic.i3.132.coil-per-plug");
    expect(watched(three, "plug.gap-worn", "leg 2").regimes[0]?.pair).toEqual([]);
  });
});

describe("the rhythm of the shake", () => {
  // Phase-vector sums of the orders of torsional excitation: W. Ker Wilson, Practical Solution of Torsional
  // Vibration Problems, and J. P. Den Hartog, Mechanical Vibrations, chapter 5 (both from memory). Two
  // torques 360° apart cancel at every half order and add at every whole one.
  it("of 1 and 6 on one coil of an inline six is once a turn, and no half order", () => {
    const { regimes } = watched(SIX, "driver.dead", "coil 1+6");
    const shake = regimes.find(({ regime }) => regime === "hotIdle")?.shake;
    expect(shake?.missing).toEqual([0, 5]);
    expect(shake?.isSteady).toBe(true);
    expect(shake?.rhythm.shakes).toBe(1);
    const rpm = new Map(shake?.rhythm.orders.map(({ order, rpm }) => [order, rpm]));
    expect(rpm.get(1)).toBeGreaterThan(10);
    for (const half of [0.5, 1.5, 2.5])
      expect(rpm.get(half)).toBeLessThan(0.05 * (rpm.get(1) ?? 0));
    expect(missingTorque([0, 360], 0.5)).toBeCloseTo(0, 9);
    expect(missingTorque([0, 360], 1)).toBeCloseTo(2, 9);
  });

  it("of one dead cylinder is once in two turns, on every evenly firing engine of three and more", () => {
    const even = allProfiles().filter(
      ({ id, cylinders, firingIntervals }) =>
        cylinders > 2 && !firingIntervals && id?.endsWith("coil-per-plug"),
    );
    expect(even.length).toBeGreaterThan(8);
    for (const profile of even) {
      const engine = resolveEngine(profile);
      const { shakes, orders } = crankRhythm(engine, IDLING_SIX, [1]);
      expect(shakes, profile.id).toBe(0.5);
      // Evenly firing and whole, it swings in no order below that of its firing.
      for (const { order, soundRpm } of orders)
        if (order < engine.names.length / 2)
          expect(soundRpm, `${profile.id} ${order}`).toBeLessThan(1e-6);
    }
  });

  it("grows in each low order as the sum of the missing torques does", () => {
    // To first order the swing of speed is that of torque over its order, so pairs compare by their sums.
    const alone = crankRhythm(SIX, IDLING_SIX, [0]).orders;
    for (const missing of [
      [0, 1],
      [0, 2],
      [1, 3],
      [0, 5],
      [2, 3],
    ]) {
      const angles = missing.map((c) => SIX.angles[c] ?? 0);
      const { orders } = crankRhythm(SIX, IDLING_SIX, missing);
      orders.slice(0, 3).forEach(({ order, rpm }, i) => {
        const expected = (alone[i]?.rpm ?? 0) * missingTorque(angles, order);
        expect(Math.abs(rpm - expected), `${missing} ${order}`).toBeLessThan(
          0.06 * (alone[0]?.rpm ?? 0),
        );
      });
    }
  });

  it("shows a loss of speed after each firing that is missed, and a gain after the others", () => {
    const { strokes } = crankRhythm(SIX, IDLING_SIX, [0, 5]);
    expect(strokes.map(({ cylinder }) => cylinder)).toEqual(SIX.order);
    for (const { cylinder, gainRpm } of strokes)
      expect(gainRpm < 0).toBe([0, 5].includes(cylinder));
  });

  it("can be had of every engine of the library with any cylinders in a row dead", () => {
    const byAngles = new Map(
      allProfiles()
        .map(resolveEngine)
        .map((engine) => [engine.angles.join(), engine]),
    );
    for (const engine of byAngles.values()) {
      engine.order.forEach((_, start) => {
        const inARow = [...engine.order.slice(start), ...engine.order.slice(0, start)];
        for (let dead = 1; dead <= inARow.length; dead++) {
          const { rpm } = crankRhythm(engine, IDLING_SIX, inARow.slice(0, dead));
          expect(
            rpm.every((speed) => speed > 0),
            engine.profile.id,
          ).toBe(true);
        }
      });
    }
  });
});

describe("names", () => {
  it("change nothing but the names, whatever the cylinders are called", () => {
    // Draws are dealt in the order of counting, which new names keep where there is one bank.
    const inOneRow = KINDS.filter(({ banks }) => banks.length === 1);
    fc.assert(
      fc.property(
        fc.constantFrom(...inOneRow, SIX),
        fc.nat(200),
        fc.integer({ min: 1, max: 1000 }),
        (engine, pick, seed) => {
          const called = (name: string | number) => `K${name}`;
          const other = resolveEngine(relabelledProfile(engine.profile, called));
          const [all, same] = [breakablePlaces(engine), breakablePlaces(other)];
          const i = pick % all.length;
          const [{ place, faults }, twin] = [all[i], same[i]] as [(typeof all)[0], (typeof all)[0]];
          const fault = faults[pick % faults.length] as SimulatedFaultId;
          expect(twin.place.cylinders.map((c) => other.names[c])).toEqual(
            place.cylinders.map((c) => called(engine.names[c] as number)),
          );
          const one = watch(engine, { fault, place }, seed);
          const two = watch(other, { fault, place: twin.place }, seed);
          expect({ ...two, place }).toEqual({ ...one, place });
        },
      ),
      { seed: 20, numRuns: 12 },
    );
  });

  it("that are dealt anew go with the cylinders: who shares a dead coil, and who misses", () => {
    const to = (name: string | number) => [5, 3, 1, 6, 2, 4][Number(name) - 1] as number;
    const other = resolveEngine(relabelledProfile(SIX.profile, to));
    for (const { place, faults } of breakablePlaces(SIX)) {
      if (!faults.includes("driver.dead")) continue;
      const renamed = place.cylinders.map((c) => to(SIX.names[c] as number)).sort();
      const one = watched(SIX, "driver.dead", place.id);
      const two = watched(other, "driver.dead", `coil ${renamed.join("+")}`);
      one.regimes.forEach(({ shake }, i) => {
        const names = (two.regimes[i]?.shake.missing ?? []).map((c) => other.names[c]);
        expect(names.sort()).toEqual(shake.missing.map((c) => to(SIX.names[c] as number)).sort());
      });
    }
  });
});
