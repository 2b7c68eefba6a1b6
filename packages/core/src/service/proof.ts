// How is a repair proven: which drives, how many, what must stay clear; and what did the drives show?
import { checkProfile } from "../engine/check-profile.ts";
import { cylinderNames } from "../engine/cylinder-name.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { unknown } from "../knowledge/check-number.ts";
import { CODE_FAMILIES, MISFIRE_CODES } from "../knowledge/code.ts";
import { FAULTS } from "../knowledge/knowledge.ts";
import {
  ALWAYS_DRIVEN,
  PROOF_RULES,
  PROOF_SIGNS,
  PROOF_STEPS,
  PROOF_WAITS,
  type ProofSign,
  type ProofStep,
  REGIME_COUNTS_FROM,
} from "../knowledge/proof-drive.ts";
import type { FaultRow, Regime } from "../knowledge/schema.ts";
import { InputError, type Problem, pointer } from "../units/problem.ts";
import { believedCured, type TrialOptions, trialsNeeded } from "./trial.ts";

export interface ProofOptions extends TrialOptions {
  /** Cylinders of the fault, as the ranking names them; left out: any. */
  readonly cylinders?: readonly CylinderName[];
  /** Highest misfire count of any cylinder in the ten-drive average, as read before the repair. */
  readonly averageCount?: number;
  /** Regimes of `PROOF_WAITS` that the misfire had to do with; left out: nothing is known of that. */
  readonly waitsFor?: readonly Regime[];
}

export interface ProofPlan {
  /** Clean drives until the repair may be believed. */
  readonly trials: number;
  /** Chance that one such drive would show the fault if it were still there. */
  readonly showChance: number;
  /** Belief that the repaired part was the fault, before the first drive. */
  readonly belief: number;
  /** Belief after all trials came out clean. */
  readonly believed: number;
  /** What each drive contains, in this order. */
  readonly trial: readonly ProofStep[];
  /** Codes, or ranges `first-last` of them, that must not come back. */
  readonly codes: readonly string[];
  readonly clear: readonly ProofSign[];
  /** For how long, and what the car itself asks of a drive. */
  readonly rules: typeof PROOF_RULES;
  /** Clean drives until even the ten-drive average reads below 1; only where it was given. */
  readonly averageDrives?: number;
}

/** A sign of the fault in this part of its codes' cases or more makes the code worth watching. */
const CODE_WORTH_WATCHING = 0.2;

/**
 * The proof of a repair of a fault, given as its row or as the id of one of the catalogue. Chances are those
 * of the row, estimates like the rest of it. Throws an `InputError` when the profile, the fault (path
 * `/fault`), the belief (path `/belief`) or an option cannot be used.
 */
export function proofPlan(
  profile: EngineProfile,
  of: FaultRow | string,
  belief: number,
  options: ProofOptions = {},
): ProofPlan {
  const { cylinders = [], averageCount, waitsFor } = options;
  const ofProfile = checkProfile(profile);
  const fault = typeof of === "string" ? FAULTS.find(({ id }) => id === of) : of;
  const names = ofProfile.length > 0 ? cylinders : cylinderNames(profile);
  const problems = [
    ...ofProfile,
    ...(fault ? [] : [unknown("fault", String(of), "/fault", faultIds())]),
    ...cylinders.flatMap((name, i) => unknownCylinder(name, i, names)),
    ...(averageCount === undefined || (averageCount >= 0 && Number.isFinite(averageCount))
      ? []
      : [badAverage(averageCount)]),
  ];
  if (!fault || problems.length > 0) throw new InputError(problems);
  const driven = regimesOf(fault, waitsFor);
  const showChance = fault.shows * Math.max(...driven.map((regime) => fault.regimes[regime]));
  const needed = trialsNeeded(belief, showChance, options);
  // A code must fail on two drives before it is stored: one drive alone proves nothing of codes.
  const trials = Math.max(needed, PROOF_RULES.pendingFreeDrives);
  return {
    trials,
    showChance,
    belief,
    believed: believedCured(belief, showChance, trials),
    trial: PROOF_STEPS.filter(({ regime }) => driven.includes(regime)),
    codes: codesOf(fault, cylinders.length > 0 ? cylinders : names),
    clear: PROOF_SIGNS,
    rules: PROOF_RULES,
    ...(averageCount === undefined ? {} : { averageDrives: drivesToForget(averageCount) }),
  };
}

/** The moving average of misfire counts after one more drive. */
export function countAverage(before: number, counted: number): number {
  return PROOF_RULES.newestWeight * counted + (1 - PROOF_RULES.newestWeight) * before;
}

