// What follows from cylinders that miss, whatever makes them miss: false lean mixture, a hot catalyst.
import type { FindingRow } from "../knowledge/schema.ts";
import { misfireClass, type Pattern } from "./pattern.ts";

/** Sums of the same terms in another order must be the same number, or like faults look unlike. */
const DIGITS = 1e12;
/** Nobody could defend a finer step; and faults that differ by less are weighed as one kind, faster. */
const STEPS = 200;

/**
 * Chance of each option of a finding that follows from the cylinders which a fault makes miss, over
 * all that it may reach; undefined where the finding does not follow from them.
 */
export function afterMisfire(
  pattern: Pattern,
  cylinders: number,
  { afterMisfire: byClass }: FindingRow,
): Readonly<Record<string, number>> | undefined {
  if (!byClass) return undefined;
  const chances: Record<string, number> = {};
  for (const [set, chance] of pattern) {
    const row = byClass[misfireClass(set, cylinders)];
    for (const [option, own] of Object.entries(row)) {
      chances[option] = (chances[option] ?? 0) + chance * own;
    }
  }
  return Object.fromEntries(
    Object.entries(chances).map(([option, sum]) => {
      const same = Math.round(sum * DIGITS) / DIGITS;
      return [option, Math.round(same * STEPS) / STEPS];
    }),
  );
}
