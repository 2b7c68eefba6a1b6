// A ledger as a column of dB that adds up, each finding in the words of its question and answer.
import {
  type Answer,
  type CandidateEngine,
  candidateEngines,
  type EngineProfile,
  type Finding,
  type FindingRow,
  type Grounds,
  type Knowledge,
  type Ledger,
  type Ranking,
  servesAll,
} from "@half-order/core";
import type { Case } from "@half-order/core/wire";
import { percent, rounded, table, wrapped } from "./text.ts";

/** The findings of the case stand in the order of the ledger's lines. */
export function sayLedger(
  ledger: Ledger,
  { ranking }: Ranking,
  { engine, findings }: Case,
  knowledge: Knowledge,
): string {
  const { fault, place, priorDb, lines, posteriorDb } = ledger;
  const name = ranking.find((row) => row.fault === fault && row.place === place)?.name ?? fault;
  const [prior, ...weights] = addingUp(
    [priorDb, ...lines.map(({ weightDb }) => weightDb)],
    posteriorDb,
  );
  const rows = [
    [signed(prior ?? priorDb), "odds before any finding", ""],
    ...lines.map(({ grounds }, i) => [
      signed(weights[i] ?? 0),
      sayFinding(findings[i] as Finding, engine, knowledge),
      sayGrounds(grounds),
    ]),
    [signed(rounded(posteriorDb)), `odds now, that is ${percent(probabilityOf(posteriorDb))}`, ""],
  ];
  return [
    `Why ${name} (${fault} at ${place})\n${table(rows)}\n`,
    wrapped(
      "10 dB are ten times the odds, 3 dB twice. Each line holds what its finding added to those " +
        "above it. Figures are rounded so that the column adds up: one may be off by less than 0.1 dB.",
    ),
  ].join("");
}

/**
 * Tenths that add up to the rounded total: all are rounded down, then those that lost most are raised
 * (largest remainder). `values` add up to `total`.
 */
export function addingUp(values: readonly number[], total: number): readonly number[] {
  const down = values.map((value) => Math.floor(value * 10));
  const short = Math.round(total * 10) - down.reduce((sum, tenths) => sum + tenths, 0);
  const lost = values.map((value, i) => value * 10 - (down[i] as number));
  const raised = new Set(
    [...values.keys()].sort((a, b) => (lost[b] as number) - (lost[a] as number)).slice(0, short),
  );
  return down.map((tenths, i) => (tenths + Number(raised.has(i))) / 10);
}

/** "The engine warning lamp? Blinking now", "Spark tester on this cylinder? (cylinder 2) None" */
export function sayFinding(
  { finding, cylinder, answer }: Finding,
  profile: EngineProfile,
  { findings }: Knowledge,
): string {
  const row = findings.get(finding);
  const where = row && isOfOne(row, cylinder, profile) ? ` (cylinder ${cylinder})` : "";
  return row ? `${row.ask}${where} ${sayAnswer(answer, row)}` : finding;
}

/** False where no cylinder need be named: none is, or all share the one thing that was asked about. */
export function isOfOne(
  { scope }: FindingRow,
  cylinder: Finding["cylinder"],
  profile: EngineProfile,
): boolean {
  const [{ engine }] = candidateEngines(profile) as readonly [CandidateEngine];
  return cylinder !== undefined && !servesAll(engine, scope, cylinder);
}

/** An answer in the words of its buttons. */
export function sayAnswer(answer: Answer, { options, reading, kind }: FindingRow): string {
  const word = (option: string): string => options[option]?.say ?? option;
  if (typeof answer === "number") return `${answer} ${reading?.unit ?? ""}`.trimEnd();
  if (typeof answer === "string") return kind === "presence" ? answer : word(answer);
  if (Array.isArray(answer)) return answer.map(word).join(", ") || "none";
  return Object.entries(answer)
    .map(([name, count]) => `${name}: ${count}`)
    .join(", ");
}

const BASES = {
  memory: { high: "good estimate", medium: "estimate", low: "rough estimate" },
  "common practice": {
    high: "habit of the trade",
    medium: "habit of the trade, in round figures",
    low: "habit of the trade, roughly",
  },
  published: {
    high: "published",
    medium: "published, of something alike",
    low: "published, of something remote",
  },
} as const satisfies Record<Grounds["basis"], Record<Grounds["confidence"], string>>;

/** What a weight rests on, in people's words. */
function sayGrounds({ basis, confidence }: Grounds): string {
  return BASES[basis][confidence];
}

function signed(db: number): string {
  return `${db < 0 ? "" : "+"}${(db || 0).toFixed(1)} dB`.padStart(9);
}

function probabilityOf(db: number): number {
  return 1 / (1 + 10 ** (-db / 10));
}
