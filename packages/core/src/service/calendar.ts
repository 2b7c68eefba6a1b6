// The next service as a file that a calendar takes: one all-day event (RFC 5545).
import { InputError, type Problem } from "../units/problem.ts";
import { checkDay, dayNumber, isoDay } from "./day.ts";

export interface CalendarEvent {
  /** ISO 8601 day of the event. */
  readonly day: string;
  readonly summary: string;
  readonly description?: string;
  /** Different for each event, the same when it is written again. */
  readonly uid: string;
  /** When this is written, ISO 8601 in UTC to the second: `2026-11-25T13:15:00Z`. */
  readonly stamp: string;
  /** Days ahead at which the calendar shall remind; left out: not at all. */
  readonly remindDays?: number;
}

/** RFC 5545, section 3.1: content lines should not be longer, without their line break. */
const LONGEST_LINE_OCTETS = 75;

/**
 * The text of an `.ics` file, lines ended by CRLF. Throws an `InputError` when a day, the stamp, the uid
 * or the days of the reminder cannot be used.
 */
export function calendarFile(event: CalendarEvent): string {
  const problems = checkEvent(event);
  const day = dayNumber(event.day);
  if (day === undefined || problems.length > 0) throw new InputError(problems);
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Half-Order//Service record//EN",
    "BEGIN:VEVENT",
    `UID:${escaped(event.uid)}`,
    `DTSTAMP:${event.stamp.replace(/[-:]/g, "")}`,
    `DTSTART;VALUE=DATE:${basic(event.day)}`,
    // The end is the first day that no longer belongs to it.
    `DTEND;VALUE=DATE:${basic(isoDay(day + 1))}`,
    `SUMMARY:${escaped(event.summary)}`,
    ...(event.description === undefined ? [] : [`DESCRIPTION:${escaped(event.description)}`]),
    "TRANSP:TRANSPARENT",
    ...reminder(event),
    "END:VEVENT",
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

function reminder({ remindDays, summary }: CalendarEvent): readonly string[] {
  if (remindDays === undefined) return [];
  return [
    "BEGIN:VALARM",
    "ACTION:DISPLAY",
    `DESCRIPTION:${escaped(summary)}`,
    `TRIGGER:-P${remindDays}D`,
    "END:VALARM",
  ];
}

function basic(isoDayText: string): string {
  return isoDayText.replaceAll("-", "");
}

/** Section 3.3.11: backslash, semicolon and comma are escaped, a line break is `\n`; other controls go. */
function escaped(text: string): string {
  return (
    text
      .replace(/[\\;,]/g, "\\$&")
      .replace(/\r\n?|\n/g, "\\n")
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not get in
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, "")
  );
}

/** Breaks a long line before a character, never within one; each further line begins with a space. */
function folded(line: string): string {
  let text = "";
  let octets = 0;
  for (const character of line) {
    const more = octetsOf(character);
    if (octets + more > LONGEST_LINE_OCTETS) {
      text += "\r\n ";
      octets = 1;
    }
    text += character;
    octets += more;
  }
  return text;
}

/** Octets of a character in UTF-8. */
function octetsOf(character: string): number {
  const point = character.codePointAt(0) ?? 0;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}

function checkEvent({ day, stamp, uid, remindDays }: CalendarEvent): readonly Problem[] {
  const [stampDay = "", time = ""] = stamp.split("T");
  const isStamp =
    dayNumber(stampDay) !== undefined && /^([01]\d|2[0-3]):[0-5]\d:[0-5]\dZ$/.test(time);
  const isReminder = remindDays === undefined || (Number.isInteger(remindDays) && remindDays >= 0);
  return [
    ...checkDay("/day", day),
    ...(isStamp
      ? []
      : [wrong("/stamp", stamp, "Write the moment in UTC, such as 2026-11-25T13:15:00Z.")]),
    ...(uid.trim() === "" ? [wrong("/uid", uid, "Write a text that no other event has.")] : []),
    ...(isReminder ? [] : [wrong("/remindDays", remindDays, "Write whole days, 0 or more.")]),
  ];
}

function wrong(path: string, value: unknown, hint: string): Problem {
  const message = `${JSON.stringify(value)} cannot be used.`;
  return { code: "calendar-wrong", path, message, hint };
}
