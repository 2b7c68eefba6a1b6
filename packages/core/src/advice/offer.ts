// Everything that can be done next with what is at hand, as a problem for the planner.
import type { AtHand, Finding } from "../knowledge/answer.ts";
import { TRIAL_MINUTES } from "../knowledge/at-hand.ts";
import { ENGINE_RUNS, runsEngine, turnsEngine } from "../knowledge/engine-runs.ts";
import type { CheckRow, RepairRow } from "../knowledge/schema.ts";
import type { PlanProblem } from "../planning/problem.ts";
import type { DriveAdvice } from "../service/drive.ts";
import { type Openings, openingsOf } from "./access.ts";
import type { Withheld } from "./advice.ts";
import { callMinutes, inMinutes, priceOf, refusal } from "./at-hand.ts";
import { type CheckHere, type CheckLooks, checksHere, mostBits, together } from "./check.ts";
import { madeByChecks, type SoFar, withPartThere } from "./made.ts";
import type { Prospect } from "./outlook.ts";
import { type RepairHere, repairsHere } from "./repair.ts";

export interface Offer {
  readonly openings: Openings;
  /** In the order of the problem's tests. */
  readonly checks: readonly CheckOffered[];
  /** In the order of the problem's repairs. */
  readonly repairs: readonly (RepairHere & { readonly access: readonly number[] })[];
  readonly withheld: readonly Withheld[];
  /** Chance that one of the repairs would mend it, whatever it costs. */
  readonly mendable: number;
  readonly problem: PlanProblem;
}

interface CheckOffered extends CheckHere {
  readonly access: readonly number[];
  /** Ids, with the one that the state of the engine calls for. */
  readonly cautions: readonly string[];
}

/** Checks that the planner weighs: those that tell most for their minutes. */
const CHECKS_WEIGHED = 16;
/** A check that tells less than this is none. */
const LEAST_BITS = 0.005;
/** Withheld steps that are told. */
const WITHHELD_TOLD = 6;

export type Driving = Pick<DriveAdvice, "level" | "rests">;

export interface Situation extends SoFar {
  readonly findings: readonly Finding[];
  readonly atHand: AtHand;
  /** Ids of openings that are open. */
  readonly open: readonly string[];
  /** Ids of checks that are not offered. */
  readonly putOff: readonly string[];
  /** What the rules say of driving, and of turning the engine. */
  readonly driving: Driving;
}

export function offerOf(prospect: Prospect, situation: Situation): Offer {
  const { engine, findings, repairs: done, atHand, open, putOff, driving } = situation;
  const openings = openingsOf(engine, prospect.knowledge, open);
  const all = engine.names.map((_, c) => c);
  const looked = checksHere(prospect, findings, putOff).map((here) => ({
    ...here,
    access: openings.of(here.row.access ?? [], here.cylinders.length ? here.cylinders : all),
  }));
  const repairs = repairsHere(prospect, done, madeByChecks(situation)).map((here) => ({
    ...here,
    access: openings.of(here.row.access ?? [], here.place.cylinders),
  }));
  const minutesOf = (step: Step): number => minutesWith(openings, step);
  const partThere = withPartThere(situation);
  const why = (step: Step): Withheld["why"] | undefined => {
    const needs = partThere.has(step.row.id) ? { ...step.row, parts: "none" as const } : step.row;
    const rests = "yields" in step.row && mustRest(step.row, driving);
    return refusal(atHand, { ...needs, minutes: minutesOf(step) }) ?? (rests ? "rest" : undefined);
  };
  const weighed = [...looked.filter((check) => why(check) === undefined)]
    .sort((a, b) => mostBits(b) / minutesOf(b) - mostBits(a) / minutesOf(a))
    .slice(0, CHECKS_WEIGHED)
    .map((check) => ({
      ...together(prospect, check),
      access: check.access,
      cautions: cautionsOf(check.row, driving),
    }))
    .filter(({ tellsBits }) => tellsBits >= LEAST_BITS);
  const possible = repairs.filter((repair) => why(repair) === undefined);
  return {
    openings,
    checks: weighed,
    repairs: possible,
    withheld: withheldOf([...looked, ...repairs], why),
    mendable: mendableBy(prospect, possible),
    problem: {
      chance: prospect.chance,
      tests: weighed.map(({ row, access, outcomes }) => ({
        cost: row.minutes + breakageMinutes(row, atHand),
        outcomes: outcomes.map(({ chance }) => chance),
        access,
      })),
      repairs: possible.map(({ row, access, cures, turns }) => ({
        cost: row.minutes + inMinutes(priceOf(row.parts, atHand), atHand),
        cures,
        turns,
        access,
      })),
      callCost: callMinutes(atHand),
      accessCost: openings.all.map(({ minutes }) => minutes),
      trialCost: TRIAL_MINUTES,
    },
  };
}

/** True of a check that turns the engine, where the advice on driving says that it must stay off. */
export function mustRest(row: CheckRow, { rests }: Driving): boolean {
  return rests === true && turnsEngine(row);
}

/** Ids of the cautions of a check, with the one that the advice on driving adds. */
export function cautionsOf(row: CheckRow, { level }: Driving): readonly string[] {
  const isShort = level !== undefined && ENGINE_RUNS.short.includes(level.level);
  return isShort && runsEngine(row) ? [ENGINE_RUNS.shortCaution, ...row.cautions] : row.cautions;
}

/** Of checks that are about as good the one with fewer hazards, then the shorter one: a smaller number. */
export function hazardOf({ checks, problem }: Offer, check: number): number {
  const minutes = problem.tests[check]?.cost ?? 0;
  return (checks[check]?.cautions.length ?? 0) + minutes / (1 + minutes);
}

function mendableBy({ chance }: Prospect, repairs: readonly RepairHere[]): number {
  return chance.reduce(
    (sum, p, s) => sum + p * repairs.reduce((most, { cures }) => Math.max(most, cures[s] ?? 0), 0),
    0,
  );
}

interface Step {
  readonly row: CheckRow | RepairRow;
  readonly access: readonly number[];
}

function minutesWith({ all }: Openings, { row, access }: Step): number {
  return access.reduce((sum, opening) => sum + (all[opening]?.minutes ?? 0), row.minutes);
}

/** A brittle boot or clip that breaks on the way is renewed: a small part. */
function breakageMinutes({ breaks = 0 }: CheckRow, atHand: AtHand): number {
  return breaks * inMinutes(priceOf("small", atHand), atHand);
}

/** What is ruled out, the most telling checks and likeliest repairs first, each once. */
function withheldOf(
  steps: readonly (Step & (CheckLooks | RepairHere))[],
  why: (step: Step) => Withheld["why"] | undefined,
): readonly Withheld[] {
  const weight = (step: (typeof steps)[number]): number =>
    "looks" in step ? mostBits(step) : step.probability;
  const byId = new Map<string, Withheld>();
  for (const step of [...steps].sort((a, b) => weight(b) - weight(a))) {
    const reason = why(step);
    const { id, name } = step.row;
    if (reason !== undefined && !byId.has(id)) byId.set(id, { id, name, why: reason });
  }
  return [...byId.values()].slice(0, WITHHELD_TOLD);
}
