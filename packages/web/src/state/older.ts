// What has the engine of the open case that only older ones have?
import type { EngineProfile } from "@half-order/core";
import { computed } from "@preact/signals";
import { changeEngine, profile } from "./case.ts";

/** Each beside a distributor only. */
const OLDER = { switching: "contact-breaker", fuelling: "carburettor" } as const;

export type Older = keyof typeof OLDER;

/** What can be older; none where there is no distributor. */
export function olderParts(ignition: EngineProfile["ignition"] | undefined): readonly Older[] {
  return ignition === "distributor" ? (Object.keys(OLDER) as readonly Older[]) : [];
}

export const olderHere = computed(() =>
  olderParts(profile.value?.ignition).filter((part) => profile.value?.[part] === OLDER[part]),
);

/** Says that the engine has an older part, or that it has it not after all; all answers stay. */
export function toggleOlder(part: Older): void {
  const known = profile.value;
  if (known) changeEngine(withOlder(known, part, !olderHere.value.includes(part)));
}

/** The engine with an older part, beside which there is no port, or without it. */
export function withOlder(profile: EngineProfile, part: Older, has: boolean): EngineProfile {
  const { [part]: _, diagnosticPort, ...known } = profile;
  const port = diagnosticPort === false ? { diagnosticPort } : {};
  return { ...known, ...port, ...(has ? { [part]: OLDER[part] } : {}) };
}
