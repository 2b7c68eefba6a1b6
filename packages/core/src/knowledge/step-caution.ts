// Which cautions does a check or a repair carry where the car stands? Its own, and those of the place, which no row
// has to name.
import { allowsStep, type PlacedStep, type Where } from "./at-hand.ts";
import { CAUTIONS, cautionsHere } from "./caution.ts";
import type { CautionRow } from "./schema.ts";

/**
 * Ids, those of the place first. While the place is not known, a step counts as done wherever such a place lets
 * it be done.
 */
export function stepCautions(step: PlacedStep, where: Where | undefined): readonly string[] {
  const isHere = (place: Where): boolean =>
    where === undefined ? allowsStep(place, step) : place === where;
  const rows: readonly CautionRow[] = CAUTIONS;
  const ofPlace = rows.flatMap((row) => (row.everyStep && row.where?.some(isHere) ? [row.id] : []));
  return [...new Set([...ofPlace, ...cautionsHere(step.cautions, where)])];
}
