// The door of the instruments: they show whether the ranking can be trusted, and take no part in it.

export { type Random, randomOf } from "../units/random.ts";
export { type AnsweredCase, BIN_EDGES, type Deviation, deviations } from "./calibration.ts";
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
export type { Question } from "./question.ts";
export { type AnswerSum, type DrawnCase, type Sampler, samplerOf, type Truth } from "./sampler.ts";
export { shakenKnowledge } from "./shake.ts";
