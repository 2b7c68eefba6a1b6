// Which questions suit an engine? Page and thread both ask it, so nothing of either is in here.
import { type EngineProfile, FINDINGS, type FindingRow, suitsEngine } from "@half-order/core";

/** The findings that are asked of an engine; all while it is not known. */
export function askedOf(known: EngineProfile | undefined): readonly FindingRow[] {
  return known ? FINDINGS.filter((row) => suitsEngine(known, row)) : FINDINGS;
}

/** The first questions, in the order in which they are asked. */
export function firstQuestions(known: EngineProfile | undefined): readonly FindingRow[] {
  return askedOf(known)
    .filter((row) => row.first !== undefined)
    .sort((a, b) => (a.first ?? 0) - (b.first ?? 0));
}
