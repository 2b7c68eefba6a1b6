// Brings the page up: the case that was open, the thread that weighs, then what other screens need.
import { render } from "preact";
import { App, currentEntry } from "./app.tsx";
import { CASE } from "./case-entry.ts";
import { keepOpenCase, resumeLast } from "./state/keep.ts";
import { followKeys } from "./state/key.ts";
import { followAddress } from "./state/route.ts";
import { startThinking } from "./state/thinking.ts";
import { keepOffline } from "./state/update.ts";
import { followWidth, pointed } from "./state/view.ts";
import { loadScreen } from "./ui/lazy.tsx";

/** `script` is the address of the script that answers questions when it runs in a thread. */
export async function startPage(page: Document, script: string): Promise<void> {
  const root = page.getElementById("app");
  if (!root) return;
  followWidth();
  followKeys();
  followAddress(() => {
    pointed.value = undefined;
    scrollTo(0, 0);
  });
  await resumeLast();
  keepOpenCase();
  const first = currentEntry();
  if (first) await loadScreen(first);
  render(<App />, root);
  whenIdle(() => {
    startThinking(script);
    void loadScreen(CASE);
    void keepOffline();
  });
}

/** After the first paint, when nothing else is to be done. */
function whenIdle(then: () => void): void {
  if (typeof requestIdleCallback === "function") requestIdleCallback(then, { timeout: 1500 });
  else setTimeout(then, 200);
}
