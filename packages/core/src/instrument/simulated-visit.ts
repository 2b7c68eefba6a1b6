// How long until a broken engine runs right, and what is bought in vain, when somebody follows a rule for
// what to do next. Physics answers the checks and decides whether a repair cures.
import type { NextCheck, NextRepair } from "../advice/advice.ts";
import { callMinutes, inMinutes } from "../advice/at-hand.ts";
import { cureOf, placeOfRepair } from "../compile/repair.ts";
import type { Engine } from "../engine/engine.ts";
import type { AtHand, Finding, RepairDone } from "../knowledge/answer.ts";
import { TRIAL_MINUTES } from "../knowledge/at-hand.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import type { SimulatedCase } from "../physics/simulate.ts";
import type { Random } from "../units/random.ts";
import { named, seenAt } from "./simulated-look.ts";

/** What is known and done so far. */
export interface Visit {
  readonly engine: Engine;
  readonly findings: readonly Finding[];
  readonly repairs: readonly RepairDone[];
  readonly atHand: AtHand;
  /** Ids of openings that are open by now. */
  readonly open: readonly string[];
  /** Ids of checks that physics cannot answer. */
  readonly putOff: readonly string[];
}

/** A visit before anything was done: what driver and reader have to say. */
export function startOfVisit(engine: Engine, broken: SimulatedCase, atHand: AtHand): Visit {
  const findings = broken.findings.map((finding) => named(engine, finding));
  return { engine, findings, repairs: [], atHand, open: [], putOff: [] };
}

/** What is done next; its minutes hold what must come off for it. */
export type VisitStep = NextCheck | NextRepair;

/** A rule for what to do next; `undefined` gives up and hands the engine to somebody else. */
export type Rule = (visit: Visit) => VisitStep | undefined;

/** How one visit went. */
export interface VisitOutcome {
  readonly isCured: boolean;
  /** Work until it ran right, or until it was given up. */
  readonly minutes: number;
  /** The same with parts, and the call of who gives up, as time at the usual hour rate. */
  readonly minutesWithParts: number;
  readonly checks: number;
  readonly repairs: number;
  /** Repairs with parts that did not cure. */
  readonly boughtInVain: number;
}

/** Steps after which anybody gives up. */
const MOST_STEPS = 60;

/** Follows a rule until the engine runs right; `random` decides whether a repair that fits works. */
export function visit(
  broken: SimulatedCase,
  start: Visit,
  rule: Rule,
  random: Random,
): VisitOutcome {
  let now = start;
  const tally: Tally = { minutes: 0, partsPrice: 0, checks: 0, repairs: 0, boughtInVain: 0 };
  for (let step = 0; step < MOST_STEPS; step++) {
    const chosen = rule(now);
    if (!chosen) break;
    if (chosen.kind === "check") {
      const after = checked(now, broken, chosen);
      const isSeen = after.findings.length > now.findings.length;
      if (isSeen) tally.checks++;
      if (isSeen) tally.minutes += chosen.minutes;
      now = isSeen ? after : { ...now, putOff: [...now.putOff, chosen.check] };
      continue;
    }
    tally.minutes += chosen.minutes;
    const done = doneOf(chosen);
    tally.repairs++;
    tally.minutes += TRIAL_MINUTES;
    tally.partsPrice += chosen.partsPrice;
    if (random.uniform() < cureChance(start.engine, broken, done)) return told(tally, true, start);
    if (chosen.partsPrice > 0) tally.boughtInVain++;
    now = repairedInVain(now, chosen);
  }
  return told(tally, false, start);
}

interface Tally {
  minutes: number;
  partsPrice: number;
  checks: number;
  repairs: number;
  boughtInVain: number;
}

function told(
  { minutes, partsPrice, checks, repairs, boughtInVain }: Tally,
  isCured: boolean,
  { atHand }: Visit,
): VisitOutcome {
  const call = isCured ? 0 : callMinutes(atHand);
  return {
    isCured,
    minutes,
    minutesWithParts: minutes + inMinutes(partsPrice, atHand) + call,
    checks,
    repairs,
    boughtInVain,
  };
}

/** A repair as it is noted. */
export function doneOf({ repair, cylinders }: NextRepair): RepairDone {
  const [cylinder] = cylinders;
  return { repair, ...(cylinder === undefined ? {} : { cylinder }) };
}

/** Chance that a repair cures what physics broke: what the tables say of how often it works. */
export function cureChance(
  engine: Engine,
  { fault, place }: Pick<SimulatedCase, "fault" | "place">,
  done: RepairDone,
): number {
  const row = KNOWLEDGE.repairs.find(({ id }) => id === done.repair);
  const at = row && placeOfRepair(engine, row, done);
  const broken = KNOWLEDGE.faults.find(({ id }) => id === fault);
  return row && at && broken ? cureOf(row, at, { fault: broken, place }) : 0;
}

/** After a check was made: what it showed is known, and what came off for it is off. */
export function checked(now: Visit, broken: SimulatedCase, check: NextCheck): Visit {
  const { engine, findings } = now;
  const row = KNOWLEDGE.checks.find(({ id }) => id === check.check);
  const cylinders = check.cylinders.map((name) => engine.names.indexOf(name));
  const seen = row ? seenAt(engine, broken, { row, cylinders, known: findings }) : [];
  return { ...now, open: openAfter(now, check), findings: [...findings, ...seen] };
}

/** After a repair that changed nothing. */
export function repairedInVain(now: Visit, repair: NextRepair): Visit {
  const repairs = [...now.repairs, { ...doneOf(repair), result: "same" } as const];
  return { ...now, open: openAfter(now, repair), repairs };
}

function openAfter({ open }: Visit, { opens }: VisitStep): readonly string[] {
  return [...new Set([...open, ...opens.map(({ id }) => id)])];
}
