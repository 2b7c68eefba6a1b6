// What do the gaps of one set of plugs tell: how fast they wear, which one stands apart, how long they last?
import { knownOrder } from "../engine/check-profile.ts";
import { cylinderNames } from "../engine/cylinder-name.ts";
import type { Engine } from "../engine/engine.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { resolveEngine } from "../engine/resolve-engine.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import {
  WEAR_PATTERNS,
  WEAR_RULES,
  type WearPattern,
  type WearPatternRow,
} from "../knowledge/wear-pattern.ts";
import { type PlugLife, type Spread, wornGap } from "../physics/wear.ts";
import { InputError, type Problem } from "../units/problem.ts";
import { modifiedScores } from "./outlier.ts";
import { checkRecord, type PlugRecord } from "./record.ts";
import { alternatingHalves, type MeasuredGap, outlierPattern } from "./wear-pattern.ts";

export interface WearLine {
  readonly cylinder: CylinderName;
  readonly gapMm: number;
  /** Against the plugs that wear as it does (its set; under alternating wear its half), left out where
   *  these are fewer than three. */
  readonly score?: number;
  readonly isOutlier: boolean;
  /** Growth since the plug went in; may be negative where a gap was set or bent narrower. */
  readonly mmPer10000Km?: number;
  /** Distance from now until the limit at this rate; 0 when it is there, left out for a gap that does
   *  not grow. */
  readonly limitInKm?: number;
}

export interface WearReport {
  /** What these plugs have run. */
  readonly distanceKm?: number;
  readonly newGapMm?: number;
  /** From where on a gap counts as too wide. */
  readonly limitMm?: number;
  readonly lines: readonly WearLine[];
  /** Fewer gaps than the score wants: what stands apart is a hint. */
  readonly isFew: boolean;
  readonly patterns: readonly WearPatternRow[];
  /** Gap that is usual for metal, ignition and distance, mm. */
  readonly usualMm?: Spread;
  /** The soonest that one of the plugs is at its limit. */
  readonly limitInKm?: number;
}

export interface WearOptions {
  /** The maker's limit for a worn gap; else the profile's highest gap and a fifth. */
  readonly limitMm?: number;
}

/**
 * Wear of the plugs of a record. Rates want `fittedAtKm` and a gap to start from (the record's, else the
 * middle of the profile's range); wear is taken as linear. Throws an `InputError` when the profile, the
 * record or the limit (`/limitMm`) cannot be used.
 */
export function wearReport(
  profile: EngineProfile,
  record: PlugRecord,
  { limitMm = limitOf(profile) }: WearOptions = {},
): WearReport {
  const problems = [...checkRecord(profile, record), ...checkLimit(limitMm)];
  if (problems.length > 0) throw new InputError(problems);
  const gaps = measuredGaps(profile, record);
  const engine = knownEngine(profile);
  const halves = engine && alternatingHalves(engine, gaps);
  const start = record.newGapMm ?? middle(profile.figures?.plugGapMm);
  const distance =
    record.fittedAtKm === undefined ? undefined : record.odometerKm - record.fittedAtKm;
  const scores = scoresOf(halves ?? [gaps]);
  const lines = gaps.map((gap) =>
    lineOf(gap, scores.get(gap), rateOf(gap, start, distance), limitMm),
  );
  const limits = lines.flatMap(({ limitInKm }) => limitInKm ?? []);
  const usualMm = usualGap(profile, start, distance);
  return {
    ...(distance === undefined ? {} : { distanceKm: distance }),
    ...(start === undefined ? {} : { newGapMm: start }),
    ...(limitMm === undefined ? {} : { limitMm }),
    lines,
    isFew: gaps.length < WEAR_RULES.enoughPlugs,
    patterns: isUnworn(profile, distance)
      ? rowsOf(lines.some(({ isOutlier }) => isOutlier) ? ["unworn"] : [])
      : patternsOf(lines, usualMm, [
          ...(halves ? (["alternating"] as const) : []),
          outlierPattern(engine, gaps, lines),
        ]),
    ...(usualMm ? { usualMm } : {}),
    ...(limits.length > 0 ? { limitInKm: Math.min(...limits) } : {}),
  };
}

function measuredGaps(profile: EngineProfile, { plugs }: PlugRecord): readonly MeasuredGap[] {
  return cylinderNames(profile).flatMap((name, cylinder) => {
    const plug = plugs.find((each) => String(each.cylinder) === String(name));
    return plug?.gapMm === undefined ? [] : [{ name, cylinder, gapMm: plug.gapMm }];
  });
}

