// The words of the drive answer, which stands on every screen of a case and so comes before all advice.
import type { DriveLevel } from "@half-order/core";

export const DRIVE = {
  title: "May it be driven?",
  ask: "May it be driven? Look at the warning lamp first.",
  askMore: "The lamp is not known yet. What it does can make this stricter.",
  askLink: "What does the lamp do?",
  more: "Why, and what to do",
  unknown:
    "The page cannot work out whether it may be driven. Take that for a no until somebody has looked at it.",
  nothing: "Nothing answered so far speaks against driving with care.",
  nothingMore: "That is no clearance: what nobody has looked at counts for nothing here.",
  before: "From answers given before the repair:",
  beforeMore: "It holds until what called for it is seen to be gone.",
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
  limp: "How to cover the few kilometres",
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
