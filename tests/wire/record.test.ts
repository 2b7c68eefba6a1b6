// Does a case take records of plugs, and say what is wrong with one at its place?
import type { PlugEntry, PlugRecord } from "@half-order/core";
import { parseCase, plugRecordSchema } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";

/** Every field there is: a new one must be added here before this compiles. */
const plug: Required<PlugEntry> = {
  cylinder: 2,
  gapMm: 1.15,
  look: "tan",
  torqueNm: 22,
  part: "A7",
};
const record: Required<PlugRecord> = {
  when: "2026-05-01",
  odometerKm: 120_000,
  plugs: [plug, { cylinder: 1 }],
  newGapMm: 0.9,
  fittedAtKm: 60_000,
  course: { wentIn: "same", kmPerYear: 15_000, fittedOn: "2024-05-01" },
};

const withRecords = (...records: readonly unknown[]): unknown => ({
  engine: "demo.dunlin",
  findings: [],
  records,
});

describe("a record from outside", () => {
  it("has every field that a record can have", () => {
    expect(plugRecordSchema.parse(record)).toEqual(record);
  });

  it("is part of a case", () => {
    const reading = parseCase(withRecords(record));
    expect(reading).toMatchObject({ case: { records: [record] } });
  });

  it("may be left out", () => {
    const reading = parseCase({ engine: "demo.dunlin", findings: [] });
    expect("case" in reading && "records" in reading.case).toBe(false);
  });

  it.each([
    [{ ...record, odometerKm: undefined }, "/records/1/odometerKm"],
    [{ ...record, odometer: 5 }, "/records/1/odometer"],
    [{ ...record, when: "yesterday" }, "/records/1/when"],
    [{ ...record, odometerKm: -1 }, "/records/1/odometerKm"],
    [{ ...record, plugs: [{ ...plug, gapMm: 45 }] }, "/records/1/plugs/0/gapMm"],
    [{ ...record, plugs: [{ ...plug, look: "purple" }] }, "/records/1/plugs/0/look"],
    [{ ...record, plugs: [{ cylinder: 9 }] }, "/records/1/plugs/0/cylinder"],
    [{ ...record, plugs: [plug, plug] }, "/records/1/plugs/1/cylinder"],
  ])("%#: says where it is wrong", (wrong, path) => {
    const reading = parseCase(withRecords(record, wrong));
    expect("problems" in reading && reading.problems.map((problem) => problem.path)).toContain(
      path,
    );
  });
});
