// The door of the instruments: they show whether the ranking can be trusted, and take no part in it; and a
// fault can be hidden, to practise the looking.

export { type Random, randomOf } from "../units/random.ts";
export { type AnsweredCase, BIN_EDGES, type Deviation, deviations } from "./calibration.ts";
export { type HiddenFault, type HiddenTruth, hideFault } from "./hidden-fault.ts";
export {
  type Bin,
  brier,
  evenEdges,
  expectedCalibrationError,
  type Forecast,
  leading,
  logLoss,
  type Murphy,
  meanProbabilityOfTruth,
  meanReciprocalRank,
  murphy,
  reliabilityBins,
  type Statement,
  topK,
} from "./metrics.ts";
export {
  type Practice,
  type PracticeAct,
  type PracticeCheck,
  type PracticeOffer,
  type PracticePeek,
  type PracticeStep,
  practise,
} from "./practice.ts";
export {
  type Comparison,
  comparePaths,
  type HandedOver,
  type Parting,
  type PartingStep,
  type Path,
  type PathRepair,
  type PathStep,
} from "./practice-path.ts";
export type { Question } from "./question.ts";
export { type AnswerSum, type DrawnCase, type Sampler, samplerOf, type Truth } from "./sampler.ts";
export { shakenKnowledge } from "./shake.ts";
