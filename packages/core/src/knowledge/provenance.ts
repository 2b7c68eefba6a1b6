// Every number in the knowledge, where it stands and what stands behind it. Nothing is left out but
// the order of the first questions, which claims nothing.
import { CODE_FAMILIES, CODE_GROUNDS, CODES_FROM_MISFIRE, COUNTS_FROM_MISFIRE } from "./code.ts";
import type { Knowledge } from "./knowledge.ts";
import type { Basis, Confidence, Grounds, GroundsOf } from "./schema.ts";

export type NumberTable =
  | "prior"
  | "faults"
  | "findings"
  | "checks"
  | "repairs"
  | "access"
  | "codes"
  | "counts";

export interface KnownNumber {
  readonly table: NumberTable;
  /** Dotted, beginning with the table: `faults.coil.half-dead.shares.rail`. */
  readonly path: string;
  readonly value: number;
  /** The nearest given: of the number itself, its block, or its row. */
  readonly grounds: Grounds;
}

/** How many numbers rest on what. */
export interface Tally {
  readonly total: number;
  readonly byBasis: Readonly<Record<Basis, number>>;
  readonly byConfidence: Readonly<Record<Confidence, number>>;
}

export interface Provenance extends Tally {
  readonly byTable: Readonly<Record<NumberTable, Tally>>;
  readonly numbers: readonly KnownNumber[];
}

/** Where a walk through a row has come to. */
interface Spot {
  readonly table: NumberTable;
  /** From the table's name on. */
  readonly path: string;
  /** From the row on; empty at the row itself. */
  readonly inRow: string;
  readonly grounds: Grounds;
  readonly groundsOf: GroundsOf;
}

/** No claims: what stands behind the claims, and the place of a question in a list. */
const NO_CLAIM: ReadonlySet<string> = new Set(["grounds", "groundsOf", "first"]);

/** Every number of the knowledge with its grounds, and how many rest on what. */
export function provenance(knowledge: Knowledge): Provenance {
  const numbers = [...numbersOf(knowledge)];
  const of = (table: NumberTable): Tally => tally(numbers.filter((each) => each.table === table));
  return {
    ...tally(numbers),
    byTable: {
      prior: of("prior"),
      faults: of("faults"),
      findings: of("findings"),
      checks: of("checks"),
      repairs: of("repairs"),
      access: of("access"),
      codes: of("codes"),
      counts: of("counts"),
    },
    numbers,
  };
}

function* numbersOf(knowledge: Knowledge): Generator<KnownNumber> {
  const { twoFaultsShare: share, twoFaultsGrounds: grounds } = knowledge;
  const prior = { id: "two-faults", grounds, share };
  yield* rowNumbers("prior", prior);
  for (const row of knowledge.faults) yield* rowNumbers("faults", row);
  yield* rowNumbers("faults", knowledge.somethingElse);
  for (const row of knowledge.findings.values()) yield* rowNumbers("findings", row);
  for (const row of knowledge.checks) yield* rowNumbers("checks", row);
  for (const row of knowledge.repairs) yield* rowNumbers("repairs", row);
  for (const row of knowledge.access) yield* rowNumbers("access", row);
  for (const family of CODE_FAMILIES) {
    yield* rowNumbers("codes", { id: family.option, grounds: CODE_GROUNDS, ...family });
  }
  yield* rowNumbers("codes", { id: "from-misfire", ...CODES_FROM_MISFIRE });
  yield* rowNumbers("counts", { id: "from-misfire", ...COUNTS_FROM_MISFIRE });
}

interface Row {
  readonly id: string;
  readonly grounds: Grounds;
  readonly groundsOf?: GroundsOf;
}

function rowNumbers(table: NumberTable, row: Row): Generator<KnownNumber> {
  const { grounds, groundsOf = {} } = row;
  return walk(row, { table, path: `${table}.${row.id}`, inRow: "", grounds, groundsOf });
}

function* walk(value: unknown, spot: Spot): Generator<KnownNumber> {
  const { table, path, groundsOf, inRow } = spot;
  const grounds = groundsOf[inRow] ?? blockGrounds(value) ?? spot.grounds;
  if (typeof value === "number") yield { table, path, value, grounds };
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    if (NO_CLAIM.has(key)) continue;
    const step = Array.isArray(value) ? subjectOf(inner, key) : key;
    yield* walk(inner, {
      ...spot,
      grounds,
      path: `${path}.${step}`,
      inRow: inRow === "" ? step : `${inRow}.${step}`,
    });
  }
}

function blockGrounds(value: unknown): Grounds | undefined {
  if (typeof value !== "object" || value === null || !("grounds" in value)) return undefined;
  return value.grounds as Grounds | undefined;
}

/** A risk, sign or wear is called by what it is about; anything else in a list by its position. */
function subjectOf(block: unknown, position: string): string {
  if (typeof block !== "object" || block === null) return position;
  const { finding, fault } = block as { readonly finding?: string; readonly fault?: string };
  return finding ?? fault ?? position;
}

function tally(numbers: readonly KnownNumber[]): Tally {
  const byBasis = { published: 0, "common practice": 0, memory: 0 };
  const byConfidence = { high: 0, medium: 0, low: 0 };
  for (const { grounds } of numbers) {
    byBasis[grounds.basis] += 1;
    byConfidence[grounds.confidence] += 1;
  }
  return { total: numbers.length, byBasis, byConfidence };
}
