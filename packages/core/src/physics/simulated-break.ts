// How is each fault broken into the parts? The size of every break is drawn from what is physically
// possible, not from how often a fault is met.
import type { PlaceKind } from "../engine/place.ts";
import type { Build } from "../engine/profile.ts";
import type { Random } from "../units/random.ts";
import {
  between,
  betweenLog,
  type SimulatedEngine,
  type SimulatedPath,
} from "./simulated-engine.ts";
import type { SimulatedStoryName } from "./simulated-story.ts";

/** How a fault is made. */
export interface SimulatedBreak extends Build {
  readonly at: PlaceKind;
  readonly story: SimulatedStoryName;
  /** Ignitions on which the part exists, as the build; all unless given. */
  readonly suits?: readonly string[];
  /** Changes the parts of the cylinders given. */
  readonly apply: (parts: SimulatedEngine, cylinders: readonly number[], random: Random) => void;
}

const PAIRED = ["pack", "rail", "hybrid"];

/** A fifth of what a cylinder of half a litre takes at idle, kg/s: an idle that rich soots (from memory). */
const SOOTING_KG_S = 0.013e-3;

function one<Part>(list: readonly Part[], cylinders: readonly number[]): Part {
  return list[cylinders[0] ?? 0] as Part;
}

function coilOf(parts: SimulatedEngine, cylinders: readonly number[]): number {
  return parts.engine.groupOf[cylinders[0] ?? 0] ?? 0;
}

/** Insulation that breaks down at a voltage, less when wet. */
function leak(path: SimulatedPath, arcV: number, wetShare: number): void {
  path.arcV = arcV;
  path.wetShare = wetShare;
}

/** A winding that is dead, or dies when hot. */
function fail(parts: SimulatedEngine, coil: number, random: Random): void {
  const part = parts.coils[coil];
  if (!part) return;
  const isHard = random.uniform() < 0.6;
  part.offHot = isHard ? 1 : between(random, 0.3, 1);
  part.offCold = isHard ? 1 : part.offHot * between(random, 0, 0.3);
}

