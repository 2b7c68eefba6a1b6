// Which screen belongs to an address, and which file holds it? Each is loaded when it is first shown; a
// new screen is one file in `screen/` and one line here.
import type { ComponentType } from "preact";

/**
 * Where a screen stands:
 * - `outside`: no case needed, the screen is alone
 * - `panel`: beside picture and ranking on a desk, alone on a phone; needs a case
 * - `wide`: alone on both; needs a case
 */
export type Frame = "outside" | "panel" | "wide";

export interface ScreenEntry {
  readonly frame: Frame;
  readonly load: () => Promise<ComponentType>;
}

/** By the first part of the address, `#/name/...`; a screen reads the rest from `state/route.ts`. */
export const SCREENS: Readonly<Record<string, ScreenEntry>> = {
  pick: { frame: "outside", load: async () => (await import("./screen/pick.tsx")).Pick },
  engine: { frame: "outside", load: async () => (await import("./screen/pick.tsx")).Pick },
  demo: { frame: "outside", load: async () => (await import("./screen/demo.tsx")).Demo },
  sketch: {
    frame: "outside",
    load: async () => (await import("./screen/sketch.tsx")).SketchScreen,
  },
  more: { frame: "outside", load: async () => (await import("./screen/more.tsx")).More },
  cases: { frame: "outside", load: async () => (await import("./screen/cases.tsx")).Cases },
  hand: { frame: "outside", load: async () => (await import("./screen/hand.tsx")).Hand },
  glossary: {
    frame: "outside",
    load: async () => (await import("./screen/glossary.tsx")).Glossary,
  },
  lesson: { frame: "outside", load: async () => (await import("./screen/lesson.tsx")).Lesson },
  link: { frame: "outside", load: async () => (await import("./screen/link.tsx")).Link },
  record: { frame: "wide", load: async () => (await import("./screen/record.tsx")).Record },
  "hand-over": {
    frame: "wide",
    load: async () => (await import("./screen/hand-over.tsx")).HandOver,
  },
  question: { frame: "panel", load: async () => (await import("./screen/question.tsx")).Question },
  check: { frame: "panel", load: async () => (await import("./screen/check.tsx")).Check },
  checks: { frame: "panel", load: async () => (await import("./screen/checks.tsx")).Checks },
  drive: { frame: "panel", load: async () => (await import("./screen/drive.tsx")).Drive },
  step: { frame: "panel", load: async () => (await import("./screen/step.tsx")).Step },
  mend: { frame: "panel", load: async () => (await import("./screen/mend.tsx")).Mend },
  proof: { frame: "panel", load: async () => (await import("./screen/proof.tsx")).Proof },
  repairs: { frame: "panel", load: async () => (await import("./screen/repairs.tsx")).Repairs },
  sure: { frame: "panel", load: async () => (await import("./screen/sure.tsx")).Sure },
  compare: { frame: "outside", load: async () => (await import("./screen/compare.tsx")).Compare },
  add: { frame: "panel", load: async () => (await import("./screen/add.tsx")).Add },
  answers: { frame: "panel", load: async () => (await import("./screen/answers.tsx")).Answers },
};

/** Stands above every screen of a case. */
export const DRIVE_ANSWER: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/drive-answer.tsx")).DriveAnswer,
};

/** Stands beside the ranking. */
export const NEXT_STEP: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/next-step.tsx")).NextStepCard,
};

/** Stands below the fault that is picked in the ranking. */
export const FAULT_DETAIL: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/fault-detail.tsx")).PickedFault,
};

/** Stands above the list of a ranking whose answers disagree. */
export const CONFLICT: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/conflict.tsx")).Conflict,
};

/** Stands above the ranking. */
export const DIAL_PICTURE: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/picture.tsx")).DialPicture,
};

/** Stands beside the dial on a desk, below the ranking on a phone. */
export const BLOCK_PICTURE: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/block-picture.tsx")).BlockPicture,
};

/** Stands below the ranking. */
export const RANKING_NOTES: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/ranking-notes.tsx")).RankingNotes,
};

/** Stands in the place of the ranking once the case is closed. */
export const MENDED: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/mended.tsx")).Mended,
};
