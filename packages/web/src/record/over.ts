// Which gaps of a set are outside those of the manual? In words, beside the chart that shows it.
import type { Figures, WearReport } from "@half-order/core";
import { sayFigure, sayQuantity, toUnit, units } from "../state/unit.ts";
import { list } from "../text/en.ts";
import { WEAR } from "../text/en-record.ts";

/** The gaps over and under the range of the manual, and which of them are at the limit. */
export function sayOver(
  { lines, limitMm = Number.POSITIVE_INFINITY }: Pick<WearReport, "lines" | "limitMm">,
  [lowMm, highMm]: NonNullable<Figures["plugGapMm"]>,
): string {
  const unit = units.value.gap;
  const range = WEAR.range(sayFigure(toUnit(lowMm, "gap", unit), unit), sayQuantity(highMm, "gap"));
  const over = lines.filter(({ gapMm }) => gapMm > highMm);
  const under = lines.filter(({ gapMm }) => gapMm < lowMm);
  const worn = over.flatMap(({ gapMm, cylinder }) => (gapMm >= limitMm ? [cylinder] : []));
  return [
    over.length > 0 ? WEAR.over(range, sayGaps(over)) : WEAR.noneOver(range),
    under.length > 0 && WEAR.under(sayGaps(under)),
    worn.length > 0 && WEAR.overLimit(list(worn)),
  ]
    .filter(Boolean)
    .join(" ");
}

function sayGaps(lines: WearReport["lines"]): string {
  return list(
    lines.map(({ gapMm, cylinder }) =>
      WEAR.ofCylinder(sayQuantity(gapMm, "gap"), String(cylinder)),
    ),
  );
}
