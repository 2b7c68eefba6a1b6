// What of the tables is loaded when a screen first asks for it; until then, and where it cannot be had,
// there is none.
import { type Signal, signal } from "@preact/signals";
import type { Words } from "../packed/pack.ts";
import { inUnits } from "./figure.ts";
import { fetchFaultWords, fetchFindings, fetchSteps } from "./page-words.ts";

const faults = signal<Words["faults"]>({});
const steps = signal<Words["steps"]>({});
const isWhole = signal(false);
const asked = new Set<unknown>();

/** What a fault is and what mends it. */
export function faultWords(id: string): Words["faults"][string] | undefined {
  return asFetched(faults, fetchFaultWords)[id];
}

/** What the hand does, step by step. */
export function stepsOf(id: string): readonly string[] {
  return (asFetched(steps, fetchSteps)[id] ?? []).map(inUnits.value);
}

/** True once the rows of all findings are whole, not only those of the first questions. */
export function hasAllFindings(): boolean {
  return asFetched(isWhole, fetchFindings);
}

/** Fetches all findings, for a screen that shows them. */
export async function allFindings(): Promise<void> {
  isWhole.value = await fetchFindings();
}

/** What there is of it now; asks for it the first time. */
function asFetched<T>(into: Signal<T>, get: () => Promise<T>): T {
  if (!asked.has(into)) {
    asked.add(into);
    get().then(
      (value) => {
        into.value = value;
      },
      // Asked again by the next screen that needs it.
      () => asked.delete(into),
    );
  }
  return into.value;
}
