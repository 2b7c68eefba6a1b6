// Starts the page. The same script, run as a thread of the page, answers its questions.
import { render } from "preact";
import { App } from "./app.tsx";
import { keepOpenCase, resumeLast } from "./state/keep.ts";
import { followAddress } from "./state/route.ts";
import { answerQuestions } from "./state/thinker.ts";
import { startThinking } from "./state/thinking.ts";
import { followWidth, pointed } from "./state/view.ts";

if (typeof document === "undefined") answerQuestions();
else void startPage(document);

async function startPage(page: Document): Promise<void> {
  const root = page.getElementById("app");
  if (!root) return;
  followWidth();
  followAddress(() => {
    pointed.value = undefined;
    scrollTo(0, 0);
  });
  await resumeLast();
  keepOpenCase();
  startThinking(import.meta.url);
  render(<App />, root);
}
