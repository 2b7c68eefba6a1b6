// The published firing orders that the tests of this room compare with.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { CylinderName } from "../../../packages/core/src/engine/profile.ts";

interface PublishedOrders {
  readonly pairable: readonly {
    readonly engine: string;
    readonly order: readonly CylinderName[];
    readonly companions: readonly (readonly [CylinderName, CylinderName])[];
    readonly source: string;
  }[];
  readonly notPairable: readonly {
    readonly engine: string;
    readonly order: readonly CylinderName[];
    readonly intervals?: readonly number[];
    readonly mismatchDeg: number;
    readonly source: string;
  }[];
}

const file = join(import.meta.dirname, "../../../fixtures/published/firing-orders.json");

export const publishedOrders = JSON.parse(readFileSync(file, "utf8")) as PublishedOrders;

/** Pairs in a form that does not depend on what is written first. */
export function sortedPairs(pairs: readonly (readonly CylinderName[])[]): readonly string[] {
  return pairs.map((pair) => pair.map(String).sort().join("/")).sort();
}
