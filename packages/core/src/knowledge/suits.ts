// Is a row of the tables, or one answer of a finding, about something that an engine has?
import type { Build, EngineProfile, IgnitionKind } from "../engine/profile.ts";
import type { FindingRow, Tool } from "./schema.ts";

/** What a row or an option asks of the engine; what it leaves out may be either way. */
export interface Demand extends Build {
  readonly suits?: readonly IgnitionKind[];
  readonly throughPort?: true;
  readonly tool?: Tool;
}

/** True where ignition kind, build and diagnostic port let a row or an option be used, whatever the connectors. */
export function suitsEngine(profile: EngineProfile, row: Demand): boolean {
  if (row.suits && !row.suits.includes(profile.ignition)) return false;
  const { switching = "electronic", fuelling = "injection" } = profile;
  if (row.switching && row.switching !== switching) return false;
  if (row.fuelling && row.fuelling !== fuelling) return false;
  const needsPort = row.throughPort || row.tool === "code reader";
  return !needsPort || hasDiagnosticPort(profile);
}

/** False for an engine that says so, or that comes from before on-board diagnosis. */
export function hasDiagnosticPort({
  diagnosticPort = true,
  switching = "electronic",
  fuelling = "injection",
}: EngineProfile): boolean {
  return diagnosticPort && switching === "electronic" && fuelling === "injection";
}

/** The finding with the options that this engine can be answered with; the row itself where that is all of them. */
export function findingFor(profile: EngineProfile, row: FindingRow): FindingRow {
  const all = Object.entries(row.options);
  const offered = all.filter(([, option]) => suitsEngine(profile, option));
  return offered.length < all.length ? { ...row, options: Object.fromEntries(offered) } : row;
}
