// Does the ranking find faults that physics broke? A broken engine comes in; its first-visit findings are
// ranked, then three checks are made, each the one that then tells most.
import { next } from "../advice/next.ts";
import type { Engine } from "../engine/engine.ts";
import { rank } from "../explain/rank.ts";
import type { RankedFault, Ranking } from "../explain/ranking.ts";
import type { Finding } from "../knowledge/answer.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import { type SimulatedCase, simulate, simulatedFaults } from "../physics/simulate.ts";
import type { SimulatedFaultId } from "../physics/simulated-break.ts";
import type { Random } from "../units/random.ts";
import { named, seenAt } from "./simulated-look.ts";

/** How one simulated case went. */
export interface SimulatedOutcome {
  /** `fault@place` that was broken. */
  readonly truth: string;
  /** `fault@place` that leads in the end. */
  readonly first: string;
  /** Place of the truth among all faults, from 1: at the first visit and after the checks. */
  readonly rankBefore: number;
  readonly rankAfter: number;
  /** True when what leads sits in the same part as the truth. */
  readonly isComponentRight: boolean;
  /** Probabilities in the end: of the truth and of what leads. */
  readonly truthProbability: number;
  readonly firstProbability: number;
  /** Ids of the checks that were made. */
  readonly checks: readonly string[];
  readonly findings: readonly Finding[];
}

export interface SimulatedOptions {
  /** How many checks; 3 unless given. */
  readonly checks?: number;
  /** Findings that are never given, such as a measured gap, whose formula the ranking shares. */
  readonly without?: readonly string[];
}

/** Draws one fault of the ids, evenly, breaks it at an even place and lets the ranking look for it. */
export function simulatedCase(
  engine: Engine,
  ids: readonly SimulatedFaultId[],
  random: Random,
  options: SimulatedOptions = {},
): SimulatedOutcome {
  const possible = simulatedFaults(engine).filter((id) => ids.includes(id));
  const fault = possible[random.choice(possible.map(() => 1))];
  if (!fault) throw new Error("simulatedCase: this engine can have none of the faults.");
  return lookFor(engine, simulate(engine, { fault }, random), options);
}

function lookFor(
  engine: Engine,
  broken: SimulatedCase,
  { checks = 3, without = [] }: SimulatedOptions,
): SimulatedOutcome {
  const truth = `${broken.fault}@${broken.place.id}`;
  const findings: Finding[] = broken.findings
    .filter(({ finding }) => !without.includes(finding))
    .map((finding) => named(engine, finding));
  const before = rank(engine.profile, findings);
  let after = before;
  const made: string[] = [];
  for (let i = 0; i < checks; i++) {
    const shown = mostTelling(engine, broken, findings, without);
    if (!shown) break;
    made.push(shown.check);
    findings.push(...shown.answers);
    after = rank(engine.profile, findings);
  }
  const first = after.ranking[0] as RankedFault;
  const real = after.ranking.find((each) => keyOf(each) === truth);
  return {
    truth,
    first: keyOf(first),
    rankBefore: placeOf(before, truth),
    rankAfter: placeOf(after, truth),
    isComponentRight: real?.component === first.component,
    truthProbability: real?.probability ?? 0,
    firstProbability: first.probability,
    checks: made,
    findings,
  };
}

function keyOf({ fault, place }: RankedFault): string {
  return `${fault}@${place}`;
}

function placeOf({ ranking }: Ranking, truth: string): number {
  const at = ranking.findIndex((each) => keyOf(each) === truth);
  return at < 0 ? Number.POSITIVE_INFINITY : at + 1;
}

/** What the check that tells most of all shows; those that physics cannot answer are passed over. */
function mostTelling(
  engine: Engine,
  broken: SimulatedCase,
  known: readonly Finding[],
  without: readonly string[],
): { readonly check: string; readonly answers: readonly Finding[] } | undefined {
  const { checks } = next(engine.profile, known);
  for (const { check, cylinders } of [...checks].sort((a, b) => b.tellsBits - a.tellsBits)) {
    const row = KNOWLEDGE.checks.find(({ id }) => id === check);
    if (!row) continue;
    const at = cylinders.map((name) => engine.names.indexOf(name));
    const answers = seenAt(engine, broken, { row, cylinders: at, known }).filter(
      ({ finding }) => !without.includes(finding),
    );
    if (answers.length > 0) return { check, answers };
  }
  return undefined;
}
