// Which tools can be of use on an engine?
import { type CheckRow, type EngineProfile, suitsEngine, type Tool } from "@half-order/core";

/** True where a check that this engine allows asks for the tool, or where no check of any engine does: a repair may. */
export function isOfUse(tool: Tool, engine: EngineProfile, checks: readonly CheckRow[]): boolean {
  const asking = checks.filter((check) => check.tool === tool);
  return asking.length === 0 || asking.some((check) => suitsEngine(engine, check));
}
