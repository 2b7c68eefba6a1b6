// What to do next on this engine: the check that pays, or the repair that is likely enough.
import { checkFindings } from "../compile/check-finding.ts";
import { checkRepairs } from "../compile/repair.ts";
import { type CandidateEngine, candidateEngines } from "../engine/candidates.ts";
import type { EngineProfile } from "../engine/profile.ts";
import type { AtHand, Finding, RepairDone } from "../knowledge/answer.ts";
import { KNOWLEDGE, type Knowledge } from "../knowledge/knowledge.ts";
import { nextStep } from "../planning/next-step.ts";
import { InputError } from "../units/problem.ts";
import type { Next } from "./advice.ts";
import { offerOf } from "./offer.ts";
import { type Prospect, prospectOf } from "./outlook.ts";
import { sayPlan } from "./say-plan.ts";

export interface NextOptions {
  /** What was mended so far, with its results. */
  readonly repairs?: readonly RepairDone[];
  /** What hand, place and purse allow; nothing is ruled out unless given. */
  readonly atHand?: AtHand;
  /** Ids of what is off already, as `opens` of a step before told them. */
  readonly open?: readonly string[];
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
  const { repairs = [], atHand = {}, open = [], putOff = [], isEnough } = options;
  const prospect = prospectFor(profile, findings, options);
  const offer = offerOf(prospect, { findings, repairs, atHand, open, putOff });
  const plan = nextStep(offer.problem, undefined, {
    maxWork: options.maxWork ?? MAX_WORK,
    ...(isEnough ? { isEnough } : {}),
  });
  return sayPlan(prospect, offer, plan, atHand);
}

/** Everything that may be wrong; throws an `InputError` when profile, findings or repairs are unsound. */
export function prospectFor(
  profile: EngineProfile,
  findings: readonly Finding[],
  { repairs = [], knowledge = KNOWLEDGE }: NextOptions,
): Prospect {
  const engines = candidateEngines(profile);
  const problems = [
    ...checkFindings(profile, findings, knowledge),
    ...checkRepairs((engines[0] as CandidateEngine).engine, repairs, knowledge),
  ];
  if (problems.length > 0) throw new InputError(problems);
  return prospectOf(engines, { findings, repairs, knowledge });
}
