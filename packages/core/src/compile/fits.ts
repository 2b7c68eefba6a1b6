// Is a row of the knowledge about something that this engine has?
import type { Engine } from "../engine/engine.ts";
import { type Demand, suitsEngine } from "../knowledge/suits.ts";

/** What a finding, check or repair asks of the engine. */
interface Fitting extends Demand {
  readonly coilsApart?: true;
}

/** True where ignition kind, connectors and diagnostic port of the engine let a row be used. */
export function fits({ connectors, groups, profile }: Engine, row: Fitting): boolean {
  if (row.coilsApart && connectors.length < groups.length) return false;
  return suitsEngine(profile, row);
}
