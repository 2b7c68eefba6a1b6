// Are the plugs that came out in the course of a case noted already?
import type { CaseDocument } from "@half-order/core/wire";
import { dayOf } from "./day.ts";

/** True with a record of a day since the case was begun; a set that came out years before is no note of this trouble. */
export function arePlugsNoted({
  findings,
  repairs = [],
  records = [],
  closed,
}: Pick<CaseDocument, "findings" | "repairs" | "records" | "closed">): boolean {
  const moments = [...findings, ...repairs, { when: closed }];
  const [begun] = moments.flatMap(({ when = "" }) => dayOf(when) ?? []).sort();
  return begun !== undefined && records.some(({ when }) => when >= begun);
}
