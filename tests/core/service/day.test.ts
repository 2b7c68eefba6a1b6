// The calendar without a clock, against the calendar of the language.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addMonths, dayNumber, isoDay } from "../../../packages/core/src/service/day.ts";

const DAY_MS = 86_400_000;
const anyDay = fc.integer({ min: -700_000, max: 2_800_000 }); // about the years 54 to 9636

describe("days", () => {
  it("are counted and written as the language's own calendar does", () => {
    fc.assert(
      fc.property(anyDay, (count) => {
        const iso = new Date(count * DAY_MS).toISOString().slice(0, 10);
        expect(isoDay(count)).toBe(iso);
        expect(dayNumber(iso)).toBe(count);
      }),
      { seed: 8601, numRuns: 3000 },
    );
  });

  it("hold round the end of February in every century, leap or not", () => {
    for (let year = 100; year < 9900; year += 100) {
      const first = Date.UTC(year, 1, 26) / DAY_MS;
      for (let count = first; count < first + 6; count++) {
        const iso = new Date(count * DAY_MS).toISOString().slice(0, 10);
        expect(isoDay(count)).toBe(iso);
        expect(dayNumber(iso)).toBe(count);
      }
    }
  });

  it("hold at every turn of month and leap year", () => {
    for (
      let count = dayNumber("1999-12-25") as number;
      count < (dayNumber("2005-01-05") as number);
      count++
    ) {
      expect(isoDay(count)).toBe(new Date(count * DAY_MS).toISOString().slice(0, 10));
    }
    expect(dayNumber("1970-01-01")).toBe(0);
    expect(dayNumber("2000-02-29")).toBe(11_016);
  });

  it.each([
    "2026-02-29",
    "1900-02-29",
    "2026-13-01",
    "2026-00-10",
    "2026-04-31",
    "2026-1-1",
    "",
    "26-01-01",
    "2026-01-01T00:00",
  ])("%s is none", (text) => {
    expect(dayNumber(text)).toBeUndefined();
  });
});

describe("months", () => {
  it.each([
    ["2026-11-25", 12, "2027-11-25"],
    ["2026-01-31", 1, "2026-02-28"],
    ["2024-01-31", 1, "2024-02-29"],
    ["2024-02-29", 12, "2025-02-28"],
    ["2026-10-31", 1, "2026-11-30"],
    ["2026-12-01", 1, "2027-01-01"],
    ["2026-11-25", 72, "2032-11-25"],
  ])("%s and %s months is %s", (from, months, to) => {
    expect(isoDay(addMonths(dayNumber(from) as number, months))).toBe(to);
  });

  it("keep the day of the month or its last", () => {
    fc.assert(
      fc.property(anyDay, fc.nat(240), (count, months) => {
        const [from, to] = [isoDay(count), isoDay(addMonths(count, months))];
        const [year, month, day] = from.split("-").map(Number) as [number, number, number];
        const first = new Date(Date.UTC(2000, month - 1 + months, 1));
        first.setUTCFullYear(first.getUTCFullYear() - 2000 + year);
        expect(to.slice(0, 7)).toBe(first.toISOString().slice(0, 7));
        const last = new Date(first.getTime());
        last.setUTCMonth(last.getUTCMonth() + 1, 0);
        expect(Number(to.slice(8))).toBe(Math.min(day, last.getUTCDate()));
      }),
      { seed: 8601, numRuns: 1000 },
    );
  });
});
