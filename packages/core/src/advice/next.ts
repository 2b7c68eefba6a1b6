// What to do next on this engine: the check that pays, or the repair that is likely enough.
import { checkFindings } from "../compile/check-finding.ts";
import { checkRepairs } from "../compile/repair.ts";
import { type CandidateEngine, candidateEngines } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import type { EngineProfile } from "../engine/profile.ts";
import type { AtHand, Finding, RepairDone } from "../knowledge/answer.ts";
import { KNOWLEDGE, type Knowledge } from "../knowledge/knowledge.ts";
import { nextStep } from "../planning/next-step.ts";
import { driveAdvice } from "../service/drive.ts";
import type { ShopUnits } from "../service/put-back.ts";
import { InputError, type Problem } from "../units/problem.ts";
import type { Next } from "./advice.ts";
import { checkAtHand } from "./check-at-hand.ts";
import { provenBySwap, soFar, trialOf } from "./made.ts";
import { hazardOf, offerOf } from "./offer.ts";
import { type Prospect, prospectOf } from "./outlook.ts";
import { sayPlan, sayProven, sayTrial } from "./say-plan.ts";

export interface NextOptions {
  /** What was mended so far, with its results. */
  readonly repairs?: readonly RepairDone[];
  /** What hand, place and purse allow; nothing is ruled out unless given. */
  readonly atHand?: AtHand;
  /** Ids of what is off already, as `opens` of a step before told them. */
  readonly open?: readonly string[];
  /** In which gaps and torques are told; metric unless given. */
  readonly units?: ShopUnits;
  /** Ids of checks that are put off or cannot be made. */
  readonly putOff?: readonly string[];
  readonly knowledge?: Knowledge;
  /** Asked while planning; true ends it with the best plan so far. The plan improves with time. */
  readonly isEnough?: () => boolean;
  /** Situations that the planner looks into at most; 400 unless given. */
  readonly maxWork?: number;
}

const MAX_WORK = 400;

/**
 * The next step that costs least in the end, with every check and repair worth considering beside it.
 *
 * Pure but for `isEnough`. Minutes are of the user's own work; parts and a call are turned into minutes
 * at the user's hour rate. All minutes, prices and chances are estimates. Throws an `InputError` with
 * all problems when the profile, a finding or a repair cannot be used.
 */
export function next(
  profile: EngineProfile,
  findings: readonly Finding[],
  options: NextOptions = {},
): Next {
  const { repairs = [], atHand = {}, open = [], putOff = [], units, isEnough } = options;
  const prospect = prospectFor(profile, findings, options);
  const known = soFar(prospect, findings, repairs);
  const driving = driveAdvice(profile, findings);
  const level = driving.level?.level;
  const offer = offerOf(prospect, { ...known, findings, atHand, open, putOff, driving });
  const plan = nextStep(offer.problem, undefined, {
    maxWork: options.maxWork ?? MAX_WORK,
    prefer: (check) => hazardOf(offer, check),
    ...(isEnough ? { isEnough } : {}),
  });
  const advice = sayPlan(prospect, offer, plan, { atHand, units });
  const trial = trialOf(known);
  // No engine is started that the rules say to stop.
  if (trial && level !== "stop-now")
    return { ...advice, step: sayTrial(prospect, trial, level, atHand) };
  const proven = provenBySwap(prospect, known);
  const step = proven && sayProven(prospect, offer, proven, atHand);
  return step ? { ...advice, step } : advice;
}

/**
 * Everything that may be wrong; throws an `InputError` when profile, findings or options are unsound, or the
 * repair that is thought of (paths `/repair`, `/cylinder`).
 */
export function prospectFor(
  profile: EngineProfile,
  findings: readonly Finding[],
  { repairs = [], atHand = {}, knowledge = KNOWLEDGE }: NextOptions,
  wanted?: RepairDone,
): Prospect {
  const engines = candidateEngines(profile);
  const [{ engine }] = engines as [CandidateEngine];
  const problems = [
    ...checkFindings(profile, findings, knowledge),
    ...checkRepairs(engine, repairs, knowledge),
    ...(wanted === undefined ? [] : checkWanted(engine, wanted, knowledge)),
    ...checkAtHand(atHand),
  ];
  if (problems.length > 0) throw new InputError(problems);
  const all = wanted ? [...repairs, { ...wanted }] : repairs;
  return prospectOf(engines, { findings, repairs: all, knowledge });
}

function checkWanted(engine: Engine, wanted: RepairDone, knowledge: Knowledge): readonly Problem[] {
  return checkRepairs(engine, [wanted], knowledge).map((problem) => {
    return { ...problem, path: problem.path.replace(/^\/0/, "") || "/repair" };
  });
}
