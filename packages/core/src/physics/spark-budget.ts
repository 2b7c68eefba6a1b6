// Does the coil have the voltage that the plug needs, and at which gap does it fall short? The two sides of
// every spark as the simulator has them, for one plug in a warm engine.
import { firesInPairs } from "../engine/firing-group.ts";
import type { IgnitionKind } from "../engine/profile.ts";
import { ENGINE_RANGE, plugDemand, uniformBreakdown } from "./breakdown.ts";
import { sparkGas } from "./simulated-charge.ts";
import { COILS } from "./simulated-engine.ts";
import { SIMULATED_REGIMES } from "./simulated-regime.ts";
import { coilVolts, EXHAUST_STROKE, ROTOR_GAP_V } from "./simulated-spark.ts";

/** One plug, its coil and the load. */
export interface SparkSetting {
  readonly ignition: IgnitionKind;
  /** Within `SPARK_RANGE`; the engine fit holds there only. */
  readonly gapM: number;
  /** Pressure in the intake: about 30 kPa at idle, 97 kPa with the throttle open. */
  readonly intakePa: number;
  readonly isFineWire: boolean;
  /** The centre electrode is positive, as on one plug of each double coil. */
  readonly isReversed: boolean;
  /** Energy of the coil against a sound one. */
  readonly coilStrength: number;
  readonly supplyV: number;
}

/** Both sides, V. */
export interface SparkBudget {
  /** What the plug needs: lowest and highest of two published fits. */
  readonly plugV: readonly [low: number, high: number];
  /** What stands in series with it: the companion in its exhaust stroke, the gap of a rotor. */
  readonly seriesV: number;
  readonly availableV: number;
  /** `either`: the two fits disagree about it. */
  readonly fires: "yes" | "either" | "no";
}

/** A budget at one gap. */
export interface BudgetAtGap extends SparkBudget {
  readonly gapM: number;
}

/** All gaps at one load. */
export interface BudgetCurve {
  readonly setting: SparkSetting;
  readonly here: SparkBudget;
  readonly curve: readonly BudgetAtGap[];
  /** Smallest gap at which neither fit leaves enough; `undefined` when all gaps of the range may fire. */
  readonly failsFromM: number | undefined;
  /** Largest gap up to which both fits leave enough; `undefined` when none does. */
  readonly firesToM: number | undefined;
}

/** Where a budget may be asked. */
export const SPARK_RANGE = {
  gapM: ENGINE_RANGE.gapM,
  intakePa: [30e3, 97e3],
  coilStrength: [0.1, 1],
  supplyV: [8, 14],
} as const;

const GAP_STEP_M = 0.02e-3;

/** Needed against available at a gap and a load. */
export function sparkBudget(setting: SparkSetting): SparkBudget {
  const { ignition, gapM, intakePa, isFineWire, isReversed, coilStrength, supplyV } = setting;
  const gas = sparkGas({ ...SIMULATED_REGIMES.pull, intakePa }, 1);
  const plugV = plugDemand({ gapM, ...gas }, { isFineWire, isReversed });
  const seriesV = inSeries(ignition, gapM);
  const coil = { ...COILS[ignition], strength: coilStrength, feedOhm: 0 };
  const availableV = coilVolts(coil, supplyV);
  const [low, high] = plugV;
  const surely = high + seriesV <= availableV ? "yes" : "either";
  return { plugV, seriesV, availableV, fires: low + seriesV <= availableV ? surely : "no" };
}

/** The budget of a setting and those of all gaps beside it. */
export function sparkCurve(setting: SparkSetting): BudgetCurve {
  const [least, most] = SPARK_RANGE.gapM;
  const steps = Math.round((most - least) / GAP_STEP_M);
  const curve = Array.from({ length: steps + 1 }, (_, i) => {
    const gapM = least + ((most - least) * i) / steps;
    return { gapM, ...sparkBudget({ ...setting, gapM }) };
  });
  return {
    setting,
    here: sparkBudget(setting),
    curve,
    failsFromM: curve.find(({ fires }) => fires === "no")?.gapM,
    firesToM: curve.findLast(({ fires }) => fires === "yes")?.gapM,
  };
}

function inSeries(ignition: IgnitionKind, gapM: number): number {
  if (ignition === "distributor") return ROTOR_GAP_V;
  return firesInPairs(ignition) ? uniformBreakdown({ gapM, ...EXHAUST_STROKE }) : 0;
}
