// The thread's side of the lesson: breaks the part and drives. The page loads this file for its address only,
// and starts a thread on it, which then shares its pieces with the page.
import { type EngineProfile, resolveEngine } from "@half-order/core";
import { type SimulatedFault, type Watched, watch } from "@half-order/core/physics";
import type { Turn } from "../state/thinker.ts";

export interface LessonQuestion {
  readonly profile: EngineProfile;
  readonly fault: SimulatedFault;
  /** The same seed breaks it in the same size. */
  readonly seed: number;
}

export interface LessonAnswer {
  /** Left out when no size of the break is noticed and lets the engine run. */
  readonly watched?: Watched;
  /** What broke in the thread, in its own words. */
  readonly broke?: string;
}

/** The address of this script, to start a thread on. */
export const LESSON_SCRIPT = import.meta.url;

/** What the simulator shows. */
export function answerLesson({ profile, fault, seed }: LessonQuestion): LessonAnswer {
  const watched = watch(resolveEngine(profile), fault, seed);
  return watched ? { watched } : {};
}

if (typeof document === "undefined" && typeof postMessage === "function") {
  addEventListener("message", ({ data }: MessageEvent<LessonQuestion & Turn>) => {
    postMessage({ ...answerOrBreak(data), turn: data.turn });
  });
}

function answerOrBreak(question: LessonQuestion): LessonAnswer {
  try {
    return answerLesson(question);
  } catch (error) {
    return { broke: String(error) };
  }
}
