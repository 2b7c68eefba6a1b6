// Why a fault stands where it stands: prior odds, then what each finding added. The column adds up.

import { checkFindings } from "../compile/check-finding.ts";
import { compile } from "../compile/compile.ts";
import { instanceKey } from "../compile/prior.ts";
import { candidateEngines } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import type { EngineProfile } from "../engine/profile.ts";
import { posterior } from "../inference/posterior.ts";
import type { Finding } from "../knowledge/answer.ts";
import { KNOWLEDGE, type Knowledge } from "../knowledge/knowledge.ts";
import type { FaultRow, Grounds } from "../knowledge/schema.ts";
import { InputError } from "../units/problem.ts";
import { decibans, odds } from "../units/weight.ts";
import type { Ledger, LedgerLine } from "./ranking.ts";

/** Probability that intermediate sums may leave unsearched; the column adds up whatever it is. */
const LEDGER_TOLERANCE = 1e-4;

/** A fault at a place, as a ranking names it. */
export interface FaultAt {
  readonly fault: string;
  readonly place: string;
}

/**
 * The ledger of one fault: prior odds in dB, the weight of each finding given those before it (in the
 * caller's order), posterior odds; and beside each its leave-one-out weight. For an engine known in
 * part it is told for the firing order that fits best among those that have the place. Throws an
 * `InputError` when the input cannot be used or the engine has no such fault.
 */
export function why(
  profile: EngineProfile,
  findings: readonly Finding[],
  of: FaultAt,
  knowledge: Knowledge = KNOWLEDGE,
): Ledger {
  const problems = checkFindings(profile, findings, knowledge);
  if (problems.length > 0) throw new InputError(problems);
  const engine = engineWith(profile, of, knowledge);
  const oddsDb = (used: readonly Finding[]): number => faultOddsDb(engine, used, of, knowledge);
  const row = knowledge.faults.find((fault) => fault.id === of.fault);
  const priorDb = oddsDb([]);
  const posteriorDb = oddsDb(findings);
  let before = priorDb;
  const lines = findings.map((finding, i): LedgerLine => {
    const after = i === findings.length - 1 ? posteriorDb : oddsDb(findings.slice(0, i + 1));
    const without = oddsDb(findings.filter((_, other) => other !== i));
    const line: LedgerLine = {
      finding: finding.finding,
      ...(finding.cylinder === undefined ? {} : { cylinder: finding.cylinder }),
      weightDb: after - before,
      withoutDb: posteriorDb - without,
      grounds: groundsOf(row, finding, knowledge),
    };
    before = after;
    return line;
  });
  return { fault: of.fault, place: of.place, priorDb, lines, posteriorDb };
}

function engineWith(profile: EngineProfile, of: FaultAt, knowledge: Knowledge): Engine {
  const byWeight = [...candidateEngines(profile)].sort((a, b) => b.weight - a.weight);
  const found = byWeight.find(({ engine }) =>
    compile(engine, [], knowledge).instances.some(
      (i) => instanceKey(i) === `${of.fault}@${of.place}`,
    ),
  );
  if (found) return found.engine;
  throw new InputError([
    {
      code: "no-such-fault",
      path: "",
      message: `This engine has no fault "${of.fault}" at "${of.place}".`,
      hint: "Take fault and place from a line of the ranking.",
    },
  ]);
}

function faultOddsDb(
  engine: Engine,
  findings: readonly Finding[],
  of: FaultAt,
  knowledge: Knowledge,
): number {
  const { model, instances } = compile(engine, findings, knowledge);
  const fault = instances.findIndex((i) => instanceKey(i) === `${of.fault}@${of.place}`);
  const probability = posterior(model, { tolerance: LEDGER_TOLERANCE }).fault[fault] ?? 0;
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
