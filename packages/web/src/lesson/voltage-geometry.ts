// Where voltage needed and voltage there lie on their chart: gaps across, kilovolts upwards.
import { type BudgetCurve, SPARK_RANGE } from "@half-order/core/physics";
import { roundStep } from "../record/chart-geometry.ts";
import { fromUnit, type UnitChoice, units } from "../state/unit.ts";

export const VOLTAGE = {
  width: 360,
  height: 210,
  left: 34,
  right: 10,
  top: 12,
  bottom: 24,
} as const;

export interface VoltagePlan {
  readonly x: (gapM: number) => number;
  readonly y: (volts: number) => number;
  /** Between the two formulas, with what stands in series. */
  readonly needed: string;
  /** Volts that get a number at the side. */
  readonly levels: readonly number[];
  /** Gaps that get a number below, metres. */
  readonly gaps: readonly number[];
}

export interface GapSteps {
  readonly stepM: number;
  readonly rangeM: readonly [least: number, most: number];
}

/** The gaps that can be set: whole steps of the person's unit within what the formulas hold for, metres. */
export function gapSteps(unit: UnitChoice["gap"] = units.value.gap): GapSteps {
  const stepM = fromUnit(unit === "mm" ? 0.02 : 1, "gap", unit) / 1000;
  const [least, most] = SPARK_RANGE.gapM;
  // Whole steps, but for the dust of the arithmetic.
  const dust = 1e-6;
  const low = stepM * Math.ceil(least / stepM - dust);
  return { stepM, rangeM: [low, stepM * Math.floor(most / stepM + dust)] };
}

export function voltagePlan({ curve, here }: BudgetCurve, steps = gapSteps()): VoltagePlan {
  const [least, most] = SPARK_RANGE.gapM;
  const top = Math.max(here.availableV, ...curve.map(({ plugV, seriesV }) => plugV[1] + seriesV));
  const step = roundStep(top / 4);
  const levels = Array.from({ length: Math.ceil(top / step) + 1 }, (_, i) => i * step);
  const highest = levels.at(-1) ?? top;
  const inner = {
    width: VOLTAGE.width - VOLTAGE.left - VOLTAGE.right,
    height: VOLTAGE.height - VOLTAGE.top - VOLTAGE.bottom,
  };
  const x = (gapM: number): number =>
    round(VOLTAGE.left + (inner.width * (gapM - least)) / (most - least));
  const y = (volts: number): number => round(VOLTAGE.top + inner.height * (1 - volts / highest));
  const edge = (side: 0 | 1): readonly string[] =>
    curve.map(({ gapM, plugV, seriesV }) => `${x(gapM)} ${y(plugV[side] + seriesV)}`);
  const needed = `M${edge(1).join("L")}L${edge(0).toReversed().join("L")}Z`;
  const { stepM, rangeM } = steps;
  const middle = stepM * Math.round((rangeM[0] + rangeM[1]) / 2 / stepM);
  return { x, y, needed, levels, gaps: [rangeM[0], middle, rangeM[1]] };
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
