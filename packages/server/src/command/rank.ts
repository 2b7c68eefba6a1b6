// `half-order rank`: the likely faults of a case, as JSON or as text.
import { parseArgs } from "node:util";
import { InputError, type Ledger, type Ranking, rank, why } from "@half-order/core";
import { type Case, parseCase } from "@half-order/core/wire";
import { countOf, type Input, readJson, refuseExtra, UsageError } from "./input.ts";
import { sayLedger } from "./ledger-text.ts";
import { sayRanking } from "./ranking-text.ts";
import { json } from "./text.ts";

const TOP = 8;

const OPTIONS = {
  json: { type: "boolean", default: false },
  why: { type: "string" },
  top: { type: "string" },
} as const;

export async function rankCommand(args: readonly string[], stdin: Input): Promise<string> {
  const words = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  refuseExtra(words.positionals, 1);
  const top = countOf("top", words.values.top) ?? TOP;
  const explained = countOf("why", words.values.why);
  const reading = parseCase(await readJson(words.positionals[0], stdin));
  if ("problems" in reading) throw new InputError(reading.problems);
  const known = reading.case;
  const ranking = rank(known.engine, known.findings);
  const ledger = explained === undefined ? undefined : ledgerOf(known, ranking, explained);
  if (words.values.json) return json(asObject(known, ranking, ledger));
  const text = sayRanking(known, ranking, top);
  return ledger ? `${text}\n${sayLedger(ledger, ranking)}` : text;
}

function ledgerOf({ engine, findings }: Case, { ranking }: Ranking, place: number): Ledger {
  const fault = ranking[place - 1];
  if (fault) return why(engine, findings, fault);
  throw new UsageError(`--why ${place}: the list has ${ranking.length} faults.`);
}

/** The ranking itself, and beside it which engine it is for. */
function asObject({ engine: { id, name } }: Case, ranking: Ranking, ledger: Ledger | undefined) {
  return { engine: { id, name }, ...ranking, ...(ledger ? { why: ledger } : {}) };
}
