// When are the next plugs due, and from what is that worked out?
import {
  type EngineProfile,
  type NextService,
  nextService,
  type PlugCourse,
  type PlugRecord,
  type WearReport,
} from "@half-order/core";

const DAY_MS = 86_400_000;
const DAYS_IN_YEAR = 365.2425;
/** No plug is older than a century. */
const MOST_DAYS = 36_525;

/** What goes on from a record: new plugs went in on that day, or the same ones went back. */
export type WentIn = NonNullable<PlugCourse["wentIn"]>;

/** Kilometres in a year between the first and the last record; `undefined` for less than a month. */
export function paceOf(records: readonly PlugRecord[]): number | undefined {
  const [first, last] = [records[0], records.at(-1)];
  if (!first || !last) return undefined;
  const days = (Date.parse(last.when) - Date.parse(first.when)) / DAY_MS;
  const km = last.odometerKm - first.odometerKm;
  return days >= 30 && km > 0 ? Math.round((km / days) * DAYS_IN_YEAR) : undefined;
}

/** The day on which plugs went in: that of a record at that odometer, else counted back at the pace. */
export function fittedDay(
  record: PlugRecord,
  records: readonly PlugRecord[],
  kmPerYear: number | undefined,
): string | undefined {
  const { fittedAtKm } = record;
  if (fittedAtKm === undefined) return undefined;
  const earlier = records.find(({ odometerKm }) => odometerKm === fittedAtKm);
  if (earlier) return earlier.when;
  if (kmPerYear === undefined) return undefined;
  const days = Math.round(((record.odometerKm - fittedAtKm) / kmPerYear) * DAYS_IN_YEAR);
  // At a pace of almost nothing there is no such day.
  if (days > MOST_DAYS) return undefined;
  return new Date(Date.parse(record.when) - days * DAY_MS).toISOString().slice(0, 10);
}

export interface Course {
  /** Left out while nobody has said. */
  readonly wentIn: WentIn | undefined;
  readonly kmPerYear: number | undefined;
  /** The day on which the same plugs first went in. */
  readonly fittedOn: string | undefined;
}

/**
 * The next service after a record; `undefined` where it is not known what went in, or from which day to count.
 * New plugs are taken to wear as the old ones did.
 */
export function nextAfter(
  profile: EngineProfile,
  record: PlugRecord,
  { distanceKm, limitInKm }: WearReport,
  { wentIn, kmPerYear, fittedOn }: Course,
): NextService | undefined {
  if (wentIn === undefined) return undefined;
  const pace = kmPerYear === undefined ? {} : { kmPerYear };
  if (wentIn === "new") {
    const life =
      distanceKm === undefined || limitInKm === undefined ? undefined : distanceKm + limitInKm;
    return nextService(profile, {
      fittedOn: record.when,
      fittedAtKm: record.odometerKm,
      ...pace,
      ...(life === undefined ? {} : { gapLimitAtKm: record.odometerKm + life }),
    });
  }
  if (fittedOn === undefined || record.fittedAtKm === undefined) return undefined;
  return nextService(profile, {
    fittedOn,
    fittedAtKm: record.fittedAtKm,
    ...pace,
    ...(limitInKm === undefined ? {} : { gapLimitAtKm: record.odometerKm + limitInKm }),
  });
}
