// Days of the calendar: today's, and one in words.

/** Today in the time of the place, as an ISO day. */
export function today(): string {
  return isoDay(new Date());
}

/** The day of a moment in the time of the place, as an ISO day; `undefined` for what is no moment. */
export function dayOf(moment: string): string | undefined {
  const date = new Date(moment);
  return Number.isNaN(date.getTime()) ? undefined : isoDay(date);
}

function isoDay(date: Date): string {
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** An ISO day as the locale writes it; it belongs to no time zone. */
export function sayDay(day: string): string {
  const format = new Intl.DateTimeFormat(undefined, { dateStyle: "long", timeZone: "UTC" });
  return format.format(new Date(`${day}T00:00:00Z`));
}
