// May one drive with this fault? No probability decides it: rules over what was found, and the most
// cautious one that holds wins.

import { answeredOf } from "../compile/answered.ts";
import { checkFindings } from "../compile/check-finding.ts";
import { candidateEngines } from "../engine/candidates.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import type { AtHand, Finding } from "../knowledge/answer.ts";
import { CAUTIONS, cautionsHere } from "../knowledge/caution.ts";
import { DRIVE_LEVEL_ROWS } from "../knowledge/drive-level.ts";
import { DRIVE_RULES } from "../knowledge/drive-rule.ts";
import { ENGINE_RUNS } from "../knowledge/engine-runs.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import { LIMP_HOME, LIMP_HOME_OLDER, type LimpHome } from "../knowledge/limp-home.ts";
import {
  type CautionRow,
  DRIVE_LEVELS,
  DRIVE_LOOKS,
  type DriveCondition,
  type DriveLevel,
  type DriveLevelRow,
  type DriveRuleRow,
} from "../knowledge/schema.ts";
import { suitsEngine } from "../knowledge/suits.ts";
import { InputError } from "../units/problem.ts";
import { missingCylinders } from "./missing-cylinder.ts";

export interface DriveAdvice {
  /** Look at this first: what else is known does not yet settle it. */
  readonly ask?: (typeof DRIVE_LOOKS)[number];
  /** The engine is not turned, not even for a check. */
  readonly rests?: true;
  /** The most cautious level that a rule calls for; left out while nothing known calls for any. */
  readonly level?: DriveLevelRow;
  /** Every rule that holds, the most cautious first. */
  readonly rules: readonly DriveRuleRow[];
  /** What must not be done, of all rules that hold. */
  readonly never: readonly string[];
  /** Ids of cautions, of all rules that hold, as far as they are about this place and these answers. */
  readonly cautions: readonly string[];
  /** Cylinders that codes, counts or a cancel test name. */
  readonly missing: readonly CylinderName[];
  /** How to cover the few kilometres, at the level `to-safety-only` alone. */
  readonly limpHome?: LimpHome;
}

export interface DriveOptions {
  /** Where the car stands; cautions about other places are then not told. */
  readonly where?: AtHand["where"] | undefined;
}

/** What the conditions are held against. */
interface Known {
  readonly answers: ReadonlyMap<string, ReadonlySet<string>>;
  readonly missing: number;
  readonly cylinders: number;
}

/**
 * Whether one may drive on, and why. Pure. The order of the findings does not matter (of two answers to
 * one question the later holds), and one more alarming answer never makes the advice less cautious.
 * While nobody has looked at the lamp it is asked for, unless something else already says to stop; on an engine
 * without on-board diagnosis to light one, a look round the car.
 * Throws an `InputError` with all problems when the profile or a finding cannot be used.
 */
export function driveAdvice(
  profile: EngineProfile,
  findings: readonly Finding[],
  { where }: DriveOptions = {},
): DriveAdvice {
  const [candidate] = candidateEngines(profile);
  const problems = checkFindings(profile, findings);
  if (!candidate || problems.length > 0) throw new InputError(problems);
  const { engine } = candidate;
  const answered = answeredOf(engine, findings, KNOWLEDGE);
  const missing = missingCylinders(engine, answered);
  const answers = new Map<string, Set<string>>();
  for (const { row, options, codes } of answered) {
    const said = answers.get(row.id) ?? new Set<string>();
    for (const option of [...options, ...(codes?.families.keys() ?? [])]) said.add(option);
    answers.set(row.id, said);
  }
  const known = { answers, missing: missing.length, cylinders: engine.names.length };
  const rules = DRIVE_RULES.filter(
    (rule) => suitsEngine(profile, rule) && holds(rule.when, known),
  ).sort((a, b) => caution(a.level) - caution(b.level));
  const look = DRIVE_LOOKS.find((id) => suitsEngine(profile, KNOWLEDGE.findings.get(id) ?? {}));
  const open = [...rules.map(({ restsUntil }) => restsUntil), look].find(
    (id) => id !== undefined && !answers.has(id),
  );
  const advice = adviceOf(profile, rules, missing, open);
  return { ...advice, cautions: cautionsHere(advice.cautions, where).filter(isOpen(known)) };
}

/** False of a caution that what was answered makes idle. */
function isOpen({ answers }: Known): (id: string) => boolean {
  const rows: readonly CautionRow[] = CAUTIONS;
  return (id) => {
    const unless = rows.find((row) => row.id === id)?.unless;
    const said = answers.get(unless?.finding ?? "");
    return !unless?.is.some((option) => said?.has(option));
  };
}

function adviceOf(
  profile: EngineProfile,
  rules: readonly DriveRuleRow[],
  missing: readonly CylinderName[],
  look: DriveAdvice["ask"],
): DriveAdvice {
  const level = DRIVE_LEVEL_ROWS.find((row) => row.level === rules[0]?.level);
  const isBarred = level !== undefined && ENGINE_RUNS.barred.includes(level.level);
  const waits = look !== undefined && rules.some(({ restsUntil }) => restsUntil === look);
  return {
    ...(look && !isBarred ? { ask: look } : {}),
    ...(isBarred || waits ? { rests: true } : {}),
    ...(level ? { level } : {}),
    rules,
    never: [...new Set(rules.flatMap((rule) => rule.never))],
    cautions: [...new Set(rules.flatMap((rule) => rule.cautions))],
    missing,
    ...(level?.level === "to-safety-only"
      ? { limpHome: profile.fuelling === "carburettor" ? LIMP_HOME_OLDER : LIMP_HOME }
      : {}),
  };
}

/** 0 is the most cautious. */
function caution(level: DriveLevel): number {
  return DRIVE_LEVELS.indexOf(level);
}

function holds(when: DriveCondition, known: Known): boolean {
  if ("all" in when) return when.all.every((each) => holds(each, known));
  if ("any" in when) return when.any.some((each) => holds(each, known));
  if ("finding" in when) {
    const said = known.answers.get(when.finding);
    return when.is.some((option) => said?.has(option) ?? false);
  }
  const { atLeast, share = 0 } = when.missing;
  return known.missing >= atLeast && known.missing >= share * known.cylinders;
}
