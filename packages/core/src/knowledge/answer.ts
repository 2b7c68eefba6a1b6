// What a case holds of the user: what was observed, what was mended, what is at hand.
import type { CylinderName } from "../engine/profile.ts";
import type { PartsPrice, Tool } from "./schema.ts";
import type { FormerTool } from "./tool.ts";

/**
 * The answer to a finding, by the finding's kind:
 * - `choice`: an option, or a number where the finding can be measured (in its unit)
 * - `presence`: `"yes"` or `"no"`
 * - `several`: the options that were seen; an empty list means "looked, none"
 * - `codes`: trouble codes such as `["P0302", "P0305"]`; an empty list means "read, none"
 * - `counts`: misfire counts by cylinder name, `{"1": 0, "2": 131}`
 */
export type Answer = string | number | readonly string[] | Readonly<Record<string, number>>;

/** A finding with its answer. Nothing is written for what was not looked at. */
export interface Finding {
  readonly finding: string;
  readonly answer: Answer;
  /** Which cylinder (or the coil, connector or cable of which cylinder), where the finding asks. */
  readonly cylinder?: CylinderName;
  /** ISO 8601; kept, never reasoned with. */
  readonly when?: string;
}

/** How the engine ran after something was mended; "came-back" after it first seemed cured. */
export const REPAIR_RESULTS = ["cured", "better", "same", "worse", "came-back"] as const;

export type RepairResult = (typeof REPAIR_RESULTS)[number];

/** Something that was mended, and what came of it. */
export interface RepairDone {
  /** Id of a repair of the knowledge. */
  readonly repair: string;
  /** Which cylinder (or the coil, connector or cable of which cylinder), where the repair has one. */
  readonly cylinder?: CylinderName;
  /** Left out until it has been tried. */
  readonly result?: RepairResult;
  /** ISO 8601; kept, never reasoned with. */
  readonly when?: string;
}

/** What hand, place and purse allow; what is left out is not limited. */
export interface AtHand {
  /** Tools that lie ready; "none" is always at hand. */
  readonly tools?: readonly (Tool | FormerTool)[];
  readonly where?: "roadside" | "driveway" | "workshop";
  /** 0 anyone … 4 professional. */
  readonly skill?: 0 | 1 | 2 | 3 | 4;
  /** What an hour of the user's own time is worth, in the user's money. */
  readonly hourRate?: number;
  /** What parts of each price class cost, in the user's money. */
  readonly partsPrice?: Readonly<Partial<Record<Exclude<PartsPrice, "none">, number>>>;
  /** What it costs to hand the engine to a professional, in the user's money. */
  readonly callPrice?: number;
}
