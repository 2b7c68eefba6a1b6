// Which steps turn the engine, and what does the advice on driving say to them? Told by their cautions: a table of
// its own, so that the page can read it without the rest of what is known of driving.
import type { DriveLevel, Grounds } from "./schema.ts";

/** What a level says to checks for which the engine runs. */
export interface EngineRuns {
  /** Ids of cautions of checks that run the engine, and of those that run or crank it. */
  readonly running: readonly string[];
  readonly turning: readonly string[];
  /** Levels at which it is not turned. */
  readonly barred: readonly DriveLevel[];
  /** Levels at which it runs for a short time, and the id of the caution that says so. */
  readonly short: readonly DriveLevel[];
  readonly shortCaution: string;
  readonly grounds: Grounds;
}

export const ENGINE_RUNS: EngineRuns = {
  running: ["exhaust-gas"],
  turning: ["exhaust-gas", "moving-parts"],
  barred: ["stop-now"],
  short: ["do-not-drive"],
  shortCaution: "short-run",
  grounds: { basis: "common practice", confidence: "medium" },
};

/** True of a step with these cautions for which the engine runs. */
export function runsEngine({ cautions }: { readonly cautions: readonly string[] }): boolean {
  return cautions.some((id) => ENGINE_RUNS.running.includes(id));
}

/** True of a step with these cautions for which the engine runs or is cranked. */
export function turnsEngine({ cautions }: { readonly cautions: readonly string[] }): boolean {
  return cautions.some((id) => ENGINE_RUNS.turning.includes(id));
}
