// A ledger as a column of dB that adds up.
import type { Ledger, LedgerLine, Ranking } from "@half-order/core";
import { decibans, percent, table } from "./text.ts";

export function sayLedger(ledger: Ledger, { ranking }: Ranking): string {
  const { fault, place, priorDb, lines, posteriorDb } = ledger;
  const name = ranking.find((row) => row.fault === fault && row.place === place)?.name ?? fault;
  const rows = [
    ["odds before any finding", signed(priorDb), ""],
    ...lines.map(sayLine),
    ["odds now", signed(posteriorDb), `that is ${percent(probabilityOf(posteriorDb))}`],
  ];
  return `Why ${name} (${fault} at ${place})\n${table(rows)}\n10 dB are ten times the odds, 3 dB twice.\n`;
}

function sayLine({ finding, cylinder, weightDb, grounds }: LedgerLine): readonly string[] {
  const what = cylinder === undefined ? finding : `${finding} of cylinder ${cylinder}`;
  return [what, signed(weightDb), `${grounds.basis}, confidence ${grounds.confidence}`];
}

function signed(db: number): string {
  return decibans(db).padStart(9);
}

function probabilityOf(db: number): number {
  return 1 / (1 + 10 ** (-db / 10));
}
