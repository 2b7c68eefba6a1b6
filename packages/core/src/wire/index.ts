// The door of the wire format: what a saved case and an HTTP message look like.

export { nearest } from "../units/nearest.ts";
export {
  CASE_VERSION,
  type Case,
  type CaseDocument,
  type CaseReading,
  caseSchema,
  parseCase,
  resolveCase,
  type WhyDocument,
  whySchema,
} from "./case.ts";
export { caseProblems } from "./case-problem.ts";
export {
  cautionSchema,
  checkSchema,
  engineDescriptionSchema,
  faultSchema,
  findingRowSchema,
  repairSchema,
} from "./catalogue.ts";
export { driveSchema } from "./drive.ts";
export { findingSchema } from "./finding.ts";
export { parseJson } from "./json.ts";
export { type MendDocument, mendRequestSchema, mendSchema } from "./mend.ts";
export { nextSchema } from "./next.ts";
export { type OverlayReading, overlaySchema, parseOverlay } from "./overlay.ts";
export { profileSchema } from "./profile.ts";
export { ledgerSchema, rankingSchema } from "./ranking.ts";
export { plugRecordSchema } from "./record.ts";
export { sensitivitySchema } from "./sensitivity.ts";
export { type Reading, readShape } from "./shape.ts";
export {
  atHandSchema,
  type ProvingDrive,
  repairDoneSchema,
  type SpentTime,
  type TickedLine,
  type WorkBook,
  workBookSchema,
} from "./work.ts";
