// From a chosen engine into its case: a new one, or the open one with another engine.
import { beginCase, changeEngine } from "./case.ts";
import { hand } from "./hand.ts";
import { goTo, path } from "./route.ts";
import type { CaseDoc } from "./store.ts";
import { clearView } from "./view.ts";

/** The word in the address under which an engine is chosen for the case that is open. */
export const CHANGE = "engine";

/** Opens a case on an engine and asks the first question; or changes the engine of the open case. */
export function chooseEngine(engine: CaseDoc["engine"]): void {
  clearView();
  if (path.value.includes(CHANGE)) {
    changeEngine(engine);
    goTo("ranking");
  } else {
    beginCase(engine, hand.value);
    goTo("question");
  }
}
