// Does the ranking find faults that physics broke? A broken engine comes in; its first-visit findings are
// ranked, then three checks are made, each the first check of what then leads.
import type { Engine } from "../engine/engine.ts";
import { rank } from "../explain/rank.ts";
import type { RankedFault, Ranking } from "../explain/ranking.ts";
import type { Finding } from "../knowledge/answer.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import { type SimulatedCase, simulate, simulatedFaults } from "../physics/simulate.ts";
import type { SimulatedFaultId } from "../physics/simulated-break.ts";
import type { SimulatedFinding } from "../physics/simulated-sense.ts";
import type { Random } from "../units/random.ts";

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

/** Checks whose steps go over all cylinders; the others look at the suspect and its companion. */
const OVER_ALL = new Set([
  "check.plugs-out",
  "check.plug-gap",
  "check.wells-dry",
  "check.rail-press",
  "check.leads-press",
  "check.lead-resistance",
  "check.cap-off",
  "check.injector-listen",
  "check.compression",
]);

/** Of these the steps exchange one part only. */
const OF_SUSPECT_ONLY = /^swap\./;

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
    const next = nextCheck(engine, broken, after, findings, without);
    if (!next) break;
    made.push(next.check);
    findings.push(...next.answers);
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

/** The first check of the likeliest fault whose first check still tells something new. */
function nextCheck(
  engine: Engine,
  broken: SimulatedCase,
  { ranking }: Ranking,
  known: readonly Finding[],
  without: readonly string[],
): { readonly check: string; readonly answers: readonly Finding[] } | undefined {
  for (const suspect of ranking) {
    const answers = answersOf(engine, broken, suspect, known).filter(
      ({ finding }) => !without.includes(finding),
    );
    if (answers.length > 0) return { check: suspect.firstCheck, answers };
  }
  return undefined;
}

/** Indices of the cylinders that a check of a suspect looks at, the suspect's own first. */
function lookedAt(engine: Engine, { firstCheck, cylinders }: RankedFault): readonly number[] {
  const all = engine.names.map((_, c) => c);
  if (OVER_ALL.has(firstCheck)) return all;
  const own = cylinders.map((name) => engine.names.indexOf(name));
  const coils = engine.groups.length > 1 ? own.flatMap((c) => groupOf(engine, c)) : [];
  return [...new Set([...own, ...coils])];
}

function groupOf(engine: Engine, cylinder: number): readonly number[] {
  return engine.groups[engine.groupOf[cylinder] ?? 0] ?? [];
}

/** What the first check of a suspect shows, without what has been answered already. */
function answersOf(
  engine: Engine,
  broken: SimulatedCase,
  suspect: RankedFault,
  known: readonly Finding[],
): readonly Finding[] {
  const check = KNOWLEDGE.checks.find(({ id }) => id === suspect.firstCheck);
  const cylinders = lookedAt(engine, suspect);
  return (check?.yields ?? []).flatMap((id): readonly Finding[] => {
    const row = KNOWLEDGE.findings.get(id);
    if (!row || (row.suits && !row.suits.includes(engine.ignition))) return [];
    const at =
      row.scope === "engine"
        ? [undefined]
        : row.scope === "coil"
          ? coilsOf(engine, cylinders)
          : cylinders;
    const looked = OF_SUSPECT_ONLY.test(id) ? at.slice(0, 1) : at;
    return looked.flatMap((cylinder): readonly Finding[] => {
      const answer = broken.observeCheck(id, cylinder);
      if (answer === undefined) return [];
      const seen = { finding: id, answer, ...(cylinder === undefined ? {} : { cylinder }) };
      const finding = named(engine, seen);
      const isKnown = known.some(
        (each) => each.finding === id && each.cylinder === finding.cylinder,
      );
      return isKnown ? [] : [finding];
    });
  });
}

/** The first of the cylinders on each coil, so that one coil is asked about once. */
function coilsOf(engine: Engine, cylinders: readonly number[]): readonly number[] {
  return cylinders.filter(
    (c, i) => cylinders.findIndex((d) => engine.groupOf[d] === engine.groupOf[c]) === i,
  );
}

function named(engine: Engine, { finding, answer, cylinder }: SimulatedFinding): Finding {
  const name = cylinder === undefined ? undefined : engine.names[cylinder];
  return { finding, answer, ...(name === undefined ? {} : { cylinder: name }) };
}
