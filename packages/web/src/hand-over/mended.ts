// What was mended on an engine, in lines: apart from the rest of the page that is handed on, for it needs the
// table of repairs.
import { type Engine, REPAIRS, type RepairRow } from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import { SHEET } from "../text/en-hand-over.ts";
import { type AnswerLine, sayRepair } from "./summary.ts";

const rows = new Map<string, RepairRow>(REPAIRS.map((row) => [row.id, row]));

/** In the order in which it was done. */
export function mendedLines({ repairs = [] }: CaseDocument, engine: Engine): readonly AnswerLine[] {
  return repairs.map((repair) => ({
    asked: `${sayRepair(repair, rows.get(repair.repair), engine)}:`,
    answer: repair.result ? SHEET.results[repair.result] : SHEET.notTried,
  }));
}
