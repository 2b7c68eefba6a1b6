// The door of the library. Everything behind it has a doc comment; adding a name is a conscious act
// (tests/exports.test.ts holds the list).

// The next step: the check that pays, or the repair that is likely enough.
export type {
  CheckOutcome,
  Next,
  NextCall,
  NextCheck,
  NextRepair,
  NextStep,
  Withheld,
} from "./advice/advice.ts";
export { refusal } from "./advice/at-hand.ts";
export {
  type MendedFault,
  type Mending,
  mend,
  type NotYet,
} from "./advice/mend.ts";
export { type NextOptions, next } from "./advice/next.ts";
export { checkFindings } from "./compile/check-finding.ts";
export { shareOf } from "./compile/prior.ts";
export { type CandidateEngine, candidateEngines } from "./engine/candidates.ts";
export { checkProfile } from "./engine/check-profile.ts";
export { demoProfiles } from "./engine/demo.ts";
export { describeEngine, type EngineDescription } from "./engine/describe-engine.ts";
export type { Connector, Engine } from "./engine/engine.ts";
export { genericProfiles } from "./engine/generic.ts";
// Engines: what a user knows of one, and what follows from it.
export type {
  Build,
  ConnectorProfile,
  CylinderName,
  EngineProfile,
  Figures,
  Fuelling,
  IgnitionKind,
  Layout,
  Range,
  Switching,
} from "./engine/profile.ts";
export { IGNITION_KINDS } from "./engine/profile.ts";
export { allProfiles, cylinderCounts, profileById } from "./engine/profile-library.ts";
export { resolveEngine } from "./engine/resolve-engine.ts";
export { servedBy, servesAll } from "./engine/served-by.ts";
export { isAlikePart, WAY_TELLING } from "./explain/alike.ts";
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
export { type FaultAt, type WhyOptions, why } from "./explain/why.ts";
export { ACCESS_ROWS } from "./knowledge/access.ts";
export {
  type Answer,
  type AtHand,
  type Finding,
  REPAIR_RESULTS,
  type RepairDone,
  type RepairResult,
} from "./knowledge/answer.ts";
export { holdsTool, type PlacedStep, toolsIn } from "./knowledge/at-hand.ts";
export { CAUTIONS, cautionsHere } from "./knowledge/caution.ts";
export { CHECKS } from "./knowledge/check.ts";
// A workshop's own numbers over the tables, and what every number rests on.
export { checkOverlay } from "./knowledge/check-overlay.ts";
export { CODE_FAMILIES, type CodeFamily, MISFIRE_CODES } from "./knowledge/code.ts";
// Round a repair: may one drive, what is put back, what proves it, when is the next service due?
export { DRIVE_RULES } from "./knowledge/drive-rule.ts";
export { runsEngine, turnsEngine } from "./knowledge/engine-runs.ts";
export { EXCHANGE, exchangesFirst } from "./knowledge/exchange.ts";
// Knowledge: the tables, to read.
export { FINDINGS } from "./knowledge/finding.ts";
export { FAULTS, KNOWLEDGE, type Knowledge } from "./knowledge/knowledge.ts";
export { LIMP_HOME, LIMP_HOME_OLDER, type LimpHome } from "./knowledge/limp-home.ts";
export { saysCured } from "./knowledge/made-by-check.ts";
export { overlayKnowledge } from "./knowledge/overlay.ts";
export type { ProofSign, ProofStep } from "./knowledge/proof-drive.ts";
export {
  type KnownNumber,
  type NumberTable,
  type Provenance,
  provenance,
  type Tally,
} from "./knowledge/provenance.ts";
export { PUT_BACK } from "./knowledge/put-back.ts";
export { REPAIRS } from "./knowledge/repair.ts";
export type {
  AccessRow,
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
  PartsPrice,
  RepairChange,
  RepairRow,
  Tool,
  Topic,
} from "./knowledge/schema.ts";
export {
  DRIVE_LEVELS,
  type DriveCondition,
  type DriveLevel,
  type DriveLevelRow,
  type DriveRuleRow,
  type PutBackRow,
} from "./knowledge/schema.ts";
export { stepCautions } from "./knowledge/step-caution.ts";
export { findingFor, hasDiagnosticPort, suitsEngine } from "./knowledge/suits.ts";
// What the words of the trade mean.
export { TERMS, type TermRow } from "./knowledge/term.ts";
export type { WearPattern, WearPatternRow } from "./knowledge/wear-pattern.ts";
export {
  type CrowFoot,
  crowFootSetting,
  jointTorqueBounds,
  lubricatedTorque,
  type PlugTorqueCheck,
  plugTorqueCheck,
  type ThreadState,
} from "./physics/torque.ts";
export type { Spread } from "./physics/wear.ts";
export { type CalendarEvent, calendarFile } from "./service/calendar.ts";
export { type DriveAdvice, type DriveOptions, driveAdvice } from "./service/drive.ts";
export { type LastService, type NextService, nextService } from "./service/due.ts";
export {
  type ProofOptions,
  type ProofPlan,
  type ProofResult,
  proofPlan,
  proofResult,
  type TrialOutcome,
} from "./service/proof.ts";
export { type PutBackLine, putBackAfter, putBackList, type ShopUnits } from "./service/put-back.ts";
export { checkRecord, type PlugCourse, type PlugEntry, type PlugRecord } from "./service/record.ts";
export { believedCured, type TrialOptions, trialsNeeded } from "./service/trial.ts";
export {
  type WearLine,
  type WearOptions,
  type WearReport,
  wearReport,
} from "./service/wear-record.ts";
export { convert, type Unit, type UnitLike } from "./units/convert.ts";
// Inputs that cannot be used: every problem with its path and what to write instead.
export { InputError, type Problem, pointer } from "./units/problem.ts";
