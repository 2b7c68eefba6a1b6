// When is the next service: by distance or by months, whichever comes first?
import { checkProfile } from "../engine/check-profile.ts";
import type { EngineProfile } from "../engine/profile.ts";
import { InputError, type Problem } from "../units/problem.ts";
import { addMonths, checkDay, dayNumber, isoDay } from "./day.ts";
import { checkDistance, checkPace } from "./record.ts";

/** The last service, and what is known of how the car is used. */
export interface LastService {
  /** ISO 8601 day on which the plugs went in. */
  readonly fittedOn: string;
  readonly fittedAtKm: number;
  /** Kilometres in a year; without it a distance has no day. */
  readonly kmPerYear?: number;
  /** Odometer at which a gap is expected at its limit, where wear was measured. */
  readonly gapLimitAtKm?: number;
}

export interface NextService {
  /** Odometer of the next service; the gap's own limit where that comes sooner. */
  readonly atKm?: number;
  /** The day by months. */
  readonly onDay?: string;
  /** The day on which `atKm` is reached at the usual pace. */
  readonly atKmOnDay?: string;
  /** The earlier of the two days, for the calendar. */
  readonly dueOn?: string;
  /** What makes it due; left out while only one is known to compare. */
  readonly by?: "distance" | "gap" | "months";
}

const DAYS_IN_YEAR = 365.2425;

/**
 * The next service of the plugs by the profile's `figures.serviceKm` and `figures.serviceMonths`, whichever
 * comes first; empty when the profile has neither and no gap limit is given. Days are ISO 8601, distances
 * kilometres on the odometer. Throws an `InputError` with all problems; paths of the last service begin with
 * its fields (`/fittedOn`), `/last` when there is none.
 */
export function nextService(profile: EngineProfile, last: LastService): NextService {
  const problems = [...checkProfile(profile), ...checkLast(last), ...checkMonths(profile)];
  const from = problems.length > 0 ? undefined : dayNumber(last.fittedOn);
  if (from === undefined) throw new InputError(problems);
  const { serviceKm, serviceMonths } = profile.figures ?? {};
  const byDistance = serviceKm === undefined ? undefined : last.fittedAtKm + serviceKm;
  const distances = [byDistance, last.gapLimitAtKm].flatMap((km) => km ?? []);
  const atKm = distances.length > 0 ? Math.min(...distances) : undefined;
  const isGap = atKm !== undefined && atKm !== byDistance;
  const byMonths = serviceMonths === undefined ? undefined : addMonths(from, serviceMonths);
  const byKm = atKm === undefined ? undefined : dayAt(atKm, from, last);
  const days = [byMonths, byKm].flatMap((day) => day ?? []);
  const by = reasonOf(byMonths, byKm, isGap ? "gap" : "distance");
  return {
    ...(atKm === undefined ? {} : { atKm }),
    ...(byMonths === undefined ? {} : { onDay: isoDay(byMonths) }),
    ...(byKm === undefined ? {} : { atKmOnDay: isoDay(byKm) }),
    ...(days.length > 0 ? { dueOn: isoDay(Math.min(...days)) } : {}),
    ...(by ? { by } : {}),
  };
}

function dayAt(atKm: number, from: number, { fittedAtKm, kmPerYear }: LastService) {
  if (kmPerYear === undefined) return undefined;
  return from + Math.floor(((atKm - fittedAtKm) / kmPerYear) * DAYS_IN_YEAR);
}

function reasonOf(
  byMonths: number | undefined,
  byKm: number | undefined,
  distance: "distance" | "gap",
): NextService["by"] {
  if (byMonths === undefined || byKm === undefined) return undefined;
  return byKm < byMonths ? distance : "months";
}

function checkLast(last: LastService): readonly Problem[] {
  if (typeof last !== "object" || last === null) {
    const hint = 'Give { "fittedOn": "2026-05-01", "fittedAtKm": 120000 }.';
    const message = `${last} tells of no last service.`;
    return [{ code: "kind-wrong", path: "/last", message, hint }];
  }
  const { fittedOn, fittedAtKm, kmPerYear, gapLimitAtKm } = last;
  return [
    ...checkDay("/fittedOn", fittedOn),
    ...checkDistance("/fittedAtKm", fittedAtKm),
    ...(gapLimitAtKm === undefined ? [] : checkDistance("/gapLimitAtKm", gapLimitAtKm)),
    ...checkPace("/kmPerYear", kmPerYear),
  ];
}

/** Calendars count whole months. */
function checkMonths(profile: EngineProfile): readonly Problem[] {
  // What is no profile at all is told by its own check.
  const months = profile?.figures?.serviceMonths;
  if (months === undefined || Number.isInteger(months)) return [];
  const message = `${months} months cannot be counted in a calendar.`;
  const hint = "Write whole months.";
  return [{ code: "months-not-whole", path: "/figures/serviceMonths", message, hint }];
}
