// Where the speed of the crankshaft lies on its drawing: 720 degrees across, revolutions a minute upwards.
import type { CrankRhythm } from "@half-order/core/physics";

export const TRACE = { width: 360, height: 190, left: 34, right: 6, top: 30, bottom: 22 } as const;

const CYCLE_DEG = 720;

export interface TracePlan {
  readonly x: (angleDeg: number) => number;
  readonly y: (rpm: number) => number;
  readonly sound: string;
  readonly broken: string;
  /** Speeds that get a number at the side: lowest, mean, highest. */
  readonly ticks: readonly number[];
}

/** Both lines on one scale. */
export function tracePlan({ soundRpm, rpm, stepDeg, meanRpm }: CrankRhythm): TracePlan {
  const all = [...soundRpm, ...rpm];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const inner = { width: TRACE.width - TRACE.left - TRACE.right };
  const x = (angleDeg: number): number => round(TRACE.left + (inner.width * angleDeg) / CYCLE_DEG);
  const y = (speed: number): number =>
    round(
      TRACE.top +
        (TRACE.height - TRACE.top - TRACE.bottom) * ((high - speed) / Math.max(high - low, 1e-9)),
    );
  const path = (samples: readonly number[]): string =>
    // The cycle ends where it began.
    [...samples, samples[0] ?? meanRpm]
      .map((speed, i) => `${i === 0 ? "M" : "L"}${x(i * stepDeg)} ${y(speed)}`)
      .join("");
  return { x, y, sound: path(soundRpm), broken: path(rpm), ticks: [low, meanRpm, high] };
}

/** The speed at a crank angle, revolutions a minute. */
export function speedAt({ rpm, stepDeg, meanRpm }: CrankRhythm, angleDeg: number): number {
  return rpm[Math.round(angleDeg / stepDeg) % rpm.length] ?? meanRpm;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
