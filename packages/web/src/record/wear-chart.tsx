// The gaps of one set of plugs side by side: where they began, where the limit is, which one stands apart.
import type { Figures, WearReport } from "@half-order/core";
import type { VNode } from "preact";
import { sayFigure, sayQuantity, toUnit, units } from "../state/unit.ts";
import { WEAR } from "../text/en-record.ts";
import { CHART, chartPlan } from "./chart-geometry.ts";

/** Nothing for a record without gaps. The table beside it says the same in words. */
export function WearChart({ report }: { report: WearReport }): VNode | null {
  const unit = units.value.gap;
  const own = (gapMm: number): number => toUnit(gapMm, "gap", unit);
  const { lines, newGapMm, limitMm, usualMm } = report;
  if (lines.length === 0) return null;
  const usual = usualMm && ([own(usualMm.low), own(usualMm.high)] as const);
  const plan = chartPlan({
    gaps: lines.map(({ gapMm }) => own(gapMm)),
    fresh: newGapMm === undefined ? undefined : own(newGapMm),
    limit: limitMm === undefined ? undefined : own(limitMm),
    usual,
  });
  const right = plan.width - CHART.right;
  const across = (gap: number): string => `M${CHART.left} ${plan.y(gap)}H${right}`;
  const floor = plan.y(newGapMm === undefined ? (plan.ticks[0] ?? 0) : own(newGapMm));
  return (
    <svg class="wear-chart" viewBox={`0 0 ${plan.width} ${CHART.height}`} aria-hidden="true">
      {usual && (
        <rect
          class="wear-usual"
          x={CHART.left}
          y={plan.y(usual[1])}
          width={right - CHART.left}
          height={plan.y(usual[0]) - plan.y(usual[1])}
        />
      )}
      {plan.ticks.map((gap) => (
        <g key={gap} class="wear-tick">
          <path d={across(gap)} />
          <text x={CHART.left - 6} y={plan.y(gap)}>
            {sayFigure(gap, unit)}
          </text>
        </g>
      ))}
      {newGapMm !== undefined && <path class="wear-fresh" d={across(own(newGapMm))} />}
      {limitMm !== undefined && <path class="wear-limit" d={across(own(limitMm))} />}
      {lines.map(({ cylinder, gapMm, isOutlier }, i) => {
        const [x, y] = [plan.x[i] ?? 0, plan.y(own(gapMm))];
        return (
          <g key={cylinder} class={isOutlier ? "wear-line is-apart" : "wear-line"}>
            <path d={`M${x} ${floor}V${y}`} />
            {isOutlier ? (
              <path class="wear-mark" d={`M${x} ${y - 8}l8 8-8 8-8-8z`} />
            ) : (
              <circle class="wear-mark" cx={x} cy={y} r={5} />
            )}
            <text x={x} y={Math.min(y, floor) - 15}>
              {sayFigure(own(gapMm), unit)}
            </text>
            <text class="wear-name" x={x} y={CHART.height - 12}>
              {cylinder}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

interface WearKeyProps {
  readonly report: WearReport;
  /** The gap that the manual gives for a new plug. */
  readonly range: Figures["plugGapMm"];
  /** Whether the record itself says with which gap they went in. */
  readonly isFreshKnown: boolean;
}

/** What the lines of the chart mean and where they come from, as far as they are drawn. */
export function WearKey({ report, range, isFreshKnown }: WearKeyProps): VNode {
  const { lines, newGapMm, limitMm, usualMm } = report;
  const isApart = lines.some(({ isOutlier }) => isOutlier);
  const fresh = isFreshKnown ? WEAR.key.fresh : WEAR.key.freshOfManual;
  const rows: readonly (readonly [string | false | undefined, string, string])[] = [
    [newGapMm !== undefined && fresh(sayQuantity(newGapMm, "gap")), "M2 10H34", "wear-fresh"],
    [range && limitMm !== undefined && sayLimit(limitMm, range[1]), "M2 10H34", "wear-limit"],
    [usualMm && WEAR.key.usual, "M2 3H34V17H2Z", "wear-usual"],
    [isApart && WEAR.key.apart, "M18 2l8 8-8 8-8-8z", "wear-mark is-apart"],
  ];
  return (
    <ul class="wear-key">
      {rows.map(([words, d, kind]) =>
        words ? (
          <li key={kind}>
            <svg viewBox="0 0 36 20" aria-hidden="true">
              <path class={kind} d={d} />
            </svg>
            {words}
          </li>
        ) : null,
      )}
    </ul>
  );
}

function sayLimit(limitMm: number, widestMm: number): string {
  const percent = Math.round((limitMm / widestMm - 1) * 100);
  return WEAR.key.limit(sayQuantity(limitMm, "gap"), percent);
}
