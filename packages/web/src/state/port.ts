// Can a code reader be plugged into the engine of the open case?
import { type EngineProfile, hasDiagnosticPort } from "@half-order/core";
import { computed } from "@preact/signals";
import { changeEngine, profile } from "./case.ts";

export const hasPort = computed(() => !profile.value || hasDiagnosticPort(profile.value));

/** Says whether the engine has a port; all answers stay, those that come through it say nothing without one. */
export function setPort(has: boolean): void {
  const known = profile.value;
  if (known) changeEngine(withPort(known, has));
}

/** The engine with a port, and so without what only older ones have, or without one. */
export function withPort(
  { diagnosticPort: _, ...known }: EngineProfile,
  has: boolean,
): EngineProfile {
  if (!has) return { ...known, diagnosticPort: false };
  const { switching: __, fuelling: ___, ...later } = known;
  return later;
}
