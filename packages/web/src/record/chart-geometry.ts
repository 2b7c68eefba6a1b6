// Where the gaps of one set of plugs lie on a small chart: gap upwards, cylinders side by side.

export const CHART = { left: 44, right: 8, top: 22, bottom: 30, step: 46, height: 190 } as const;

/** What is drawn, in one unit: the person's own. */
export interface ChartInput {
  /** Gaps by cylinder, in the order of the engine. */
  readonly gaps: readonly number[];
  /** The gap with which they went in. */
  readonly fresh?: number | undefined;
  readonly limit?: number | undefined;
  /** What is usual after such a distance. */
  readonly usual?: readonly [low: number, high: number] | undefined;
}

export interface ChartPlan {
  readonly width: number;
  /** Centre of each cylinder's column. */
  readonly x: readonly number[];
  /** Height on the chart of a gap. */
  readonly y: (gap: number) => number;
  /** Gaps that get a line and a number, ascending. */
  readonly ticks: readonly number[];
}

/** The plan of a chart that holds everything that is drawn on it, with round numbers at its side. */
export function chartPlan({ gaps, fresh, limit, usual = [] as never }: ChartInput): ChartPlan {
  const shown = [...gaps, ...usual, fresh ?? [], limit ?? []].flat();
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const step = roundStep((high - low || high || 1) / 3);
  const from = Math.floor(low / step) * step;
  const to = Math.max(Math.ceil(high / step) * step, from + step);
  const inner = CHART.height - CHART.top - CHART.bottom;
  const y = (gap: number): number =>
    Math.round((CHART.top + inner * (1 - (gap - from) / (to - from))) * 100) / 100;
  return {
    width: CHART.left + CHART.right + CHART.step * gaps.length,
    x: gaps.map((_, i) => CHART.left + CHART.step * (i + 0.5)),
    y,
    ticks: Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) =>
      Number((from + i * step).toPrecision(6)),
    ),
  };
}

/** The nearest of 1, 2 and 5 times a power of ten that is not smaller. */
export function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const times = [1, 2, 5, 10].find((each) => each * power >= rough * (1 - 1e-9)) ?? 10;
  return Number((times * power).toPrecision(6));
}