/** Each plug against those that wear as it does; none where these are too few to compare. */
function scoresOf(sets: readonly (readonly MeasuredGap[])[]): ReadonlyMap<MeasuredGap, number> {
  const scores = new Map<MeasuredGap, number>();
  for (const set of sets.filter(({ length }) => length >= WEAR_RULES.fewestPlugs)) {
    const gapsMm = set.map(({ gapMm }) => gapMm);
    modifiedScores(gapsMm, WEAR_RULES.gaugeMm).forEach((score, i) => {
      scores.set(set[i] as MeasuredGap, score);
    });
  }
  return scores;
}

/** Growth in mm a km. */
function rateOf(
  { gapMm }: MeasuredGap,
  start: number | undefined,
  distance: number | undefined,
): number | undefined {
  return start === undefined || !distance ? undefined : (gapMm - start) / distance;
}

function lineOf(
  { name, gapMm }: MeasuredGap,
  score: number | undefined,
  rate: number | undefined,
  limitMm: number | undefined,
): WearLine {
  const limitInKm = limitMm === undefined ? undefined : distanceLeft(gapMm, rate, limitMm);
  return {
    cylinder: name,
    gapMm,
    ...(score === undefined ? {} : { score }),
    isOutlier: score !== undefined && Math.abs(score) > WEAR_RULES.outlierFrom,
    ...(rate === undefined ? {} : { mmPer10000Km: rate * 10_000 }),
    ...(limitInKm === undefined ? {} : { limitInKm }),
  };
}

function distanceLeft(
  gapMm: number,
  rate: number | undefined,
  limitMm: number,
): number | undefined {
  if (gapMm >= limitMm) return 0;
  return rate !== undefined && rate > 0 ? (limitMm - gapMm) / rate : undefined;
}

/** "Even" is said only where there is nothing else to say. */
function patternsOf(
  lines: readonly WearLine[],
  usual: Spread | undefined,
  found: readonly WearPattern[],
): readonly WearPatternRow[] {
  if (lines.length < WEAR_RULES.fewestPlugs) return [];
  const narrowest = Math.min(...lines.map(({ gapMm }) => gapMm));
  const isFast = usual !== undefined && narrowest > usual.high + WEAR_RULES.gaugeMm;
  const special = [...found, ...(isFast ? ["set-fast"] : [])].filter((id) => id !== "even");
  return rowsOf(special.length > 0 ? special : ["even"]);
}

function rowsOf(ids: readonly string[]): readonly WearPatternRow[] {
  return WEAR_PATTERNS.filter(({ id }) => ids.includes(id));
}

/** Too short a way for even the fastest usual wear to be measured: nothing there is can be wear. */
function isUnworn({ figures, ignition }: EngineProfile, distanceKm: number | undefined): boolean {
  if (distanceKm === undefined) return false;
  const electrode = figures?.plugElectrode ?? "other";
  const { high } = wornGap({ newGapM: 0, electrode, ignition }, distanceKm);
  return high * 1000 < WEAR_RULES.gaugeMm;
}

/** The engine where it is known who shares a coil; else none, and pairs are not spoken of. */
function knownEngine(profile: EngineProfile): Engine | undefined {
  return knownOrder(profile) ? resolveEngine(profile) : undefined;
}

function usualGap(
  { figures, ignition }: EngineProfile,
  start: number | undefined,
  distance: number | undefined,
): Spread | undefined {
  const electrode = figures?.plugElectrode;
  if (!electrode || start === undefined || distance === undefined) return undefined;
  const plug: PlugLife = { newGapM: start / 1000, electrode, ignition };
  const { low, likely, high } = wornGap(plug, distance);
  return { low: low * 1000, likely: likely * 1000, high: high * 1000 };
}

/** Where the finding about the gap begins to call it wide. */
function limitOf({ figures }: EngineProfile): number | undefined {
  const steps = KNOWLEDGE.findings.get("plug.gap")?.reading?.steps ?? [];
  const times = steps.find(({ option }) => option === "in-limit")?.under;
  const top = figures?.plugGapMm?.[1];
  return times === undefined || top === undefined ? undefined : times * top;
}

function middle(range: readonly [number, number] | undefined): number | undefined {
  return range && (range[0] + range[1]) / 2;
}

function checkLimit(limitMm: number | undefined): readonly Problem[] {
  if (limitMm === undefined || (Number.isFinite(limitMm) && limitMm > 0)) return [];
  const message = `${limitMm} mm is no limit of a gap.`;
  return [{ code: "gap-wrong", path: "/limitMm", message, hint: "Write millimetres above 0." }];
}
