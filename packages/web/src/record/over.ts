// Which gaps of a set are over those of the manual? In words, beside the chart that shows it.
import type { Figures, WearReport } from "@half-order/core";
import { sayFigure, sayQuantity, toUnit, units } from "../state/unit.ts";
import { list } from "../text/en.ts";
import { WEAR } from "../text/en-record.ts";

/** The gaps over the range of the manual, and which of them are at the limit. */
export function sayOver(
  { lines, limitMm = Number.POSITIVE_INFINITY }: Pick<WearReport, "lines" | "limitMm">,
  [lowMm, highMm]: NonNullable<Figures["plugGapMm"]>,
): string {
  const unit = units.value.gap;
  const range = WEAR.range(sayFigure(toUnit(lowMm, "gap", unit), unit), sayQuantity(highMm, "gap"));
  const over = lines.filter(({ gapMm }) => gapMm > highMm);
  if (over.length === 0) return WEAR.noneOver(range);
  const gaps = over.map(({ gapMm, cylinder }) =>
    WEAR.ofCylinder(sayQuantity(gapMm, "gap"), String(cylinder)),
  );
  const worn = over.flatMap(({ gapMm, cylinder }) => (gapMm >= limitMm ? [cylinder] : []));
  const words = WEAR.over(range, list(gaps));
  return worn.length > 0 ? `${words} ${WEAR.overLimit(list(worn))}` : words;
}
