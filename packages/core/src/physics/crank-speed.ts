// How does the crankshaft speed up and slow down when some cylinders miss? A rigid crankshaft driven by
// the torque of all cylinders; the load takes up the mean torque of each cycle, so the speed does not
// drift. Chance comes only from the draws that are passed in.
import type { Engine } from "../engine/engine.ts";
import { CYCLE_DEG } from "../engine/firing-order.ts";
import { radPerSecond } from "./crank.ts";
import { cylinderTorque, gasTorque, type Running } from "./crank-torque.ts";
import { radians } from "./cylinder.ts";

/** What to record. */
export interface Recording {
  /** Indices of cylinders that never fire. */
  readonly missing: readonly number[];
  readonly cycles: number;
  /** Crank degrees between samples; must divide 720; 2 unless given. */
  readonly stepDeg?: number;
  /** Draws with mean 0 and spread 1, from a seeded generator; no chance unless given. */
  readonly noise?: () => number;
  /** Spread of the strokes' strength, as a share; 0 unless given; 0.05–0.2 at idle (from memory). */
  readonly strokeSpread?: number;
  /** Spread of each sample of the speed, as a share; 0 unless given. */
  readonly sampleSpread?: number;
}

/** Speed of a crankshaft over whole cycles; the first sample is where the first of the order fires. */
export interface CrankTrace {
  readonly stepDeg: number;
  /** rad/s, one sample each step. */
  readonly speed: Float64Array;
}

/** From the firing of one cylinder to the next. */
export interface Segment {
  readonly cylinder: number;
  readonly cycle: number;
  readonly seconds: number;
  /** Gain of speed over the segment, rad/s; a missing cylinder loses. */
  readonly gainRadS: number;
}

/** The trace of an engine with any set of cylinders missing. Throws when the step does not fit. */
export function crankTrace(engine: Engine, running: Running, recording: Recording): CrankTrace {
  const { cycles, stepDeg = 2, noise, sampleSpread = 0 } = recording;
  const steps = CYCLE_DEG / stepDeg;
  if (!Number.isInteger(steps)) {
    throw new Error(`crankTrace: got a step of ${stepDeg}°, expected one that divides 720°.`);
  }
  const speed = new Float64Array(cycles * steps);
  const strengths = drawStrengths(engine, recording);
  const basis = torqueBasis(running, steps);
  const plain = drawStrengths(engine, { missing: recording.missing, cycles: 1 });
  const level = startLevel(running, cycleTorque(engine, basis, plain, 0));
  for (let cycle = 0; cycle < cycles; cycle++) {
    const torque = cycleTorque(engine, basis, strengths, cycle);
    speed.set(cycleSpeed(level, squareSwing(running, torque)), cycle * steps);
  }
  if (noise && sampleSpread > 0) {
    speed.forEach((ω, i) => {
      speed[i] = ω * (1 + sampleSpread * noise());
    });
  }
  return { stepDeg, speed };
}

/**
 * Total torque over one cycle with these cylinders missing, N·m, one sample a step from where the first
 * of the order fires.
 */
export function crankTorque(
  engine: Engine,
  running: Running,
  missing: readonly number[],
  stepDeg = 2,
): Float64Array {
  const strengths = drawStrengths(engine, { missing, cycles: 1 });
  return cycleTorque(engine, torqueBasis(running, CYCLE_DEG / stepDeg), strengths, 0);
}

/** The segments of a trace in the order of time; the last has no end in the trace and is left out. */
export function segments(engine: Engine, { stepDeg, speed }: CrankTrace): readonly Segment[] {
  const cycles = (speed.length * stepDeg) / CYCLE_DEG;
  const starts = Array.from({ length: cycles }, (_, cycle) =>
    engine.order.map((cylinder) => ({
      cylinder,
      cycle,
      at: Math.round((cycle * CYCLE_DEG + (engine.angles[cylinder] ?? 0)) / stepDeg),
    })),
  ).flat();
  return starts.slice(0, -1).map(({ cylinder, cycle, at }, i) => {
    const end = starts[i + 1]?.at ?? at;
    let seconds = 0;
    for (let s = at; s < end; s++) seconds += radians(stepDeg) / sampleAt(speed, s);
    return { cylinder, cycle, seconds, gainRadS: sampleAt(speed, end) - sampleAt(speed, at) };
  });
}

