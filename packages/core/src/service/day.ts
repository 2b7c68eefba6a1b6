// Days of the calendar without a clock: ISO 8601 days to and from a count of days, and months added.
// Proleptic Gregorian; the count begins with 1970-01-01 as 0.
import type { Problem } from "../units/problem.ts";

const DAYS_IN_400_YEARS = 146_097;
/** From 0000-03-01 to 1970-01-01. */
const EPOCH_SHIFT = 719_468;

interface Civil {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** The count of an ISO day such as `2026-11-25`; `undefined` for a text that is none. */
export function dayNumber(iso: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (!match) return undefined;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return undefined;
  return countOf({ year, month, day });
}

/** The ISO day of a count. */
export function isoDay(count: number): string {
  return textOf(civilOf(count));
}

/** The day so many months later; the last of the month where that is shorter. */
export function addMonths(count: number, months: number): number {
  const { year, month, day } = civilOf(count);
  const whole = year * 12 + (month - 1) + months;
  const later = { year: Math.floor(whole / 12), month: (whole % 12) + 1 };
  return countOf({ ...later, day: Math.min(day, daysIn(later.year, later.month)) });
}

/** What is wrong with a day at a path, if anything is. */
export function checkDay(path: string, iso: string): readonly Problem[] {
  if (dayNumber(iso) !== undefined) return [];
  return [
    {
      code: "day-wrong",
      path,
      message: `${JSON.stringify(iso)} is no day of the calendar.`,
      hint: "Write year, month and day, such as 2026-11-25.",
    },
  ];
}

/** Years that begin in March put the leap day last, so that months add up by one formula. */
function countOf({ year, month, day }: Civil): number {
  const y = month <= 2 ? year - 1 : year;
  const cycle = Math.floor(y / 400);
  const yearOfCycle = y - cycle * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const dayOfCycle =
    yearOfCycle * 365 + Math.floor(yearOfCycle / 4) - Math.floor(yearOfCycle / 100) + dayOfYear;
  return cycle * DAYS_IN_400_YEARS + dayOfCycle - EPOCH_SHIFT;
}

function civilOf(count: number): Civil {
  const shifted = count + EPOCH_SHIFT;
  const cycle = Math.floor(shifted / DAYS_IN_400_YEARS);
  const dayOfCycle = shifted - cycle * DAYS_IN_400_YEARS;
  const yearOfCycle = Math.floor(
    (dayOfCycle -
      Math.floor(dayOfCycle / 1460) +
      Math.floor(dayOfCycle / 36_524) -
      Math.floor(dayOfCycle / 146_096)) /
      365,
  );
  const dayOfYear =
    dayOfCycle - (365 * yearOfCycle + Math.floor(yearOfCycle / 4) - Math.floor(yearOfCycle / 100));
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = ((fromMarch + 2) % 12) + 1;
  return {
    year: yearOfCycle + cycle * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1,
  };
}

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

function textOf({ year, month, day }: Civil): string {
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
}
