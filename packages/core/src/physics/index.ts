// The door of the physics: an independent simulator of broken engines, and the voltage that a spark needs.
// It shares no number with the tables that rank faults.

export type { Place, PlaceKind } from "../engine/place.ts";
export type { CrankRhythm, OrderSwing, StrokeGain } from "./crank-rhythm.ts";
export { IDLING_SIX, type Running } from "./crank-torque.ts";
export { type SimulatedFault, SOUND_LOSS } from "./simulate.ts";
export { SIMULATED_BREAKS, type SimulatedFaultId } from "./simulated-break.ts";
export { BROKEN_FIGURES, type BrokenFigure, type BrokenFigureName } from "./simulated-figure.ts";
export type { PairFiring, PairLeg } from "./simulated-pair.ts";
export { SIMULATED_REGIME_NAMES, type SimulatedRegimeName } from "./simulated-regime.ts";
export {
  type BreakablePlace,
  breakablePlaces,
  type OfUnits,
  type Watched,
  type WatchedRegime,
  type WatchedShake,
  watch,
} from "./simulated-watch.ts";
export {
  type BudgetAtGap,
  type BudgetCurve,
  SPARK_RANGE,
  type SparkBudget,
  type SparkSetting,
  sparkBudget,
  sparkCurve,
} from "./spark-budget.ts";
