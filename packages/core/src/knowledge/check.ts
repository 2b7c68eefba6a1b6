// All checks: what can be tried, how long it takes, what it needs, and which findings it answers.
import type { AccessId } from "./access.ts";
import type { CAUTIONS } from "./caution.ts";
import { ENGINE } from "./check/engine.ts";
import { HAND_TOOL } from "./check/hand-tool.ts";
import { INSTRUMENT } from "./check/instrument.ts";
import { OLDER_CHECK } from "./check/older.ts";
import { ROADSIDE } from "./check/roadside.ts";
import { SPARK } from "./check/spark.ts";
import { SWAP } from "./check/swap.ts";
import type { FindingId } from "./finding.ts";
import type { PUT_BACK } from "./put-back.ts";
import type { CheckRow } from "./schema.ts";

const ALL = [
  ...ROADSIDE,
  ...HAND_TOOL,
  ...SWAP,
  ...SPARK,
  ...INSTRUMENT,
  ...ENGINE,
  ...OLDER_CHECK,
] as const;

export type CheckId = (typeof ALL)[number]["id"];

/** A check whose cautions, findings, access and put-back steps exist. */
interface Check extends CheckRow {
  readonly cautions: readonly (typeof CAUTIONS)[number]["id"][];
  readonly yields: readonly FindingId[];
  readonly access?: readonly AccessId[];
  readonly putBack?: readonly (typeof PUT_BACK)[number]["id"][];
}

export const CHECKS: readonly CheckRow[] = ALL satisfies readonly Check[];
