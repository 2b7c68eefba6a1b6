// Is a row of the tables, or one answer of a finding, about something that an engine has?
import type { EngineProfile, IgnitionKind } from "../engine/profile.ts";
import type { FindingRow, Tool } from "./schema.ts";

/** What a row or an option asks of the engine. */
export interface Demand {
  readonly suits?: readonly IgnitionKind[];
  readonly throughPort?: true;
  readonly tool?: Tool;
}

/** True where ignition kind and diagnostic port let a row or an option be used, whatever the connectors. */
export function suitsEngine(
  { ignition, diagnosticPort }: EngineProfile,
  { suits, throughPort, tool }: Demand,
): boolean {
  if (suits && !suits.includes(ignition)) return false;
  const needsPort = throughPort || tool === "code reader";
  return !needsPort || diagnosticPort !== false;
}

/** The finding with the options that this engine can be answered with; the row itself where that is all of them. */
export function findingFor(profile: EngineProfile, row: FindingRow): FindingRow {
  const all = Object.entries(row.options);
  const offered = all.filter(([, option]) => suitsEngine(profile, option));
  return offered.length < all.length ? { ...row, options: Object.fromEntries(offered) } : row;
}
