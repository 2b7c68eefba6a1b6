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
  /** Each file calls its screen so: the list of them stays short. */
  readonly load: () => Promise<{ readonly Screen: ComponentType }>;
}

/** By the first part of the address, `#/name/...`; a screen reads the rest from `state/route.ts`. */
export const SCREENS: Readonly<Record<string, ScreenEntry>> = {
  pick: { frame: "outside", load: () => import("./screen/pick.tsx") },
  engine: { frame: "outside", load: () => import("./screen/pick.tsx") },
  demo: { frame: "outside", load: () => import("./screen/demo.tsx") },
  sketch: {
    frame: "outside",
    load: () => import("./screen/sketch.tsx"),
  },
  more: { frame: "outside", load: () => import("./screen/more.tsx") },
  cases: { frame: "outside", load: () => import("./screen/cases.tsx") },
  hand: { frame: "outside", load: () => import("./screen/hand.tsx") },
  glossary: {
    frame: "outside",
    load: () => import("./screen/glossary.tsx"),
  },
  lesson: { frame: "outside", load: () => import("./screen/lesson.tsx") },
  practice: { frame: "outside", load: () => import("./screen/practice.tsx") },
  link: { frame: "outside", load: () => import("./screen/link.tsx") },
  record: { frame: "wide", load: () => import("./screen/record.tsx") },
  "hand-over": {
    frame: "wide",
    load: () => import("./screen/hand-over.tsx"),
  },
  question: { frame: "panel", load: () => import("./screen/question.tsx") },
  check: { frame: "panel", load: () => import("./screen/check.tsx") },
  checks: { frame: "panel", load: () => import("./screen/checks.tsx") },
  drive: { frame: "panel", load: () => import("./screen/drive.tsx") },
  step: { frame: "panel", load: () => import("./screen/step.tsx") },
  mend: { frame: "panel", load: () => import("./screen/mend.tsx") },
  proof: { frame: "panel", load: () => import("./screen/proof.tsx") },
  repairs: { frame: "panel", load: () => import("./screen/repairs.tsx") },
  sure: { frame: "panel", load: () => import("./screen/sure.tsx") },
  compare: { frame: "outside", load: () => import("./screen/compare.tsx") },
  add: { frame: "panel", load: () => import("./screen/add.tsx") },
  answers: { frame: "panel", load: () => import("./screen/answers.tsx") },
};

/** Stands above every screen of a case. */
export const DRIVE_ANSWER: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/drive-answer.tsx"),
};

/** Stands beside the ranking. */
export const NEXT_STEP: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/next-step.tsx"),
};

/** Stands below the fault that is picked in the ranking. */
export const FAULT_DETAIL: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/fault-detail.tsx"),
};

/** Stands above the list of a ranking whose answers disagree. */
export const CONFLICT: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/conflict.tsx"),
};

/** Stands above the ranking. */
export const DIAL_PICTURE: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/picture.tsx"),
};

/** Stands beside the dial on a desk, below the ranking on a phone. */
export const BLOCK_PICTURE: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/block-picture.tsx"),
};

/** Stands below the ranking. */
export const RANKING_NOTES: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/ranking-notes.tsx"),
};

/** Stands in the place of the ranking once the case is closed. */
export const MENDED: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/mended.tsx"),
};
