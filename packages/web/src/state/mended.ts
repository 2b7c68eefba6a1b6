// Do the answers tell of the engine as it is, or of the one before its last repair?
import type { RepairDone } from "@half-order/core";

/** True while the last repair seems to have cured: the answers then tell of the engine before it. */
export function seemsMended(repairs: readonly RepairDone[]): boolean {
  return repairs.at(-1)?.result === "cured";
}
