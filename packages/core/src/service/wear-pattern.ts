// Do plugs that stand apart have something in common: a coil, a place in the block, a polarity?
import type { Engine } from "../engine/engine.ts";
import type { CylinderName } from "../engine/profile.ts";
import { WEAR_RULES, type WearPattern } from "../knowledge/wear-pattern.ts";
import { deviation } from "./outlier.ts";

export interface MeasuredGap {
  readonly name: CylinderName;
  /** Index in the engine. */
  readonly cylinder: number;
  readonly gapMm: number;
}

/** What one plug says of itself against the set. */
interface Standing {
  readonly isOutlier: boolean;
  readonly score?: number;
}

/** What the outliers of a set have in common; without an engine nothing is said of pairs and neighbours. */
export function outlierPattern(
  engine: Engine | undefined,
  gaps: readonly MeasuredGap[],
  standing: readonly Standing[],
): WearPattern {
  const off = gaps.filter((_, i) => standing[i]?.isOutlier);
  const above = (i: number, from: number): boolean => (standing[i]?.score ?? 0) > from;
  const isApart = (i: number): boolean => standing[i]?.isOutlier === true && above(i, 0);
  const wide = gaps.filter(
    (gap, i) =>
      isApart(i) ||
      (above(i, WEAR_RULES.companionFrom) &&
        gaps.some((other, o) => isApart(o) && arePair(engine, gap, other))),
  );
  if (off.length === 0) return "even";
  if (off.length === 1 && wide.length < 2) return wide.length === 1 ? "one-wide" : "one-narrow";
  if (!engine || wide.length < off.length) return "several-off";
  if (isOneCoil(engine, wide)) return "pair-wide";
  return areNeighbours(engine, wide) ? "neighbours-wide" : "several-off";
}

/**
 * Two halves of a set, as double coils wear them: of each pair one is wider, all of these above all of the
 * others, by more than a gauge mistakes and more than either half scatters. At least two pairs: one pair
 * that differs is one plug that is off.
 */
export function alternatingHalves(
  engine: Engine,
  gaps: readonly MeasuredGap[],
): readonly (readonly MeasuredGap[])[] | undefined {
  const pairs = engine.groups.filter(({ length }) => length === 2);
  const measured = pairs.map((pair) =>
    gaps.filter(({ cylinder }) => pair.includes(cylinder)).sort((a, b) => b.gapMm - a.gapMm),
  );
  if (pairs.length < 2 || measured.some(({ length }) => length < 2)) return undefined;
  const wide = measured.flatMap(([wider]) => wider ?? []);
  const narrow = measured.flatMap(([, narrower]) => narrower ?? []);
  const apart = Math.min(...widths(wide)) - Math.max(...widths(narrow));
  const scatter =
    2 * Math.max(WEAR_RULES.gaugeMm, deviation(widths(wide)), deviation(widths(narrow)));
  return apart >= scatter ? [wide, narrow] : undefined;
}

function widths(gaps: readonly MeasuredGap[]): readonly number[] {
  return gaps.map(({ gapMm }) => gapMm);
}

/** True of the two that one double coil fires. */
function arePair(engine: Engine | undefined, a: MeasuredGap, b: MeasuredGap): boolean {
  const group = engine?.groups[engine.groupOf[a.cylinder] ?? -1] ?? [];
  return group.length === 2 && group.includes(b.cylinder);
}

function isOneCoil(engine: Engine, wide: readonly MeasuredGap[]): boolean {
  const coils = new Set(wide.map(({ cylinder }) => engine.groupOf[cylinder]));
  const group = engine.groups[[...coils][0] ?? -1] ?? [];
  return coils.size === 1 && group.length === wide.length;
}

/** Each of them beside another of them. */
function areNeighbours(engine: Engine, wide: readonly MeasuredGap[]): boolean {
  return wide.every(({ cylinder }) =>
    wide.some(
      (other) =>
        other.cylinder !== cylinder &&
        engine.neighbours.some((pair) => pair.includes(cylinder) && pair.includes(other.cylinder)),
    ),
  );
}
