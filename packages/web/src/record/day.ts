// Days of the calendar: today's, and one in words.

/** Today in the time of the place, as an ISO day. */
export function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** An ISO day as the locale writes it; it belongs to no time zone. */
export function sayDay(day: string): string {
  const format = new Intl.DateTimeFormat(undefined, { dateStyle: "long", timeZone: "UTC" });
  return format.format(new Date(`${day}T00:00:00Z`));
}
