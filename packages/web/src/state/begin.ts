// From a chosen engine into its case: a new one, or the open one with another engine.
import { type EngineProfile, profileById } from "@half-order/core";
import { beginCase, changeEngine, profile } from "./case.ts";
import { hand } from "./hand.ts";
import { hasPort } from "./port.ts";
import { goTo, path } from "./route.ts";
import type { CaseDoc } from "./store.ts";
import { clearView } from "./view.ts";

/** The word in the address under which an engine is chosen for the case that is open. */
export const CHANGE = "engine";

/** True while an engine is chosen for the case that is open. */
export function isChange(): boolean {
  return path.value.includes(CHANGE);
}

/**
 * Opens a case on an engine and asks the first question; or changes the engine of the open case.
 * `saysPort`: whether the choice itself tells of a port for a code reader.
 */
export function chooseEngine(engine: CaseDoc["engine"], saysPort = false): void {
  clearView();
  if (isChange()) {
    // The same car, known better: what it has no port for it has none for now.
    const known = typeof engine === "string" ? profileById(engine) : engine;
    const stays = saysPort || hasPort.value || !known;
    changeEngine(stays ? engine : inSameCar(known));
    goTo("ranking");
  } else {
    beginCase(engine, hand.value);
    goTo("question");
  }
}

/** Without a port as before; switched and fuelled as before, where that can be beside the other ignition. */
function inSameCar(known: EngineProfile): EngineProfile {
  const { ignition, switching = "electronic", fuelling = "injection" } = profile.value ?? {};
  const build = ignition === known.ignition ? { switching, fuelling } : {};
  return { ...known, ...build, diagnosticPort: false };
}
