// What does a broken engine show to somebody who watches it in order to learn? The simulator's case in every
// way of driving, what many makers' control units would store of it, and the rhythm of its shake.
import type { Engine } from "../engine/engine.ts";
import { type Place, type PlaceKind, places } from "../engine/place.ts";
import { randomOf } from "../units/random.ts";
import { type CrankRhythm, crankRhythm } from "./crank-rhythm.ts";
import { IDLING_SIX } from "./crank-torque.ts";
import { type SimulatedFault, SOUND_LOSS, simulatedFaults, simulateIfRuns } from "./simulate.ts";
import { SIMULATED_BREAKS, type SimulatedFaultId } from "./simulated-break.ts";
import { type SimulatedCodes, storeCodes } from "./simulated-code.ts";
import type { SimulatedDrive, SimulatedStretch } from "./simulated-drive.ts";
import type { SimulatedEngine } from "./simulated-engine.ts";
import { type BrokenFigure, brokenFigures } from "./simulated-figure.ts";
import { type PairFiring, pairFiring } from "./simulated-pair.ts";
import {
  SIMULATED_REGIME_NAMES,
  SIMULATED_REGIMES,
  type SimulatedRegimeName,
} from "./simulated-regime.ts";
import { lost } from "./simulated-sense.ts";

/** A place where something can be broken, and what can be broken there. */
export interface BreakablePlace {
  readonly place: Place;
  readonly faults: readonly SimulatedFaultId[];
}

/** One way of driving. Shares are of cycles, 0..1; cylinders by index. */
export interface WatchedRegime {
  readonly regime: SimulatedRegimeName;
  /** By cylinder: cycles that missed. */
  readonly share: readonly number[];
  /** By cylinder: cycles without a spark. */
  readonly dark: readonly number[];
  /** Cycles in which no coil fired at all. */
  readonly blackout: number;
  /** The double coil of the broken place, at the firing of each of its cylinders; empty without one. */
  readonly pair: readonly PairFiring[];
  readonly shake: WatchedShake;
}

/** A cycle to look at. */
export interface WatchedShake {
  /** Who misses in the cycle that is looked at. */
  readonly missing: readonly number[];
  /** They miss in more than half of all cycles, so the rhythm holds; else the cycle is one of many. */
  readonly isSteady: boolean;
  readonly rhythm: CrankRhythm;
}

/** Something that control units differ in, and the share of them, 0..1. */
export interface OfUnits<T> {
  readonly what: T;
  readonly share: number;
}

/** All of it. */
export interface Watched {
  readonly fault: SimulatedFaultId;
  readonly place: Place;
  readonly broken: readonly BrokenFigure[];
  readonly regimes: readonly WatchedRegime[];
  /** Where most strokes are lost; a warm idle where it is as bad as any. */
  readonly worst: SimulatedRegimeName;
  /** By how many of the units store it, most first. */
  readonly codes: readonly OfUnits<string>[];
  readonly lamps: readonly OfUnits<SimulatedCodes["lamp"]>[];
  /** Misses by cylinder as the first of the units counted them over the drive. */
  readonly counts: readonly number[];
  readonly units: number;
}

/** Control units asked, each by another maker. */
const UNITS = 20;
/** Misses more often than not, as the simulator's driver calls a rhythm steady. */
const STEADY = 0.5;

/** Every place of an engine at which the simulator can break something. */
export function breakablePlaces(engine: Engine): readonly BreakablePlace[] {
  const faults = simulatedFaults(engine);
  const kinds = [...new Set(faults.map((id): PlaceKind => SIMULATED_BREAKS[id].at))];
  return kinds.flatMap((kind) => {
    const here = faults.filter((id) => SIMULATED_BREAKS[id].at === kind);
    return places(engine, kind).map((place) => ({ place, faults: here }));
  });
}

/**
 * Breaks a part and watches. The same seed shows the same engine. `undefined` when no size of the break was
 * noticed and still let the engine run. Throws when the engine has no such part.
 */
export function watch(engine: Engine, fault: SimulatedFault, seed: number): Watched | undefined {
  const random = randomOf(seed);
  const broken = simulateIfRuns(engine, fault, random);
  if (!broken) return undefined;
  const { parts, drive, place } = broken;
  const units = Array.from({ length: UNITS }, () => storeCodes(parts, drive, random));
  return {
    fault: fault.fault,
    place,
    broken: brokenFigures(parts),
    regimes: SIMULATED_REGIME_NAMES.map((name) => watched(parts, place, name, drive[name])),
    worst: worstOf(drive),
    codes: tally(units.flatMap(({ codes }) => codes)),
    lamps: tally(units.map(({ lamp }) => lamp)),
    counts: units[0]?.counts ?? [],
    units: UNITS,
  };
}

function watched(
  parts: SimulatedEngine,
  place: Place,
  regime: SimulatedRegimeName,
  stretch: SimulatedStretch,
): WatchedRegime {
  const way = SIMULATED_REGIMES[regime];
  const coil = parts.engine.groups[parts.engine.groupOf[place.cylinders[0] ?? 0] ?? 0] ?? [];
  return {
    regime,
    share: stretch.share,
    dark: stretch.dark,
    blackout: stretch.blackout,
    pair: coil.flatMap((c) => pairFiring(parts, way, c) ?? []),
    shake: shakeOf(parts.engine, stretch.share),
  };
}

/** Those who miss more often than not; else the one who misses most. */
function shakeOf(engine: Engine, share: readonly number[]): WatchedShake {
  const most = Math.max(...share);
  const steady = [...share.keys()].filter((c) => (share[c] ?? 0) > STEADY);
  const one = most > SOUND_LOSS ? [share.indexOf(most)] : [];
  const missing = steady.length > 0 ? steady : one;
  return {
    missing,
    isSteady: steady.length > 0,
    rhythm: crankRhythm(engine, IDLING_SIX, missing),
  };
}

/** Where as much is lost at a warm idle as anywhere, there: it is where a hand feels it. */
function worstOf(drive: SimulatedDrive): SimulatedRegimeName {
  const most = SIMULATED_REGIME_NAMES.reduce((a, b) => (lost(drive[b]) > lost(drive[a]) ? b : a));
  return lost(drive.hotIdle) > lost(drive[most]) - SOUND_LOSS ? "hotIdle" : most;
}

function tally<T extends string>(list: readonly T[]): readonly OfUnits<T>[] {
  return [...new Set(list)]
    .map((what) => ({ what, share: list.filter((each) => each === what).length / UNITS }))
    .sort((a, b) => b.share - a.share);
}
