// Checks that were picked by hand: which of them are done with?
import type { CheckRow } from "@half-order/core";
import { signal } from "@preact/signals";
import { answersOf } from "./case.ts";

/** Checks put off; only until the page is closed. */
const putOff = signal<ReadonlySet<string>>(new Set());

export function putOffCheck(id: string): void {
  putOff.value = new Set([...putOff.value, id]);
}

/** Every finding of the check has an answer, or the user has put it off. */
export function isDone(check: CheckRow): boolean {
  return putOff.value.has(check.id) || check.yields.every((id) => answersOf(id).length > 0);
}
