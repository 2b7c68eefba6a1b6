// `half-order rank`: the likely faults of a case, as JSON or as text.
import { parseArgs } from "node:util";
import { type Knowledge, type Ledger, type Ranking, rank, why } from "@half-order/core";
import type { Case } from "@half-order/core/wire";
import { readCaseAndNumbers } from "./case-input.ts";
import { countOf, type Input, refuseExtra, UsageError } from "./input.ts";
import type { Numbers } from "./knowledge.ts";
import { sayLedger } from "./ledger-text.ts";
import { sayRanking } from "./ranking-text.ts";
import { json } from "./text.ts";

const TOP = 8;

const OPTIONS = {
  json: { type: "boolean", default: false },
  why: { type: "string" },
  top: { type: "string" },
  knowledge: { type: "string" },
} as const;

export async function rankCommand(args: readonly string[], stdin: Input): Promise<string> {
  const words = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  refuseExtra(words.positionals, 1);
  const top = countOf("top", words.values.top) ?? TOP;
  const explained = countOf("why", words.values.why);
  const [file] = words.positionals;
  const own = words.values.knowledge;
  const { known, numbers } = await readCaseAndNumbers(file, own, stdin);
  const { knowledge } = numbers;
  const ranking = rank(known.engine, known.findings, { knowledge, repairs: known.repairs ?? [] });
  const ledger =
    explained === undefined ? undefined : ledgerOf(known, ranking, explained, knowledge);
  if (words.values.json) return json(asObject(known, ranking, ledger, numbers));
  const text = sayRanking(known, ranking, top, numbers);
  return ledger ? `${text}\n${sayLedger(ledger, ranking, known, knowledge)}` : text;
}

function ledgerOf(
  { engine, findings, repairs = [] }: Case,
  { ranking }: Ranking,
  place: number,
  knowledge: Knowledge,
): Ledger {
  const fault = ranking[place - 1];
  if (fault) return why(engine, findings, fault, { knowledge, repairs });
  throw new UsageError(`--why ${place}: the list has ${ranking.length} faults.`);
}

/** The ranking itself, and beside it which engine it is for and whose numbers it used. */
function asObject(
  { engine: { id, name } }: Case,
  ranking: Ranking,
  ledger: Ledger | undefined,
  { from }: Numbers,
) {
  const own = from === undefined ? {} : { knowledge: from };
  return { engine: { id, name }, ...own, ...ranking, ...(ledger ? { why: ledger } : {}) };
}
