// The thread's side of practising: hides the fault and answers. The page loads this file for its address only;
// the tables and the reasoning come in the thread.
import type { PracticeAnswer, PracticeQuestion } from "./practice/thread-work.ts";
import type { Turn } from "./state/thinker.ts";

/** The address of this script, to start a thread on. */
export const PRACTICE_SCRIPT = import.meta.url;

async function answerOrBreak(question: PracticeQuestion): Promise<PracticeAnswer> {
  try {
    const { fillKnowledge } = await import("./thread-tables.ts");
    await fillKnowledge();
    const { workOut } = await import("./practice/thread-work.ts");
    return workOut(question);
  } catch (error) {
    return { broke: String(error) };
  }
}

if (typeof document === "undefined" && typeof postMessage === "function") {
  addEventListener("message", ({ data }: MessageEvent<PracticeQuestion & Turn>) => {
    void answerOrBreak(data).then((answer) => postMessage({ ...answer, turn: data.turn }));
  });
}
