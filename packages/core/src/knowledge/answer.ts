// One thing that was observed, as a case holds it.
import type { CylinderName } from "../engine/profile.ts";

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
