// A plan in terms of this engine: which check at which cylinder, what each outcome would mean.
import { instanceKey } from "../compile/prior.ts";
import { sayNames } from "../engine/cylinder-name.ts";
import type { CylinderName } from "../engine/profile.ts";
import type { AtHand } from "../knowledge/answer.ts";
import type { Plan, Step, TestWorth } from "../planning/problem.ts";
import type { Opening } from "./access.ts";
import type { CheckOutcome, Next, NextCheck, NextRepair, NextStep } from "./advice.ts";
import { priceOf } from "./at-hand.ts";
import type { Outcome } from "./look.ts";
import type { Offer } from "./offer.ts";
import { type Prospect, presentIn } from "./outlook.ts";

/** Checks and repairs that are told. */
const CHECKS_TOLD = 8;
const REPAIRS_TOLD = 12;

export function sayPlan(prospect: Prospect, offer: Offer, plan: Plan, atHand: AtHand): Next {
  const worths = [...plan.byTest].sort((a, b) => b.worth - a.worth);
  const check = (worth: TestWorth): NextCheck => sayCheck(prospect, offer, worth);
  const step = plan.step ?? { kind: "call" as const };
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
    checks: told.map(check),
    repairs: plan.repairOrder
      .flatMap(({ step: each }) =>
        each.kind === "repair" ? [sayRepair(prospect, offer, each.repair, atHand)] : [],
      )
      .slice(0, REPAIRS_TOLD),
    withheld: offer.withheld,
  };
}

function sayStep(prospect: Prospect, offer: Offer, step: Step, atHand: AtHand): NextStep {
  return step.kind === "repair"
    ? sayRepair(prospect, offer, step.repair, atHand)
    : { kind: "call" };
}

function sayCheck(prospect: Prospect, offer: Offer, worth: TestWorth): NextCheck {
  const here = offer.checks[worth.test] as Offer["checks"][number];
  const { row, cylinders, outcomes, access, tellsBits } = here;
  return {
    kind: "check",
    check: row.id,
    name: row.name,
    cylinders: namesOf(prospect, cylinders),
    ...openingWork(offer, access, row.minutes),
    worthMinutes: worth.worth,
    tellsBits,
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
    name: row.name.replace("{at}", sayNames(cylinders)),
    cylinders: place.kind === "engine" || place.kind === "set" ? [] : cylinders,
    ...openingWork(offer, access, row.minutes),
    partsPrice: priceOf(row.parts, atHand),
    cures: probability,
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

/** Who would lead if the check came out so. */
function sayOutcome(prospect: Prospect, outcome: Outcome, probability: number): CheckOutcome {
  const { answers, chance } = outcome;
  if (probability <= 0) return { answers, probability: 0 };
  const after = prospect.chance.map((before, s) => (before * (chance[s] as number)) / probability);
  const present = [...presentIn(prospect, after, instanceKey).values()];
  const [leader] = present.sort((a, b) => b.probability - a.probability);
  if (!leader) return { answers, probability };
  const { fault, place } = leader.instance;
  return {
    answers,
    probability,
    leader: {
      fault: fault.id,
      place: place.id,
      name: fault.name.replace("{at}", sayNames(namesOf(prospect, place.cylinders))),
      probability: leader.probability,
    },
  };
}

function namesOf(prospect: Prospect, cylinders: readonly number[]): readonly CylinderName[] {
  const names = prospect.outlooks[0]?.engine.names ?? [];
  return cylinders.map((c) => names[c] as CylinderName);
}
