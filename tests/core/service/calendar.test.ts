// The calendar file against the rules of RFC 5545, and read back by a small parser of its own.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CalendarEvent,
  calendarFile,
  type InputError,
} from "../../../packages/core/src/index.ts";

const event: CalendarEvent = {
  day: "2027-12-31",
  summary: "Plugs due",
  uid: "plugs-2027@example.org",
  stamp: "2026-11-25T13:15:00Z",
};

describe("calendarFile", () => {
  it("writes this", () => {
    expect(calendarFile({ ...event, description: "Gap, torque; boots", remindDays: 14 })).toBe(
      [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Half-Order//Service record//EN",
        "BEGIN:VEVENT",
        "UID:plugs-2027@example.org",
        "DTSTAMP:20261125T131500Z",
        "DTSTART;VALUE=DATE:20271231",
        "DTEND;VALUE=DATE:20280101",
        "SUMMARY:Plugs due",
        "DESCRIPTION:Gap\\, torque\\; boots",
        "TRANSP:TRANSPARENT",
        "BEGIN:VALARM",
        "ACTION:DISPLAY",
        "DESCRIPTION:Plugs due",
        "TRIGGER:-P14D",
        "END:VALARM",
        "END:VEVENT",
        "END:VCALENDAR",
        "",
      ].join("\r\n"),
    );
  });

  // Long enough to be folded, with the marks that must be escaped, and characters of one to four octets.
  const mark = fc.constantFrom(
    "\\",
    ";",
    ",",
    "\n",
    "\r\n",
    "\r",
    ":",
    '"',
    "n",
    " ",
    "é",
    "↯",
    "🔧",
  );
  const character = fc.oneof(fc.string({ unit: "grapheme", minLength: 1, maxLength: 1 }), mark);
  const text = fc
    .array(character, { maxLength: 300, size: "max" })
    .map((characters) => characters.join(""));

  it("ends every line with CRLF, folds at 75 octets, never inside a character (3.1)", () => {
    fc.assert(
      fc.property(text, text, (summary, description) => {
        const file = calendarFile({ ...event, summary, description });
        expect(file.endsWith("\r\n")).toBe(true);
        expect(file.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
        for (const line of file.split("\r\n")) {
          const octets = new TextEncoder().encode(line);
          expect(octets.length).toBeLessThanOrEqual(75);
          // A half character would come back as the replacement mark.
          expect(new TextDecoder("utf-8", { fatal: true }).decode(octets)).toBe(line);
        }
      }),
      { seed: 5545, numRuns: 300 },
    );
  });

  it("gives every text back as it was, line breaks as one kind (3.3.11)", () => {
    fc.assert(
      fc.property(text, text, (summary, description) => {
        const read = parse(calendarFile({ ...event, summary, description }));
        expect(read.get("SUMMARY")).toBe(plain(summary));
        expect(read.get("DESCRIPTION")).toBe(plain(description));
        expect(read.get("DTSTART")).toBe("20271231");
        expect(read.get("UID")).toBe(event.uid);
      }),
      { seed: 5545, numRuns: 300 },
    );
  });

  it("fills a line to 75 octets before it folds", () => {
    const file = calendarFile({ ...event, summary: "x".repeat(200) });
    const lines = file.split("\r\n").filter((line) => line.includes("xx"));
    expect(lines.map(({ length }) => length)).toEqual([75, 75, 60]);
    // SUMMARY: takes 8 of 75 octets; the two of an é do not fit into the last one
    const split = calendarFile({ ...event, summary: `${"x".repeat(66)}éy` });
    expect(split).toContain(`SUMMARY:${"x".repeat(66)}\r\n éy\r\n`);
  });

  it("writes a backslash as two", () => {
    const file = calendarFile({ ...event, summary: "a\\nb" });
    expect(file).toContain("SUMMARY:a\\\\nb\r\n");
    expect(parse(file).get("SUMMARY")).toBe("a\\nb");
  });

  it("lets no text open a line of its own", () => {
    const file = calendarFile({ ...event, summary: "x\r\nEND:VEVENT\nATTACH:file" });
    expect(file.match(/^END:VEVENT/gm)).toHaveLength(1);
    expect(parse(file).has("ATTACH")).toBe(false);
    expect(parse(file).get("SUMMARY")).toBe("x\nEND:VEVENT\nATTACH:file");
  });

  it("leaves out what is not given", () => {
    expect(calendarFile(event)).not.toMatch(/DESCRIPTION|VALARM/);
  });

  it.each([
    [{ day: "2027-02-30" }, "/day"],
    [{ stamp: "2026-11-25" }, "/stamp"],
    [{ stamp: "2026-11-25T25:00:00Z" }, "/stamp"],
    [{ stamp: "2026-11-25T13:15:00+01:00" }, "/stamp"],
    [{ uid: " " }, "/uid"],
    [{ remindDays: 1.5 }, "/remindDays"],
    [{ remindDays: -1 }, "/remindDays"],
  ])("refuses %j at %s", (wrong, path) => {
    try {
      calendarFile({ ...event, ...wrong });
      expect.unreachable();
    } catch (error) {
      expect((error as InputError).problems.map((each) => each.path)).toEqual([path]);
    }
  });
});

/** First value of each property: unfolds, drops parameters, unescapes. */
function parse(file: string): ReadonlyMap<string, string> {
  const lines = file.replaceAll("\r\n ", "").split("\r\n").filter(Boolean);
  const read = new Map<string, string>();
  for (const line of lines) {
    const colon = line.indexOf(":");
    const name = line.slice(0, colon).split(";")[0] ?? "";
    const value = line
      .slice(colon + 1)
      .replace(/\\([\\;,nN])/g, (_, mark: string) => (/n/i.test(mark) ? "\n" : mark));
    if (!read.has(name)) read.set(name, value);
  }
  return read;
}

function plain(text: string): string {
  return text
    .replace(/\r\n?/g, "\n")
    .split("")
    .filter(
      (character) =>
        character === "\n" || character === "\t" || (character >= " " && character !== "\u007f"),
    )
    .join("");
}
