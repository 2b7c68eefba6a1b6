// What does a broken engine show to somebody who watches it in order to learn? The simulator's case in every
// way of driving, what many makers' control units would store of it, and the rhythm of its shake.
import type { Engine } from "../engine/engine.ts";
import { type Place, type PlaceKind, places } from "../engine/place.ts";
import { randomOf } from "../units/random.ts";
import { type CrankRhythm, crankRhythm } from "./crank-rhythm.ts";
import { IDLING_SIX } from "./crank-torque.ts";
import { type SimulatedFault, SOUND_LOSS, simulatedFaults, simulateIfRuns } from "./simulate.ts";
import { SIMULATED_BREAKS, type SimulatedFaultId } from "./simulated-break.ts";
import { COUNTED_REGIMES, type SimulatedCodes, storeCodes } from "./simulated-code.ts";
import type { SimulatedDrive, SimulatedStretch } from "./simulated-drive.ts";
import type { SimulatedEngine } from "./simulated-engine.ts";
import { type BrokenFigure, brokenFigures } from "./simulated-figure.ts";
import { type PairFiring, pairFiring } from "./simulated-pair.ts";
import {
  SIMULATED_REGIME_NAMES,
  SIMULATED_REGIMES,
  type SimulatedRegimeName,
} from "./simulated-regime.ts";

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
  /** Who misses clearly more than before the break. */
  readonly struck: readonly number[];
  /** Some cycles in a row, those most like the whole stretch: who missed in each. */
  readonly cycles: readonly (readonly number[])[];
  /** By cylinder: air over what burning needs; `Infinity` without fuel. */
  readonly lambda: readonly number[];
  /** What the control unit adds to the fuel of all, −0.25..0.25. */
  readonly trim: number;
  /** False in the first seconds after a start, which are shorter than any window of the monitor. */
  readonly isCounted: boolean;
  /** The double coil of the broken place, at the firing of each of its cylinders; empty without one. */
  readonly pair: readonly PairFiring[];
  readonly shake: WatchedShake;
}

/** A cycle to look at. */
export interface WatchedShake {
  /** Who misses in the cycle that is looked at; nobody also where by chance it is all together, a jerk without rhythm. */
  readonly missing: readonly number[];
  /** They miss in all cycles or nearly, so the rhythm holds; else the cycle is one of many. */
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
  /** Where the break takes most strokes; a warm idle where it is as bad as any. */
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
/** With fewer misses in a hundred than 95 strokes that burn break the rhythm, and it is chance that is felt. */
const STEADY = 0.95;
/** A warm idle that loses this share of the most that is lost anywhere is as good to watch. */
const AS_BAD = 0.9;
/** Cycles in a row that are shown: at idle about four seconds. */
const SHOWN_CYCLES = 24;

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
  const { parts, drive, soundDrive, place } = broken;
  const units = Array.from({ length: UNITS }, () => storeCodes(parts, drive, random));
  return {
    fault: fault.fault,
    place,
    broken: brokenFigures(parts),
    regimes: SIMULATED_REGIME_NAMES.map((name) =>
      watched(parts, place, name, { now: drive[name], sound: soundDrive[name] }),
    ),
    worst: worstOf(drive, soundDrive),
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
  { now, sound }: { readonly now: SimulatedStretch; readonly sound: SimulatedStretch },
): WatchedRegime {
  const way = SIMULATED_REGIMES[regime];
  const coil = parts.engine.groups[parts.engine.groupOf[place.cylinders[0] ?? 0] ?? 0] ?? [];
  return {
    regime,
    share: now.share,
    dark: now.dark,
    blackout: now.blackout,
    struck: struckIn(now, sound),
    cycles: mostLikeAll(now),
    lambda: now.mixture.lambda,
    trim: now.mixture.trim,
    isCounted: COUNTED_REGIMES.includes(regime),
    pair: coil.flatMap((c) => pairFiring(parts, way, c) ?? []),
    shake: shakeOf(parts.engine, now, struckIn(now, sound)),
  };
}

/** Beyond three standard deviations of the difference between two counts, at least by what is usual. */
function struckIn(now: SimulatedStretch, sound: SimulatedStretch): readonly number[] {
  return [...now.share.keys()].filter((c) => {
    const before = sound.share[c] ?? 0;
    const p = Math.max(before, SOUND_LOSS);
    const deviation = Math.sqrt((2 * p * (1 - p)) / now.cycles);
    return (now.share[c] ?? 0) - before > Math.max(SOUND_LOSS, 3 * deviation);
  });
}

function mostLikeAll({ missed }: SimulatedStretch): readonly (readonly number[])[] {
  const count = (cycles: readonly (readonly number[])[]): number => cycles.flat().length;
  const usual = (count(missed) * SHOWN_CYCLES) / missed.length;
  const windows = Array.from({ length: missed.length - SHOWN_CYCLES + 1 }, (_, i) =>
    missed.slice(i, i + SHOWN_CYCLES),
  );
  const off = windows.map((cycles) => Math.abs(count(cycles) - usual));
  return windows[off.indexOf(Math.min(...off))] ?? [];
}

/** Those of the struck who always miss; else who misses in the most frequent of the cycles in which any does. */
function shakeOf(
  engine: Engine,
  { share, missed }: SimulatedStretch,
  struck: readonly number[],
): WatchedShake {
  const steady = struck.filter((c) => (share[c] ?? 0) >= STEADY);
  const missing = steady.length > 0 ? steady : usualMisses(engine, missed, struck);
  return {
    missing,
    isSteady: steady.length > 0,
    rhythm: crankRhythm(engine, IDLING_SIX, missing),
  };
}

function usualMisses(
  engine: Engine,
  missed: readonly (readonly number[])[],
  struck: readonly number[],
): readonly number[] {
  const counts = new Map<string, number>();
  for (const cycle of missed) {
    const who = cycle.filter((c) => struck.includes(c));
    if (who.length === 0) continue;
    counts.set(who.join(), (counts.get(who.join()) ?? 0) + 1);
  }
  const [usual] = [...counts].sort(([, a], [, b]) => b - a);
  const who = usual?.[0].split(",").map(Number) ?? [];
  return who.length < engine.names.length ? who : [];
}

/** Where about as much is lost by the break at a warm idle as anywhere, there: it is where a hand feels it. */
function worstOf(drive: SimulatedDrive, sound: SimulatedDrive): SimulatedRegimeName {
  const taken = (name: SimulatedRegimeName): number =>
    struckIn(drive[name], sound[name]).reduce((sum, c) => sum + (drive[name].share[c] ?? 0), 0);
  const most = SIMULATED_REGIME_NAMES.reduce((a, b) => (taken(b) > taken(a) ? b : a));
  return taken("hotIdle") >= AS_BAD * taken(most) ? "hotIdle" : most;
}

function tally<T extends string>(list: readonly T[]): readonly OfUnits<T>[] {
  return [...new Set(list)]
    .map((what) => ({ what, share: list.filter((each) => each === what).length / UNITS }))
    .sort((a, b) => b.share - a.share);
}
