// What goes on from the last record: which plugs went in, and how far this person drives? It belongs to the person
// and not to the record, so it is kept on the device beside the case.
import type { PlugRecord } from "@half-order/core";
import { type Course, fittedDay, paceOf, type WentIn } from "./plan.ts";

/** What was said of a record; the rest is worked out. */
export interface Said {
  /** Left out while nobody has said. */
  readonly wentIn?: WentIn | undefined;
  readonly kmPerYear?: number | undefined;
  readonly fittedOn?: string | undefined;
}

/** By the day of a record. */
export type AllSaid = Readonly<Record<string, Said>>;

const keyOf = (caseId: string): string => `half-order.course.${caseId}`;

/** Nothing where the device keeps nothing. */
export function allSaid(caseId: string): AllSaid {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(keyOf(caseId)) ?? "{}");
    return typeof value === "object" && value !== null ? (value as AllSaid) : {};
  } catch {
    return {};
  }
}

/** False where the device does not keep it. */
export function keepSaid(caseId: string, day: string, said: Said): boolean {
  return putBackSaid(caseId, { ...allSaid(caseId), [day]: said });
}

/** Forgets it with its case; returns it, to put it back. */
export function dropSaid(caseId: string): AllSaid {
  const said = allSaid(caseId);
  if (Object.keys(said).length > 0) localStorage.removeItem(keyOf(caseId));
  return said;
}

export function putBackSaid(caseId: string, said: AllSaid): boolean {
  try {
    if (Object.keys(said).length > 0) localStorage.setItem(keyOf(caseId), JSON.stringify(said));
    return true;
  } catch {
    // What was chosen holds on the screen until the page is left.
    return false;
  }
}

/** The whole of it: what nobody has said of distance and day is taken from the records. */
export function courseOf(
  { wentIn, kmPerYear, fittedOn }: Said,
  record: PlugRecord,
  records: readonly PlugRecord[],
): Course {
  const pace = kmPerYear ?? paceOf(records);
  return {
    wentIn,
    kmPerYear: pace,
    fittedOn: fittedOn || fittedDay(record, records, pace),
  };
}
