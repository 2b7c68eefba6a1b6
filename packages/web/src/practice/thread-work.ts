// What does the thread work out for who practises? How it stands, and after the repair both ways.
import { type EngineProfile, InputError, type Problem, type RepairDone } from "@half-order/core";
import {
  type Comparison,
  comparePaths,
  type HiddenFault,
  hideFault,
  type Practice,
  type PracticeAct,
  practise,
} from "@half-order/core/instrument";

export interface PracticeQuestion {
  readonly profile: EngineProfile;
  /** The same seed hides the same fault. */
  readonly seed: number;
  readonly acts: readonly PracticeAct[];
  /** The repair that ends the search. */
  readonly wanted?: RepairDone;
}

export interface PracticeAnswer {
  readonly practice?: Practice;
  /** Once a repair was chosen. */
  readonly comparison?: Comparison;
  /** Of an address that cannot be used. */
  readonly problems?: readonly Problem[];
  /** What broke in the thread, in its own words. */
  readonly broke?: string;
}

/** The fault that was hidden last: to hide it takes longer than to look at it. */
let last: { readonly key: string; readonly hidden: HiddenFault } | undefined;

function hiddenIn({ profile, seed }: PracticeQuestion): HiddenFault {
  const key = JSON.stringify([profile, seed]);
  if (last?.key !== key) last = { key, hidden: hideFault(profile, seed) };
  return last.hidden;
}

/** Problems of the input are an answer too. */
export function workOut(question: PracticeQuestion): PracticeAnswer {
  try {
    const hidden = hiddenIn(question);
    const practice = practise(hidden, question.acts);
    if (!question.wanted) return { practice };
    return { practice, comparison: comparePaths(hidden, question.acts, question.wanted) };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}
