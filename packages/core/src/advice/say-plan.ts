// A plan in terms of this engine: which check at which cylinder, what each outcome would mean.
import { nameAt } from "../engine/cylinder-name.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import type { AtHand } from "../knowledge/answer.ts";
import { LEAST_MENDABLE, TRIAL_MINUTES } from "../knowledge/at-hand.ts";
import { ENGINE_RUNS } from "../knowledge/engine-runs.ts";
import { saysCured, TRIAL } from "../knowledge/made-by-check.ts";
import type { DriveLevel } from "../knowledge/schema.ts";
import { stepCautions } from "../knowledge/step-caution.ts";
import type { Plan, Step, TestWorth } from "../planning/problem.ts";
import { putBackAfter, type ShopUnits } from "../service/put-back.ts";
import type { Opening } from "./access.ts";
import type { CheckOutcome, Next, NextCheck, NextRepair, NextStep } from "./advice.ts";
import { hourRateOf, priceOf } from "./at-hand.ts";
import { leadIn } from "./lead.ts";
import type { Outcome } from "./look.ts";
import type { Trial } from "./made.ts";
import type { Offer } from "./offer.ts";
import type { Prospect } from "./outlook.ts";
import { type RepairPlace, repairAt } from "./repair.ts";

/** Checks and repairs that are told. */
const CHECKS_TOLD = 8;
const REPAIRS_TOLD = 12;

interface Hand {
  readonly atHand: AtHand;
  readonly units: ShopUnits | undefined;
}

export function sayPlan(prospect: Prospect, offer: Offer, plan: Plan, hand: Hand): Next {
  const { atHand } = hand;
  const worths = byWorth(offer, plan);
  const check = (worth: TestWorth): NextCheck => sayCheck(prospect, offer, worth, hand);
  const step = stepOf(offer, plan);
  const chosen = worths.find(({ test }) => step.kind === "test" && step.test === test);
  const told = [...(chosen ? [chosen] : []), ...worths.filter((worth) => worth !== chosen)].slice(
    0,
    CHECKS_TOLD,
  );
  return {
    step: chosen ? check(chosen) : sayStep(prospect, offer, step, atHand),
    expectedMinutes: plan.expectedCost,
    expectedMinutesWithoutChecks: plan.repairOrderCost,
    callChance: plan.repairOrder.find((each) => each.step.kind === "call")?.reached ?? 0,
    mendable: offer.mendable,
    hourRate: hourRateOf(atHand),
    checks: told.map(check),
    repairs: plan.repairOrder
      .flatMap(({ step: each }) =>
        each.kind === "repair" ? [sayRepair(prospect, offer, each.repair, atHand)] : [],
      )
      .slice(0, REPAIRS_TOLD),
    withheld: offer.withheld,
  };
}

/**
 * Tests, the worthiest first. Worth is an estimate in minutes: of two that are worth the same minutes the one
 * that tells more comes first, so one check begins at the place that is suspected most.
 */
function byWorth({ checks }: Offer, { byTest }: Plan): readonly TestWorth[] {
  const tells = ({ test }: TestWorth): number => checks[test]?.tellsBits ?? 0;
  return [...byTest].sort(
    (a, b) => Math.round(b.worth) - Math.round(a.worth) || tells(b) - tells(a),
  );
}

/**
 * The planner's step, unless what can be mended here is too little to begin with. Of repairs with one trial
 * after all of them it does not matter which is first: the likeliest is named.
 */
export function stepOf(
  { mendable, repairs }: Pick<Offer, "mendable" | "repairs">,
  { step, repairOrder }: Pick<Plan, "step" | "repairOrder">,
): Step {
  if (!step || mendable < LEAST_MENDABLE) return { kind: "call" };
  if (step.kind !== "repair" || step.thenTry) return step;
  const steps = repairOrder.map((each) => each.step);
  const trial = steps.findIndex((each) => each.kind === "repair" && each.thenTry);
  const batch = steps.slice(0, trial + 1).flatMap((each) => (each.kind === "repair" ? [each] : []));
  if (!batch.some(({ repair }) => repair === step.repair)) return step;
  const curing = (each: typeof step): number => repairs[each.repair]?.probability ?? 0;
  return batch.reduce((best, each) => (curing(each) > curing(best) ? each : best), step);
}

