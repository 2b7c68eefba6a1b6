// What a repair tells: how an engine runs afterwards when the repair cured it, and when it did not.
import type { RepairResult } from "./answer.ts";
import type { Grounds } from "./schema.ts";

export interface RepairResultRow {
  readonly result: RepairResult;
  /** Words on the button. */
  readonly say: string;
  /** Chance of the result when the repair cured what was wrong. */
  readonly cured: number;
  /** Chance when it did not and the fault always shows. */
  readonly always: number;
  /** Chance when it did not and the fault hardly ever shows, so that a quiet spell looks like a cure. */
  readonly seldom: number;
}

/** Each column adds up to 1. */
export const REPAIR_RESULT_ROWS: readonly RepairResultRow[] = [
  { result: "cured", say: "It runs right", cured: 0.88, always: 0.02, seldom: 0.3 },
  { result: "better", say: "Better, not right", cured: 0.06, always: 0.08, seldom: 0.1 },
  { result: "same", say: "No change", cured: 0.03, always: 0.8, seldom: 0.3 },
  { result: "worse", say: "Worse", cured: 0.01, always: 0.06, seldom: 0.05 },
  {
    result: "came-back",
    say: "Right at first, then it came back",
    cured: 0.02,
    always: 0.04,
    seldom: 0.25,
  },
];

export const REPAIR_RESULT_GROUNDS: Grounds = { basis: "memory", confidence: "low" };
