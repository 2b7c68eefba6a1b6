// Is a row of the knowledge about something that this engine has?
import type { Engine } from "../engine/engine.ts";
import type { IgnitionKind } from "../engine/profile.ts";
import type { Tool } from "../knowledge/schema.ts";

/** What a finding, check or repair asks of the engine. */
interface Fitting {
  readonly suits?: readonly IgnitionKind[];
  readonly coilsApart?: true;
  readonly throughPort?: true;
  readonly tool?: Tool;
}

/** True where ignition kind, connectors and diagnostic port of the engine let a row be used. */
export function fits(
  { ignition, connectors, groups, profile }: Engine,
  { suits, coilsApart, throughPort, tool }: Fitting,
): boolean {
  if (suits && !suits.includes(ignition)) return false;
  if (coilsApart && connectors.length < groups.length) return false;
  const needsPort = throughPort || tool === "code reader";
  return !needsPort || profile.diagnosticPort !== false;
}
