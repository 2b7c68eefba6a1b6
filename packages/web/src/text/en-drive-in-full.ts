// The words of the drive screen beyond the line that stands on every screen of a case.
import type { DriveLevel } from "@half-order/core";

export const DRIVE_IN_FULL = {
  before:
    "From answers given before the repair: it holds until what called for it is seen to be gone.",
  askMore: "One look is missing, and what it shows can make this stricter.",
  nothingMore: "That is no clearance: what nobody has looked at counts for nothing here.",
  steps: "Do this",
  why: "Because",
  lifts: "What would change it",
  calls: (level: string): string => `alone it would say: ${level}`,
  levels: {
    "stop-now": "stop now",
    "do-not-drive": "be towed",
    "to-safety-only": "to a safe place only",
    "drive-gently": "drive gently",
    "normal-care": "normal care",
  } satisfies Record<DriveLevel, string>,
  never: "Never",
  missing: (names: string): string => `Known to miss: cylinder ${names}.`,
  rules:
    "No chance and no likely part softens this: each answer that calls for caution counts in full, and the strictest decides.",
  overruled:
    "The vehicle maker's manual, the law of the road and a technician at the car overrule this page.",
  limp: "How to cover the way to safety",
  limits: "At most, and these limits are estimates",
  limitsMore: "That another car went further proves nothing for this one.",
  speed: "Speed",
  distance: "Distance",
  revs: "Revs",
  revsOf: (low: string, high: string): string => `${low} to ${high} a minute`,
  look: "Stop and look",
  lookEvery: (minutes: number): string => `every ${minutes} minutes`,
  speedIn: { km: "km/h", mi: "mph" },
  tow: "Do not set out, call a tow, when",
  fuelCut: "Cutting the fuel of a dead cylinder",
  afterwards: "Afterwards",
};
