// All findings, family by family, and the names that fault rows may use.
import { BENCH } from "./finding/bench.ts";
import { COMPLAINT } from "./finding/complaint.ts";
import { HISTORY } from "./finding/history.ts";
import { LAMP_AND_CODE } from "./finding/lamp-and-code.ts";
import { MEASURED } from "./finding/measured.ts";
import { OLDER } from "./finding/older.ts";
import { PLUG } from "./finding/plug.ts";
import { SENSE } from "./finding/sense.ts";
import { TRIED } from "./finding/tried.ts";
import type { FaultRow, FindingRow, RiskRow, SignRow } from "./schema.ts";

const ALL = [
  ...COMPLAINT,
  ...LAMP_AND_CODE,
  ...SENSE,
  ...HISTORY,
  ...PLUG,
  ...MEASURED,
  ...BENCH,
  ...TRIED,
  ...OLDER,
] as const;

type Row = (typeof ALL)[number];

export type FindingId = Row["id"];

type OptionOf<Id extends FindingId> = keyof Extract<Row, { id: Id }>["options"] & string;

/** A sign that names a finding and options that exist. */
export type Sign = { [Id in FindingId]: SignRow<Id, OptionOf<Id>> }[FindingId];

/** A risk that names a finding and options that exist. */
export type Risk = { [Id in FindingId]: RiskRow<Id, OptionOf<Id>> }[FindingId];

/** A fault row as the tables write it: a name that does not exist does not compile. */
export type Fault = FaultRow<Risk, Sign>;

export const FINDINGS: readonly FindingRow[] = ALL;
