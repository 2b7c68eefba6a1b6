// Can a code reader be plugged into the engine of the open case?
import type { EngineProfile } from "@half-order/core";
import { computed } from "@preact/signals";
import { changeEngine, profile } from "./case.ts";

export const hasPort = computed(() => profile.value?.diagnosticPort !== false);

/** Says whether the engine has a port; all answers stay, those that come through it say nothing without one. */
export function setPort(has: boolean): void {
  const known = profile.value;
  if (known) changeEngine(withPort(known, has));
}

/** The engine with a port or without one. */
export function withPort(
  { diagnosticPort: _, ...known }: EngineProfile,
  has: boolean,
): EngineProfile {
  return has ? known : { ...known, diagnosticPort: false };
}