/** To run the engine after something that is mended already. */
export function sayTrial(
  prospect: Prospect,
  { row, place, by }: Trial,
  level: DriveLevel | undefined,
  { where }: AtHand,
): NextRepair {
  const isShort = level !== undefined && ENGINE_RUNS.short.includes(level);
  const cautions = isShort ? [ENGINE_RUNS.shortCaution, ...TRIAL.cautions] : TRIAL.cautions;
  return {
    kind: "repair",
    repair: row.id,
    name: isShort ? TRIAL[by].resting : TRIAL[by].say,
    cylinders: namesAt(prospect, place),
    opens: [],
    minutes: TRIAL_MINUTES,
    partsPrice: 0,
    cures: repairAt(prospect, row, place).probability,
    cautions: stepCautions({ minutes: TRIAL_MINUTES, cautions }, where),
    isMade: true,
    because: TRIAL[by].because,
  };
}

/** To renew the part that a swap has proven; `undefined` when that cannot be done with what is at hand. */
export function sayProven(
  prospect: Prospect,
  offer: Offer,
  { row, place, say }: RepairPlace & { readonly say: string },
  atHand: AtHand,
): NextRepair | undefined {
  const at = offer.repairs.findIndex(
    (each) => each.row.id === row.id && each.place.id === place.id,
  );
  return at < 0 ? undefined : { ...sayRepair(prospect, offer, at, atHand), because: say };
}

function sayStep(prospect: Prospect, offer: Offer, step: Step, atHand: AtHand): NextStep {
  return step.kind === "repair"
    ? sayRepair(prospect, offer, step.repair, atHand)
    : { kind: "call" };
}

function sayCheck(
  prospect: Prospect,
  offer: Offer,
  worth: TestWorth,
  { atHand: { where, tools }, units }: Hand,
): NextCheck {
  const here = offer.checks[worth.test] as Offer["checks"][number];
  const { row, cylinders, outcomes, access, tellsBits, cautions } = here;
  return {
    kind: "check",
    check: row.id,
    name: row.name,
    cylinders: namesOf(prospect, cylinders),
    ...openingWork(offer, access, row.minutes),
    worthMinutes: worth.worth,
    tellsBits,
    cautions: stepCautions({ ...row, cautions }, where),
    putBack: putBackAfter(profileOf(prospect), row, units, tools),
    outcomes: outcomes.map((outcome, i) =>
      sayOutcome(prospect, outcome, worth.outcomeChance[i] as number),
    ),
  };
}

function sayRepair(prospect: Prospect, offer: Offer, repair: number, atHand: AtHand): NextRepair {
  const { row, place, access, probability } = offer.repairs[repair] as Offer["repairs"][number];
  const cylinders = namesOf(prospect, place.cylinders);
  return {
    kind: "repair",
    repair: row.id,
    name: nameAt(row.name, cylinders, allNames(prospect).length),
    cylinders: namesAt(prospect, place),
    ...openingWork(offer, access, row.minutes),
    partsPrice: priceOf(row.parts, atHand),
    cures: probability,
    cautions: stepCautions(row, atHand.where),
  };
}

function openingWork(
  { openings }: Offer,
  access: readonly number[],
  minutes: number,
): { readonly opens: readonly Opening[]; readonly minutes: number } {
  const needed = access.flatMap((opening) => openings.all[opening] ?? []);
  return {
    opens: needed.filter(({ minutes: off }) => off > 0),
    minutes: needed.reduce((sum, opening) => sum + opening.minutes, minutes),
  };
}

/** Who would lead if the check came out so; after a cure its proof comes next, whoever leads. */
function sayOutcome(prospect: Prospect, outcome: Outcome, probability: number): CheckOutcome {
  const { answers, chance } = outcome;
  if (probability <= 0) return { answers, probability: 0 };
  if (saysCured(answers)) return { answers, probability };
  const after = prospect.chance.map((before, s) => (before * (chance[s] as number)) / probability);
  const leader = leadIn(prospect, after);
  return { answers, probability, ...(leader ? { leader } : {}) };
}

/** Where a repair is done; nowhere in particular when it is of the whole engine. */
function namesAt(prospect: Prospect, { kind, cylinders }: RepairPlace["place"]) {
  return kind === "engine" || kind === "set" ? [] : namesOf(prospect, cylinders);
}

function namesOf(prospect: Prospect, cylinders: readonly number[]): readonly CylinderName[] {
  const names = allNames(prospect);
  return cylinders.map((c) => names[c] as CylinderName);
}

function allNames({ outlooks }: Prospect): readonly CylinderName[] {
  return outlooks[0]?.engine.names ?? [];
}

function profileOf({ outlooks }: Prospect): EngineProfile {
  const [{ engine }] = outlooks as [Prospect["outlooks"][number]];
  return engine.profile;
}
