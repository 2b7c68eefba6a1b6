// Starts the page. The same script, run as a thread of the page, answers its questions; each side loads
// what it alone needs.
import type { Question, Thought, Turn } from "./state/thinker.ts";

if (typeof document === "undefined") answerQuestions();
else void import("./page.tsx").then(({ startPage }) => startPage(document, import.meta.url));

/** What is known needs no answer. */
type Answered = Promise<Thought> | undefined;

/** Listens at once, so that no question is lost while the tables are still on their way. */
function answerQuestions(): void {
  const thread = import("./thread.ts");
  addEventListener("message", ({ data }: MessageEvent<Question & Turn>) => {
    void thread
      .then(({ answer, goOn }): Answered => (data.isKnown ? goOn(data) : answer(data)))
      .catch((error: unknown): Thought => ({ broke: String(error) }))
      .then((thought) => thought && postMessage({ ...thought, turn: data.turn }));
  });
}