/** By cylinder and stroke: 0 when missing, else about 1; never below 0. */
function drawStrengths(engine: Engine, recording: Recording): readonly (readonly number[])[] {
  const { missing, cycles, noise, strokeSpread = 0 } = recording;
  // One stroke before the first cycle: its expansion may reach into the trace.
  return engine.names.map((_, cylinder) =>
    Array.from({ length: cycles + 1 }, () => {
      const drawn = noise && strokeSpread > 0 ? Math.max(0, 1 + strokeSpread * noise()) : 1;
      return missing.includes(cylinder) ? 0 : drawn;
    }),
  );
}

/** Torque of one cylinder by phase from its firing: what is always there, and what burning adds. */
interface TorqueBasis {
  readonly dead: Float64Array;
  readonly burning: Float64Array;
}

function torqueBasis(running: Running, steps: number): TorqueBasis {
  const phase = (i: number): number => {
    const degrees = (i * CYCLE_DEG) / steps;
    return degrees < CYCLE_DEG / 2 ? degrees : degrees - CYCLE_DEG;
  };
  return {
    dead: Float64Array.from({ length: steps }, (_, i) => cylinderTorque(running, phase(i), 0)),
    burning: Float64Array.from(
      { length: steps },
      (_, i) => gasTorque(running, phase(i), 1) - gasTorque(running, phase(i), 0),
    ),
  };
}

function cycleTorque(
  engine: Engine,
  { dead, burning }: TorqueBasis,
  strengths: readonly (readonly number[])[],
  cycle: number,
): Float64Array {
  const steps = dead.length;
  const torque = new Float64Array(steps);
  engine.angles.forEach((angle, cylinder) => {
    const fires = Math.round((angle * steps) / CYCLE_DEG);
    for (let i = 0; i < steps; i++) {
      const isAfterFiring = i >= fires;
      const phase = isAfterFiring ? i - fires : i - fires + steps;
      const strength = strengths[cylinder]?.[isAfterFiring ? cycle + 1 : cycle] ?? 1;
      torque[i] = sampleAt(torque, i) + sampleAt(dead, phase) + strength * sampleAt(burning, phase);
    }
  });
  return torque;
}

/**
 * Change of ω² since the start of a cycle, (rad/s)², under torque less its own mean: ½·J·ω² changes by the
 * work done. It ends where it began, so cycles join without a jump.
 */
function squareSwing({ inertiaKgM2 }: Running, torque: Float64Array): Float64Array {
  const mean = meanOf(torque);
  const step = (2 * radians(CYCLE_DEG)) / torque.length / inertiaKgM2;
  const square = new Float64Array(torque.length);
  for (let i = 1; i < torque.length; i++) {
    const middle = (sampleAt(torque, i - 1) + sampleAt(torque, i)) / 2;
    square[i] = sampleAt(square, i - 1) + step * (middle - mean);
  }
  return square;
}

/** ω² at the start of a cycle, (rad/s)², that gives it the wanted speed in the mean of ω². */
function startLevel(running: Running, torque: Float64Array): number {
  return radPerSecond(running.rpm) ** 2 - meanOf(squareSwing(running, torque));
}

/** Throws when the engine would stop within the cycle. */
function cycleSpeed(level: number, swing: Float64Array): Float64Array {
  return swing.map((change) => {
    if (level + change > 0) return Math.sqrt(level + change);
    throw new Error("crankTrace: the engine stalls; expected more speed or inertia.");
  });
}

function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function sampleAt(values: Float64Array, i: number): number {
  return values[i] ?? 0;
}
