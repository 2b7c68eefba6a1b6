// Brings the page up: the case that was open, the thread that weighs, then what other screens need.
import { hydrate, options, render } from "preact";
import { App, currentEntry, isInCase } from "./app.tsx";
import { CASE } from "./case-entry.ts";
import { SHELF } from "./parts.ts";
import { DRIVE_ANSWER } from "./screens.ts";
import { keepOpenCase, resumeLast, shelf } from "./state/keep.ts";
import { followKeys } from "./state/key.ts";
import { followAddress } from "./state/route.ts";
import { startThinking } from "./state/thinking.ts";
import { followTitle } from "./state/title.ts";
import { keepOffline } from "./state/update.ts";
import { followWidth, pointed } from "./state/view.ts";
import { loadScreen } from "./ui/lazy.tsx";

/** `script` is the address of the script that answers questions when it runs in a thread. */
export async function startPage(page: Document, script: string): Promise<void> {
  const root = page.getElementById("app");
  if (!root) return;
  drawInOwnTask();
  followWidth();
  followKeys();
  followAddress(() => {
    pointed.value = undefined;
    scrollTo(0, 0);
  });
  await Promise.all([resumeLast(), ownUnits()]);
  keepOpenCase();
  followTitle(isInCase);
  const first = currentEntry() ?? (shelf.value.length > 0 ? SHELF : undefined);
  if (first) await loadScreen(first);
  // With cases it is another first screen than the one that stands in the document.
  if (first) {
    root.replaceChildren();
    render(<App />, root);
  } else hydrate(<App />, root);
  page.documentElement.className = "";
  page.querySelector(".lost")?.remove();
  performance.mark(READY);
  whenIdle(() => {
    startThinking(script);
    void loadScreen(CASE).then(() => loadScreen(DRIVE_ANSWER));
  });
  setTimeout(() => void keepOffline(), CALM_MS);
}

/** Told to whoever measures: from now on the page answers to a hand. */
const READY = "ready";
/** What is needed now comes first, and then all else for later. */
const CALM_MS = 3000;

/** Nobody sees a text in units of elsewhere first. What knows them comes at once where the address asks for a screen, else when it is needed. */
async function ownUnits(): Promise<void> {
  try {
    if (location.hash) await import("./state/unit.ts");
  } catch {
    // The page stands without them too, in the units of its tables.
  }
}

/** Draws apart from the tap or message that calls for it: every task is short, and a tap finds the page free. */
function drawInOwnTask(): void {
  const { port1, port2 } = new MessageChannel();
  let draw: (() => void) | undefined;
  port1.onmessage = () => draw?.();
  options.debounceRendering = (then) => {
    draw = then;
    port2.postMessage(0);
  };
}

/** After the first paint, when nothing else is to be done. */
function whenIdle(then: () => void): void {
  if (typeof requestIdleCallback === "function") requestIdleCallback(then, { timeout: 1500 });
  else setTimeout(then, 200);
}