/** What one proving drive showed. */
export interface TrialOutcome {
  /** Against before the repair; `none` when nothing was felt and the counts of the drive stayed near 0. */
  readonly misfire: "none" | "less" | "same";
  /** One of the plan's codes came back, stored or pending. */
  readonly isCodeBack?: boolean;
}

export interface ProofResult {
  /**
   * - `cured`: enough clean drives, one after the other
   * - `better`: it misses less, or not so far, which is no proof yet
   * - `same`: as before the repair
   * - `came-back`: clean at first, then not: what was repaired was not all of it
   */
  readonly result: "same" | "better" | "cured" | "came-back";
  readonly cleanTrials: number;
  /** Clean drives still to come; none will do once it has shown itself again. */
  readonly trialsLeft?: number;
  /** Belief that the repair cured it. */
  readonly believed: number;
}

/**
 * What the drives so far show, first drive first; `undefined` before the first. A fault seen once after
 * the repair is there, however many drives hid it.
 */
export function proofResult(
  { trials, belief, showChance }: ProofPlan,
  outcomes: readonly TrialOutcome[],
): ProofResult | undefined {
  const last = outcomes.at(-1);
  if (!last) return undefined;
  const isClean = ({ misfire, isCodeBack = false }: TrialOutcome): boolean =>
    misfire === "none" && !isCodeBack;
  const cleanTrials = outcomes.filter(isClean).length;
  const firstBad = outcomes.findIndex((each) => !isClean(each));
  if (firstBad > 0) return { result: "came-back", cleanTrials, believed: 0 };
  if (firstBad === 0) {
    const result = last.misfire === "same" ? "same" : "better";
    return { result, cleanTrials, believed: 0 };
  }
  return {
    result: cleanTrials >= trials ? "cured" : "better",
    cleanTrials,
    trialsLeft: Math.max(0, trials - cleanTrials),
    believed: believedCured(belief, showChance, cleanTrials),
  };
}

/**
 * Regimes in which the fault shows about as hard as it can, and those that every drive holds; a night or rain
 * only where the misfire had to do with it, or where nothing else shows the fault as hard.
 */
function regimesOf(
  { regimes }: FaultRow,
  waitsFor: readonly Regime[] | undefined,
): readonly Regime[] {
  const hardest = Math.max(...Object.values(regimes));
  const waits = PROOF_WAITS.map(({ regime }) => regime);
  const atWill = PROOF_STEPS.map(({ regime }) => regime).filter((each) => !waits.includes(each));
  const hardestAtWill = Math.max(...atWill.map((regime) => regimes[regime]));
  const isIdle = (regime: Regime): boolean =>
    waitsFor !== undefined &&
    waits.includes(regime) &&
    !waitsFor.includes(regime) &&
    regimes[regime] <= hardestAtWill;
  return PROOF_STEPS.map(({ regime }) => regime).filter(
    (regime) =>
      ALWAYS_DRIVEN.includes(regime) ||
      (regimes[regime] >= REGIME_COUNTS_FROM * hardest && !isIdle(regime)),
  );
}

function codesOf(fault: FaultRow, cylinders: readonly CylinderName[]): readonly string[] {
  const watched = fault.signs
    .filter(({ finding }) => finding === "codes")
    .flatMap(({ gives }) => Object.entries(gives))
    .filter(([, chance = 0]) => chance >= CODE_WORTH_WATCHING)
    .map(([option]) => option);
  return [
    MISFIRE_CODES.several,
    ...cylinders
      .map(Number)
      .filter((number) => number >= 1 && number <= 12)
      .map((number) => `P0${MISFIRE_CODES.minus + number}`),
    ...CODE_FAMILIES.filter(({ option }) => watched.includes(option)).flatMap(({ codes }) => codes),
  ];
}

/** Clean drives until an average has faded below 1. */
function drivesToForget(average: number): number {
  let drives = 0;
  for (let left = average; left >= 1; drives++) left = countAverage(left, 0);
  return drives;
}

function unknownCylinder(
  name: CylinderName,
  i: number,
  names: readonly CylinderName[],
): readonly Problem[] {
  if (names.some((known) => String(known) === String(name))) return [];
  return [
    {
      code: "cylinder-unknown",
      path: pointer("cylinders", i),
      message: `This engine has no cylinder ${name}.`,
      hint: `Write one of ${names.join(", ")}.`,
    },
  ];
}

function faultIds(): readonly string[] {
  return FAULTS.map(({ id }) => id);
}

function badAverage(value: number): Problem {
  return {
    code: "count-negative",
    path: "/averageCount",
    message: `${value} is no average of counts.`,
    hint: "Write the number that the reader shows, 0 or more.",
  };
}
