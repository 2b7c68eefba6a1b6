// What goes on from the last record: which plugs went in, and how far is this car driven? It stands in the record, so
// it goes wherever the case goes.
import type { PlugCourse, PlugRecord } from "@half-order/core";
import { changeCase } from "../state/case.ts";
import { takeInOldWork } from "../state/old-work.ts";
import { type Course, fittedDay, paceOf } from "./plan.ts";

/** What is said anew of it; `undefined`: nothing any more. */
export type Said = { readonly [Field in keyof PlugCourse]: PlugCourse[Field] | undefined };

/** Says more of the record of a day in the open case. */
export function keepSaid(day: string, said: Said): void {
  changeCase((doc) => ({
    ...doc,
    records: (doc.records ?? []).map((record) =>
      record.when === day ? withSaid(record, said) : record,
    ),
  }));
}

/** The record with it; without a course where nothing is left of that. */
export function withSaid({ course, ...record }: PlugRecord, said: Said): PlugRecord {
  const all = Object.entries({ ...course, ...said }).filter(([, value]) => value !== undefined);
  return all.length === 0 ? record : { ...record, course: Object.fromEntries(all) };
}

/** The whole of it: what nobody has said of distance and day is taken from the records. */
export function courseOf(record: PlugRecord, records: readonly PlugRecord[]): Course {
  const { wentIn, kmPerYear, fittedOn } = record.course ?? {};
  const pace = kmPerYear ?? paceOf(records);
  return {
    wentIn,
    kmPerYear: pace,
    fittedOn: fittedOn ?? fittedDay(record, records, pace),
  };
}

// The first pages kept it beside the case.
void takeInOldWork();
