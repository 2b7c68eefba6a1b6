// What was mended on an engine, and how it proved itself, in lines: apart from the rest of the page that is
// handed on, for it needs the table of repairs.
import { type Engine, REPAIRS, type RepairDone, type RepairRow } from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import { nameOfDrive, provenIndex } from "../state/proof.ts";
import { SHEET } from "../text/en-hand-over.ts";
import { PROOF } from "../text/en-mend.ts";
import { type AnswerLine, sayRepair } from "./summary.ts";

const rows = new Map<string, RepairRow>(REPAIRS.map((row) => [row.id, row]));

/**
 * In the order in which it was done, then the proving drives of the last that cured. `isVague`: the engine is one
 * of several that it may be.
 */
export function mendedLines(
  doc: CaseDocument,
  engine: Engine,
  isVague = false,
): readonly AnswerLine[] {
  const repairs = doc.repairs ?? [];
  const done = repairs.map((repair) => ({
    asked: `${sayRepair(repair, rows.get(repair.repair), engine, isVague)}:`,
    answer: repair.result ? SHEET.results[repair.result] : SHEET.notTried,
  }));
  return [...done, ...driveLines(doc, repairs)];
}

function driveLines({ work }: CaseDocument, repairs: readonly RepairDone[]): readonly AnswerLine[] {
  const index = provenIndex(repairs, undefined);
  const key = repairs[index]?.when ?? String(index);
  const drives = work?.drives?.filter(({ of }) => of === key) ?? [];
  if (drives.length === 0) return [];
  const words = drives.map((drive) => PROOF[nameOfDrive(drive)].toLowerCase());
  return [{ asked: SHEET.drives, answer: words.join("; ") }];
}
