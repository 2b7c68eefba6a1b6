// The door of the library. Everything behind it has a doc comment; adding a name is a conscious act
// (tests/exports.test.ts holds the list).

export { checkFindings } from "./compile/check-finding.ts";
export { shareOf } from "./compile/prior.ts";
export { type CandidateEngine, candidateEngines } from "./engine/candidates.ts";
export { checkProfile } from "./engine/check-profile.ts";
export { describeEngine, type EngineDescription } from "./engine/describe-engine.ts";
export type { Connector, Engine } from "./engine/engine.ts";
// Engines: what a user knows of one, and what follows from it.
export type {
  ConnectorProfile,
  CylinderName,
  EngineProfile,
  Figures,
  IgnitionKind,
  Layout,
  Range,
} from "./engine/profile.ts";
export { IGNITION_KINDS } from "./engine/profile.ts";
export { allProfiles, profileById } from "./engine/profile-library.ts";
export { resolveEngine } from "./engine/resolve-engine.ts";
export { sayProbability } from "./explain/phrase.ts";
// Ranking: an engine and what was found, in; faults by probability, out.
export { type RankOptions, rank } from "./explain/rank.ts";
export type {
  Fit,
  Ledger,
  LedgerLine,
  OrderCandidate,
  PutRight,
  RankedComponent,
  RankedCylinder,
  RankedFault,
  RankedHypothesis,
  Ranking,
} from "./explain/ranking.ts";
export {
  type NamedFlip,
  type Sensitivity,
  type SensitivityOptions,
  type Stability,
  sensitivity,
} from "./explain/sensitivity.ts";
export { type FaultAt, why } from "./explain/why.ts";
export {
  type Answer,
  type AtHand,
  type Finding,
  REPAIR_RESULTS,
  type RepairDone,
  type RepairResult,
} from "./knowledge/answer.ts";
export { CAUTIONS } from "./knowledge/caution.ts";
export { CHECKS } from "./knowledge/check.ts";
// A workshop's own numbers over the tables, and what every number rests on.
export { checkOverlay } from "./knowledge/check-overlay.ts";
export { CODE_FAMILIES, type CodeFamily, MISFIRE_CODES } from "./knowledge/code.ts";
// Knowledge: the tables, to read.
export { FINDINGS } from "./knowledge/finding.ts";
export { FAULTS, KNOWLEDGE, type Knowledge } from "./knowledge/knowledge.ts";
export { overlayKnowledge } from "./knowledge/overlay.ts";
export {
  type KnownNumber,
  type NumberTable,
  type Provenance,
  provenance,
  type Tally,
} from "./knowledge/provenance.ts";
export type {
  Basis,
  CautionRow,
  CheckChange,
  CheckRow,
  CompanyRow,
  Confidence,
  FaultChange,
  FaultRow,
  FindingKind,
  FindingRow,
  Grounds,
  OptionRow,
  Overlay,
  Topic,
} from "./knowledge/schema.ts";

// Inputs that cannot be used: every problem with its path and what to write instead.
export { InputError, type Problem, pointer } from "./units/problem.ts";
