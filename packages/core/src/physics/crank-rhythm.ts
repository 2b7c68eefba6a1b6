// In which rhythm does an engine shake when cylinders miss? Its crankshaft's speed over one cycle, beside
// that of the sound engine, and both taken apart into orders (swings a turn) by a Fourier sum.
import type { Engine } from "../engine/engine.ts";
import { CYCLE_DEG } from "../engine/firing-order.ts";
import { firingOrderOf, orderHz } from "./crank.ts";
import { type CrankTrace, crankTrace, segments } from "./crank-speed.ts";
import type { Running } from "./crank-torque.ts";

/** How much of the speed swings in one order. */
export interface OrderSwing {
  /** Swings a turn: 0.5 is once in two turns. */
  readonly order: number;
  readonly hz: number;
  /** Amplitude of the sound engine, revolutions a minute. */
  readonly soundRpm: number;
  /** Amplitude with the cylinders missing, revolutions a minute. */
  readonly rpm: number;
}

/** What one cylinder does to the speed, from its firing to the next one's. */
export interface StrokeGain {
  readonly cylinder: number;
  readonly angleDeg: number;
  /** Revolutions a minute; a cylinder that misses loses. */
  readonly gainRpm: number;
}

/** One cycle of 720 crank degrees, from where the first of the order fires. */
export interface CrankRhythm {
  /** At the mean, revolutions a minute. */
  readonly meanRpm: number;
  readonly stepDeg: number;
  readonly soundRpm: readonly number[];
  readonly rpm: readonly number[];
  /** From half an order up to the one in which all cylinders fire. */
  readonly orders: readonly OrderSwing[];
  /** The order that grew most; `undefined` when nobody misses. */
  readonly shakes: number | undefined;
  /** In the order of firing. */
  readonly strokes: readonly StrokeGain[];
}

const STEP_DEG = 2;
const RPM_OF_RAD_S = 60 / (2 * Math.PI);

/** The rhythm with these cylinders missing. Throws when the engine would stop within the cycle. */
export function crankRhythm(
  engine: Engine,
  running: Running,
  missing: readonly number[],
): CrankRhythm {
  const sound = oneCycle(engine, running, []);
  const shaken = oneCycle(engine, running, missing);
  const orders = halfOrders(engine).map((order) => ({
    order,
    hz: orderHz(order, running.rpm),
    soundRpm: swingAt(sound.rpm, order),
    rpm: swingAt(shaken.rpm, order),
  }));
  const grown = [...orders].sort((a, b) => b.rpm - b.soundRpm - (a.rpm - a.soundRpm))[0];
  return {
    meanRpm: running.rpm,
    stepDeg: STEP_DEG,
    soundRpm: sound.rpm,
    rpm: shaken.rpm,
    orders,
    shakes: missing.length > 0 ? grown?.order : undefined,
    strokes: strokesOf(engine, shaken.trace),
  };
}

interface Cycle {
  /** Two cycles, so that the last stroke of the first has an end. */
  readonly trace: CrankTrace;
  readonly rpm: readonly number[];
}

function oneCycle(engine: Engine, running: Running, missing: readonly number[]): Cycle {
  const trace = crankTrace(engine, running, { missing, cycles: 2, stepDeg: STEP_DEG });
  const first = trace.speed.subarray(0, CYCLE_DEG / STEP_DEG);
  return { trace, rpm: Array.from(first, (ω) => ω * RPM_OF_RAD_S) };
}

function strokesOf(engine: Engine, trace: CrankTrace): readonly StrokeGain[] {
  return segments(engine, trace)
    .filter(({ cycle }) => cycle === 0)
    .map(({ cylinder, gainRadS }) => ({
      cylinder,
      angleDeg: engine.angles[cylinder] ?? 0,
      gainRpm: gainRadS * RPM_OF_RAD_S,
    }));
}

function halfOrders({ names }: Engine): readonly number[] {
  return Array.from({ length: 2 * firingOrderOf(names.length) }, (_, i) => (i + 1) / 2);
}

/** Amplitude of an order: 2/N·|Σ x·exp(−j·2π·k·i/N)| with k swings in the N samples of two turns. */
function swingAt(samples: readonly number[], order: number): number {
  let re = 0;
  let im = 0;
  samples.forEach((x, i) => {
    const turn = (2 * Math.PI * 2 * order * i) / samples.length;
    re += x * Math.cos(turn);
    im -= x * Math.sin(turn);
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}
