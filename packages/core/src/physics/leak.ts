// Do the cylinders seal? Leak-down, compression and starter-current arithmetic. Pressures may be in any
// one unit, gauge, since only their ratios count.

/** Share of the supply that a cylinder lets through, 0..1: 1 − P₂/P₁ (FAA AC 43.13-1B: 60/80 is 25 %). */
export function leakage(supplyPressure: number, cylinderPressure: number): number {
  return 1 - cylinderPressure / supplyPressure;
}

/** How a leak is judged in the trade (from memory; one published page has "most under 20 %"). */
export type LeakGrade = "good" | "acceptable" | "worn" | "repair";

/** The grade of a leakage, 0..1. */
export function leakGrade(share: number): LeakGrade {
  if (share < 0.1) return "good";
  if (share <= 0.2) return "acceptable";
  return share <= 0.3 ? "worn" : "repair";
}

/** Lowest share of the highest cylinder that passes (US Army TM 5-4210-230-14&P-1). */
export const LOWEST_TO_HIGHEST = 0.75;
/** Lowest share of the average that passes (US Army TM 1-1500-204-23-1). */
export const LOWEST_TO_AVERAGE = 0.8;

/** What the compression of all cylinders says. */
export interface CompressionSpread {
  /** Lowest over highest. */
  readonly ratio: number;
  readonly average: number;
  /** True when the lowest has at least three quarters of the highest. */
  readonly passesHighest: boolean;
  /** True when no cylinder is more than a fifth below the average. */
  readonly passesAverage: boolean;
  /** Indices of the cylinders that fail either rule. */
  readonly low: readonly number[];
}

/**
 * Both rules on one set of readings; warm, all plugs out, throttle open, five strokes. `undefined` when
 * no cylinder has any compression, since nothing is left to compare with.
 */
export function compressionSpread(readings: readonly number[]): CompressionSpread | undefined {
  const highest = Math.max(...readings);
  if (!(highest > 0)) return undefined;
  const average = readings.reduce((a, b) => a + b, 0) / readings.length;
  const isBelowHighest = (p: number): boolean => p / highest < LOWEST_TO_HIGHEST;
  const isBelowAverage = (p: number): boolean => p / average < LOWEST_TO_AVERAGE;
  return {
    ratio: Math.min(...readings) / highest,
    average,
    passesHighest: !readings.some(isBelowHighest),
    passesAverage: !readings.some(isBelowAverage),
    low: readings.flatMap((p, c) => (isBelowHighest(p) || isBelowAverage(p) ? [c] : [])),
  };
}

/**
 * How far each hump of the starter current stays below the highest, 0..1. Shows differences only: an
 * evenly worn engine looks sound.
 */
export function humpDeficits(peaksA: readonly number[]): readonly number[] {
  const highest = Math.max(...peaksA);
  return peaksA.map((peak) => (highest > 0 ? 1 - peak / highest : 0));
}
