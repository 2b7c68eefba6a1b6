// The hand's next move: the first check of the likeliest fault that has not been done yet.
import type { CheckRow, RankedFault } from "@half-order/core";
import { computed, signal } from "@preact/signals";
import { answersOf, profile } from "./case.ts";
import { checkRow, suits } from "./catalogue.ts";
import { ranking } from "./thinking.ts";

interface CheckOffer {
  readonly check: CheckRow;
  /** The fault for whose sake it is offered. */
  readonly fault: RankedFault;
}

/** Checks put off; only until the page is closed. */
const putOff = signal<ReadonlySet<string>>(new Set());

export function putOffCheck(id: string): void {
  putOff.value = new Set([...putOff.value, id]);
}

/** How many offers are made. */
const OFFERS = 6;
/** How far down the ranking it is worth looking. */
const FAULTS_LOOKED_AT = 25;

/** Checks worth doing, that of the likeliest fault first, each once. */
export const offers = computed<readonly CheckOffer[]>(() => {
  const found = new Map<string, CheckOffer>();
  for (const fault of ranking.value?.ranking.slice(0, FAULTS_LOOKED_AT) ?? []) {
    const check = checkRow(fault.firstCheck);
    if (!check || found.has(check.id) || isDone(check) || !suits(check, profile.value?.ignition)) {
      continue;
    }
    found.set(check.id, { check, fault });
  }
  return [...found.values()].slice(0, OFFERS);
});

/** Every finding of the check has an answer, or the user has put it off. */
export function isDone(check: CheckRow): boolean {
  return putOff.value.has(check.id) || check.yields.every((id) => answersOf(id).length > 0);
}
