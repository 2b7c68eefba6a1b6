// Why a fault stands where it stands: prior odds, then what each finding added. The column adds up.

import { instanceKey } from "../compile/prior.ts";
import type { EngineProfile } from "../engine/profile.ts";
import type { PosteriorOptions } from "../inference/posterior.ts";
import type { Finding } from "../knowledge/answer.ts";
import { KNOWLEDGE, type Knowledge } from "../knowledge/knowledge.ts";
import type { FaultRow, Grounds } from "../knowledge/schema.ts";
import { InputError } from "../units/problem.ts";
import { decibans, odds } from "../units/weight.ts";
import { type Balance, balance } from "./balance.ts";
import type { Part } from "./mixture.ts";
import { partsOf, type RankOptions } from "./rank.ts";
import type { Ledger, LedgerLine } from "./ranking.ts";

/** What sums may leave unsearched; the column adds up whatever it is. */
const STEPS: PosteriorOptions = { tolerance: 1e-4 };
/** Two faults together tell what a withdrawal would do well enough, and ten times as fast. */
const WITHDRAWALS: PosteriorOptions = { tolerance: 1e-4, most: 2 };

/** Tables and repairs, as for a ranking. */
export type WhyOptions = Pick<RankOptions, "knowledge" | "repairs">;

/** A fault at a place, as a ranking names it. */
export interface FaultAt {
  readonly fault: string;
  readonly place: string;
}

/**
 * The ledger of one fault: prior odds in dB, the weight of each finding given those before it (in the
 * caller's order), posterior odds; and beside each its leave-one-out weight, over up to two faults
 * together. For an engine known in part all firing orders that fit are mixed, at each step anew, as the
 * ranking mixes them: a finding may weigh by what it tells of the order. Repairs done count as known
 * beforehand. Throws an `InputError` when the input cannot be used or the engine has no such fault.
 *
 * Cost: one posterior a finding, for every firing order that fits.
 */
export function why(
  profile: EngineProfile,
  findings: readonly Finding[],
  of: FaultAt,
  { knowledge = KNOWLEDGE, repairs = [] }: WhyOptions = {},
): Ledger {
  const key = `${of.fault}@${of.place}`;
  const oddsDb = (how: PosteriorOptions) => (known: readonly Finding[]) =>
    faultOddsDb(partsOf(profile, known, { knowledge, repairs, ...how }), key, of);
  const { priorDb, lines, posteriorDb } = balance(findings, oddsDb(STEPS), oddsDb(WITHDRAWALS));
  const row = knowledge.faults.find((fault) => fault.id === of.fault);
  return {
    fault: of.fault,
    place: of.place,
    priorDb,
    lines: findings.map((finding, i): LedgerLine => {
      return {
        finding: finding.finding,
        ...(finding.cylinder === undefined ? {} : { cylinder: finding.cylinder }),
        ...(lines[i] as Balance["lines"][number]),
        grounds: groundsOf(row, finding, knowledge),
      };
    }),
    posteriorDb,
  };
}

/** Odds of a fault over all engines that it may be; an engine without such a place cannot have it. */
function faultOddsDb(parts: readonly Part[], key: string, { fault, place }: FaultAt): number {
  const numbers = parts.map(({ compiled }) =>
    compiled.instances.findIndex((instance) => instanceKey(instance) === key),
  );
  if (numbers.every((number) => number < 0)) {
    throw new InputError([
      {
        code: "no-such-fault",
        path: "",
        message: `This engine has no fault "${fault}" at "${place}".`,
        hint: "Take fault and place from a line of the ranking.",
      },
    ]);
  }
  const probability = parts.reduce((sum, { weight, posterior }, i) => {
    return sum + weight * (posterior.fault[numbers[i] as number] ?? 0);
  }, 0);
  return decibans(odds(probability));
}

/** What stands behind the weight: the fault's own row about the finding, else the finding's. */
function groundsOf(row: FaultRow | undefined, finding: Finding, knowledge: Knowledge): Grounds {
  const about = (candidate: { readonly finding: string }): boolean =>
    candidate.finding === finding.finding;
  const stated = row?.signs.find(about) ?? row?.risks.find(about);
  if (row && stated) return changedGrounds(row, finding.finding) ?? stated.grounds ?? row.grounds;
  return (knowledge.findings.get(finding.finding) as { grounds: Grounds }).grounds;
}

/** A row that somebody changed in part stands, as a whole, on what they say. */
function changedGrounds({ groundsOf = {} }: FaultRow, finding: string): Grounds | undefined {
  const rows = [`signs.${finding}.gives.`, `risks.${finding}.times.`];
  return Object.entries(groundsOf).find(([path]) => rows.some((row) => path.startsWith(row)))?.[1];
}
