// Do the answers tell of the engine as it is, or of the one before its last repair?
import type { Finding, RepairDone } from "@half-order/core";
import { signal } from "@preact/signals";
import { cautionsOf } from "./catalogue.ts";

/** How many clean drives have proven the last repair; `undefined` while there are too few, or they were not looked at. */
export const provenBy = signal<number | undefined>(undefined);

/** True while the last repair seems to have cured: the answers then tell of the engine before it. */
export function seemsMended(repairs: readonly RepairDone[]): boolean {
  return repairs.at(-1)?.result === "cured";
}

/** True once an answer from after the last repair calls for caution: that one tells of the engine as it is. */
export function alarmsSince(
  findings: readonly (Finding & { readonly when?: string })[],
  repairs: readonly RepairDone[],
): boolean {
  const mended = repairs.at(-1)?.when ?? "";
  return cautionsOf(findings.filter(({ when = "" }) => when > mended)).length > 0;
}
