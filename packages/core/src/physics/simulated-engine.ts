// The parts of a made-up engine in the state they are in: what a break changes, what a swap moves, and
// what physics reads. Every figure is drawn from the spread that sound parts have.
import type { Engine } from "../engine/engine.ts";
import { firesInPairs } from "../engine/firing-group.ts";
import type { Random } from "../units/random.ts";
import { wornGap } from "./wear.ts";

/** Insulation and contact of one piece of a high-voltage path. */
export interface SimulatedPath {
  /** What jumps over to ground instead of going on, V, dry; `Infinity` when sound. */
  arcV: number;
  /** Share of that left when wet. */
  wetShare: number;
  /** Extra voltage that a break in the conductor takes, V; `Infinity` when nothing jumps it. */
  breakV: number;
}

export interface SimulatedPlug extends SimulatedPath {
  gapM: number;
  /** What rounded edges do to the need; 1 new. */
  edge: number;
  /** Soot, oil: resistance across the nose when cold; `Infinity` when clean. */
  shuntOhm: number;
  mark: "none" | "crack" | "track" | "worn-round" | "bent";
}

export interface SimulatedCoil {
  /** Energy against a sound coil at the same current. */
  strength: number;
  /** Share of cycles without output, cold and hot. */
  offCold: number;
  offHot: number;
}

/** The low-voltage side of a coil. */
export interface SimulatedControl {
  /** Share of cycles without a trigger, by shaking from 0 to 1: still + shaken × shaking. */
  still: number;
  shaken: number;
  /** Where it breaks. */
  at?: "pin" | "wire" | "driver";
}

export interface SimulatedInjector {
  /** Dose against a sound one. */
  dose: number;
  /** Drips when shut, kg/s. */
  leakKgS: number;
  /** Its winding or its plug is open: a circuit test sees it. */
  isOpen: boolean;
}

export interface SimulatedCylinder {
  valveM2: number;
  ringM2: number;
  /** Unmetered air into its runner. */
  runnerM2: number;
  /** Which valve leaks. */
  leaksTo: "intake" | "exhaust";
}

/** All parts; arrays by cylinder, by coil or by connector. */
export interface SimulatedEngine {
  readonly engine: Engine;
  readonly plugs: SimulatedPlug[];
  readonly boots: SimulatedPath[];
  readonly leads: SimulatedPath[];
  /** Distributor cap post or coil tower. */
  readonly towers: SimulatedPath[];
  /** Inside the coil, from winding to tower. */
  readonly coilLegs: SimulatedPath[];
  readonly wellWater: number[];
  readonly bootHigh: boolean[];
  readonly rotor: SimulatedPath;
  readonly coils: SimulatedCoil[];
  readonly controls: SimulatedControl[];
  /** By connector: share of cycles that its feed fails at full shaking. */
  readonly feeds: SimulatedControl[];
  readonly connectorLock: ("clicks" | "broken" | "loose")[];
  readonly injectors: SimulatedInjector[];
  readonly cylinders: SimulatedCylinder[];
  /** Leaks between two neighbours. */
  readonly gaskets: { readonly pair: readonly [number, number]; areaM2: number }[];
  hoseM2: number;
  fuelPressure: number;
  /** Most that the pump delivers against what full load takes. */
  pumpFlow: number;
  /** Resistance in the common feed of the coils, and how often it opens. */
  feedOhm: number;
  readonly supply: SimulatedControl;
  /** Share of cycles without a crank signal, hot. */
  crankOffHot: number;
  /** Which leg's centre electrode is positive. */
  readonly reversed: readonly boolean[];
  readonly energyJ: number;
  readonly capacitanceF: number;
  readonly plugKm: number;
  readonly nominalGapM: number;
}

/** Energy and capacitance within the tables of trade handbooks (from memory), by kind of ignition. */
export const COILS = {
  distributor: { energyJ: 0.06, capacitanceF: 95e-12 },
  pack: { energyJ: 0.07, capacitanceF: 90e-12 },
  rail: { energyJ: 0.07, capacitanceF: 75e-12 },
  hybrid: { energyJ: 0.07, capacitanceF: 82e-12 },
  "coil-per-plug": { energyJ: 0.06, capacitanceF: 60e-12 },
} as const;

/** Plugs within their limit have grown by no more (about a fifth to a quarter of the gap). */
const GROWTH_LIMIT_M = 0.2e-3;

/** A number between two bounds, evenly. */
export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random.uniform();
}

/** A number between two bounds, even in its logarithm: for things that spread over decades. */
export function betweenLog(random: Random, low: number, high: number): number {
  return low * (high / low) ** random.uniform();
}

/** An engine whose plugs have run so far and nothing is broken. */
export function soundEngine(engine: Engine, plugKm: number, random: Random): SimulatedEngine {
  const { figures } = engine.profile;
  const nominalGapM = (figures?.plugGapMm?.[0] ?? between(random, 0.8, 1)) / 1000;
  const electrode = figures?.plugElectrode ?? "double-platinum";
  const wear = wornGap({ newGapM: nominalGapM, electrode, ignition: engine.ignition }, plugKm);
  const coil = COILS[engine.ignition];
  const all = engine.names;
  const path = (): SimulatedPath => ({ arcV: Infinity, wetShare: 1, breakV: 0 });
  return {
    engine,
    plugs: all.map(() => ({
      ...path(),
      // A set past its limit is a fault of its own.
      gapM: Math.min(between(random, wear.low, wear.high), nominalGapM + GROWTH_LIMIT_M),
      edge: 1 + 0.12 * Math.min(1, plugKm / 4000) * random.uniform(),
      shuntOhm: Infinity,
      mark: "none" as const,
    })),
    boots: all.map(path),
    leads: all.map(path),
    towers: all.map(path),
    coilLegs: all.map(path),
    wellWater: all.map(() => 0),
    bootHigh: all.map(() => false),
    rotor: path(),
    coils: engine.groups.map(() => ({
      strength: between(random, 0.92, 1.08),
      offCold: 0,
      offHot: 0,
    })),
    controls: engine.groups.map(() => ({ still: 0, shaken: 0 })),
    feeds: engine.connectors.map(() => ({ still: 0, shaken: 0 })),
    connectorLock: engine.connectors.map(() => "clicks" as const),
    injectors: all.map(() => ({ dose: between(random, 0.97, 1.03), leakKgS: 0, isOpen: false })),
    cylinders: all.map(() => ({
      valveM2: between(random, 0, 0.4e-6),
      ringM2: between(random, 0, 0.6e-6),
      runnerM2: 0,
      leaksTo: "exhaust" as const,
    })),
    gaskets: [],
    hoseM2: 0,
    fuelPressure: 1,
    pumpFlow: 1.4,
    feedOhm: 0,
    supply: { still: 0, shaken: 0 },
    crankOffHot: 0,
    // Fixed by the coil: the first of each pair gets the negative end.
    reversed: all.map((_, c) => firesInPairs(engine.ignition) && isSecond(engine, c)),
    energyJ: coil.energyJ * between(random, 0.93, 1.07),
    capacitanceF: coil.capacitanceF * between(random, 0.93, 1.07),
    plugKm,
    nominalGapM,
  };
}

function isSecond({ groups, groupOf }: Engine, cylinder: number): boolean {
  return groups[groupOf[cylinder] ?? 0]?.[1] === cylinder;
}
