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
export {
  cautionSchema,
  checkSchema,
  engineDescriptionSchema,
  faultSchema,
  findingRowSchema,
} from "./catalogue.ts";
export { findingSchema } from "./finding.ts";
export { type OverlayReading, overlaySchema, parseOverlay } from "./overlay.ts";
export { profileSchema } from "./profile.ts";
export { ledgerSchema, rankingSchema } from "./ranking.ts";
export { type Reading, readShape } from "./shape.ts";
export { atHandSchema, repairDoneSchema } from "./work.ts";
