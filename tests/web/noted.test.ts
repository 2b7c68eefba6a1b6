// Is the note of the plugs that came out offered until it was made, and no longer?
import type { PlugRecord } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { arePlugsNoted } from "../../packages/web/src/record/noted.ts";

const on = (when: string): PlugRecord => ({ when, odometerKm: 90_000, plugs: [] });
const doc = {
  findings: [{ finding: "lamp", answer: "steady", when: "2026-05-02T12:00:00Z" }],
  repairs: [{ repair: "repair.rail", when: "2026-05-04T12:00:00Z" }],
  closed: "2026-05-09T12:00:00Z",
};

describe("the plugs that came out", () => {
  it("are noted with a record from the day on which the case was begun", () => {
    expect(arePlugsNoted(doc)).toBe(false);
    expect(arePlugsNoted({ ...doc, records: [on("2026-05-02")] })).toBe(true);
    expect(arePlugsNoted({ ...doc, records: [on("2026-05-20")] })).toBe(true);
  });

  it("of the service before are no note of this trouble", () => {
    expect(arePlugsNoted({ ...doc, records: [on("2024-03-01")] })).toBe(false);
    expect(arePlugsNoted({ ...doc, records: [on("2024-03-01"), on("2026-05-03")] })).toBe(true);
  });

  it("are held against the end of a case whose answers have no moments, and against nothing else", () => {
    const bare = { findings: [{ finding: "lamp", answer: "steady", when: "a Tuesday" }] };
    const records = [on("2026-05-09")];
    expect(arePlugsNoted({ ...bare, closed: doc.closed, records })).toBe(true);
    expect(arePlugsNoted({ ...bare, records })).toBe(false);
  });
});