export const SIMULATED_BREAKS = {
  "plug.gap-worn": {
    at: "leg",
    story: "wear",
    apply: (parts, at, random) => {
      const plug = one(parts.plugs, at);
      plug.gapM = parts.nominalGapM + between(random, 0.35e-3, 1.1e-3);
      plug.edge = between(random, 1.08, 1.25);
      plug.mark = "worn-round";
    },
  },
  "plug.set-worn": {
    at: "set",
    story: "wear",
    apply: (parts, _, random) => {
      const worn = between(random, 0.35e-3, 1e-3);
      for (const plug of parts.plugs) {
        plug.gapM = parts.nominalGapM + worn * between(random, 0.85, 1.15);
        plug.edge = between(random, 1.08, 1.25);
        plug.mark = "worn-round";
      }
    },
  },
  "plug.gap-wrong": {
    at: "leg",
    story: "plug-work",
    apply: (parts, at, random) => {
      const plug = one(parts.plugs, at);
      const isClosed = random.uniform() < 0.6;
      plug.gapM = isClosed ? between(random, 0.1e-3, 0.45e-3) : between(random, 1.6e-3, 2.6e-3);
      plug.mark = "bent";
    },
  },
  "plug.cracked": {
    at: "leg",
    story: "plug-work",
    apply: (parts, at, random) => {
      leak(one(parts.plugs, at), between(random, 3e3, 16e3), between(random, 0.6, 1));
      one(parts.plugs, at).mark = "crack";
    },
  },
  "plug.flashover": {
    at: "leg",
    story: "ageing",
    apply: (parts, at, random) => {
      leak(one(parts.plugs, at), between(random, 7e3, 20e3), between(random, 0.45, 0.7));
      one(parts.plugs, at).mark = "track";
    },
  },
  "plug.fouled": {
    at: "leg",
    story: "short-trips",
    apply: (parts, at, random) => {
      one(parts.plugs, at).shuntOhm = betweenLog(random, 20e3, 1e6);
    },
  },
  "boot.leaking": {
    at: "leg",
    story: "ageing",
    apply: (parts, at, random) => {
      // A pinhole with two to seven millimetres of air to the wall of the well.
      leak(one(parts.boots, at), between(random, 6e3, 20e3), between(random, 0.35, 0.7));
    },
  },
  "boot.no-contact": {
    at: "leg",
    story: "handling",
    apply: (parts, at, random) => {
      one(parts.boots, at).breakV = random.uniform() < 0.3 ? Infinity : between(random, 4e3, 22e3);
      parts.bootHigh[at[0] ?? 0] = random.uniform() < 0.6;
    },
  },
  "well.water": {
    at: "leg",
    story: "water",
    apply: (parts, at, random) => {
      parts.wellWater[at[0] ?? 0] = between(random, 0.4, 1.2);
    },
  },
  "lead.open": {
    at: "lead",
    story: "ageing",
    apply: (parts, at, random) => {
      one(parts.leads, at).breakV = random.uniform() < 0.25 ? Infinity : between(random, 5e3, 24e3);
    },
  },
  "lead.leaking": {
    at: "lead",
    story: "ageing",
    apply: (parts, at, random) => {
      leak(one(parts.leads, at), between(random, 7e3, 24e3), between(random, 0.3, 0.6));
    },
  },
  "coil.half-dead": {
    at: "coil",
    story: "sudden",
    suits: PAIRED,
    apply: (parts, at, random) => fail(parts, coilOf(parts, at), random),
  },
  "coil.leg-leaks": {
    at: "leg",
    story: "ageing",
    suits: PAIRED,
    apply: (parts, at, random) => leak(one(parts.coilLegs, at), between(random, 2e3, 15e3), 1),
  },
  "coil.weak": {
    at: "coil",
    story: "ageing",
    suits: PAIRED,
    apply: (parts, at, random) => {
      const coil = parts.coils[coilOf(parts, at)];
      if (coil) coil.strength = between(random, 0.12, 0.6);
    },
  },
  "coil.single-dead": {
    at: "coil",
    story: "sudden",
    suits: ["coil-per-plug"],
    apply: (parts, at, random) => fail(parts, coilOf(parts, at), random),
  },
  "coil.distributor": {
    at: "coil",
    story: "ageing",
    suits: ["distributor"],
    apply: (parts, _, random) => {
      const coil = parts.coils[0];
      if (coil) coil.strength = between(random, 0.15, 0.6);
    },
  },
  "connector.loose": {
    at: "connector",
    story: "handling",
    switching: "electronic",
    apply: (parts, at, random) => {
      const k = parts.engine.connectors.findIndex(({ cylinders }) =>
        cylinders.includes(at[0] ?? 0),
      );
      const groups = [...new Set(at.map((c) => parts.engine.groupOf[c] ?? 0))];
      const fret = {
        still: between(random, 0, 0.02),
        shaken: between(random, 0.15, 0.8),
        at: "pin",
      } as const;
      // Any of its pins may fret: the feed, or the trigger of one coil.
      const pin = random.choice([1, ...groups.map(() => 1)]);
      if (pin === 0) parts.feeds[k] = fret;
      else parts.controls[groups[pin - 1] ?? 0] = fret;
      parts.connectorLock[k] = random.uniform() < 0.5 ? "broken" : "loose";
    },
  },
  "supply.low": {
    at: "engine",
    story: "ageing",
    apply: (parts, _, random) => {
      // A corroded contact is a resistance; a worn relay or switch also opens for moments.
      parts.feedOhm = betweenLog(random, 0.2, 2.5);
      if (random.uniform() < 0.5) {
        parts.supply.still = betweenLog(random, 0.01, 0.15);
        parts.supply.shaken = between(random, 0, 0.2);
      }
    },
  },
  "driver.dead": {
    at: "coil",
    story: "sudden",
    // With one coil for all the engine would not run.
    suits: [...PAIRED, "coil-per-plug"],
    apply: (parts, at) => {
      parts.controls[coilOf(parts, at)] = { still: 1, shaken: 0, at: "driver" };
    },
  },
  "trigger-wire.broken": {
    at: "coil",
    story: "sudden",
    switching: "electronic",
    apply: (parts, at, random) => {
      const isParted = random.uniform() < 0.35;
      const still = isParted ? 1 : between(random, 0, 0.25);
      const shaken = between(random, 0.3, 0.9);
      parts.controls[coilOf(parts, at)] = { still, shaken, at: "wire" };
    },
  },
  "cap.cracked": {
    at: "leg",
    story: "ageing",
    suits: ["distributor"],
    apply: (parts, at, random) => {
      leak(one(parts.towers, at), between(random, 7e3, 22e3), between(random, 0.3, 0.55));
    },
  },
  "rotor.leaking": {
    at: "engine",
    story: "ageing",
    suits: ["distributor"],
    apply: (parts, _, random) => {
      leak(parts.rotor, between(random, 8e3, 20e3), between(random, 0.5, 0.8));
    },
  },
  "injector.dead": {
    at: "cylinder",
    story: "sudden",
    fuelling: "injection",
    apply: (parts, at, random) => {
      const injector = one(parts.injectors, at);
      injector.dose = 0;
      injector.isOpen = random.uniform() < 0.75;
    },
  },
  "injector.clogged": {
    at: "cylinder",
    story: "slow",
    fuelling: "injection",
    apply: (parts, at, random) => {
      one(parts.injectors, at).dose = between(random, 0.4, 0.82);
    },
  },
  "injector.leaking": {
    at: "cylinder",
    story: "slow",
    fuelling: "injection",
    apply: (parts, at, random) => {
      const injector = one(parts.injectors, at);
      // From a drop in ten seconds to a trickle.
      injector.leakKgS = betweenLog(random, 0.003e-3, 0.15e-3);
      const nose = betweenLog(random, 80e3, 5e6);
      // Wet petrol and its soot sit on the nose where the idle is rich by it; a drip tells after a stop.
      if (injector.leakKgS > SOOTING_KG_S) one(parts.plugs, at).shuntOhm = nose;
    },
  },
  "fuel.pressure-low": {
    at: "engine",
    story: "slow",
    apply: (parts, _, random) => {
      // While little is wanted the regulator holds, or nearly. What a tired pump, a blocked filter or a thin
      // feed cannot give is missing when much is wanted (common practice).
      parts.fuelPressure = between(random, 0.7, 1);
      parts.pumpFlow = between(random, 0.35, 0.95);
    },
  },
  "intake.runner-leak": {
    at: "cylinder",
    story: "slow",
    apply: (parts, at, random) => {
      one(parts.cylinders, at).runnerM2 = betweenLog(random, 1e-6, 12e-6);
    },
  },
  "intake.hose-leak": {
    at: "engine",
    story: "ageing",
    apply: (parts, _, random) => {
      parts.hoseM2 = betweenLog(random, 4e-6, 60e-6);
    },
  },
  "valve.leaking": {
    at: "cylinder",
    story: "slow",
    apply: (parts, at, random) => {
      const cylinder = one(parts.cylinders, at);
      cylinder.valveM2 = betweenLog(random, 3e-6, 30e-6);
      cylinder.leaksTo = random.uniform() < 0.7 ? "exhaust" : "intake";
    },
  },
  "gasket.between-cylinders": {
    at: "neighbours",
    story: "heat",
    apply: (parts, at, random) => {
      const [a = 0, b = 0] = at;
      parts.gaskets.push({ pair: [a, b], areaM2: betweenLog(random, 5e-6, 30e-6) });
    },
  },
  "rings.worn": {
    at: "cylinder",
    story: "slow",
    apply: (parts, at, random) => {
      one(parts.cylinders, at).ringM2 = betweenLog(random, 3e-6, 25e-6);
      one(parts.plugs, at).shuntOhm = betweenLog(random, 300e3, 5e6);
    },
  },
  "crank-sensor.weak": {
    at: "engine",
    story: "ageing",
    switching: "electronic",
    fuelling: "injection",
    apply: (parts, _, random) => {
      parts.crankOffHot = between(random, 0.02, 0.25);
    },
  },
} as const satisfies Record<string, SimulatedBreak>;

export type SimulatedFaultId = keyof typeof SIMULATED_BREAKS;
