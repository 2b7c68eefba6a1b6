// Rules for what to do next, to be held against one another: our plan, and three that people follow.
import type { Next, NextCheck, NextRepair } from "../advice/advice.ts";
import { refusal } from "../advice/at-hand.ts";
import { type NextOptions, next } from "../advice/next.ts";
import { answeredOf } from "../compile/answered.ts";
import { placeOfRepair } from "../compile/repair.ts";
import { places } from "../engine/place.ts";
import type { CylinderName } from "../engine/profile.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import type { CheckRow, RepairRow } from "../knowledge/schema.ts";
import { suitsEngine } from "../knowledge/suits.ts";
import { missingCylinders } from "../service/missing-cylinder.ts";
import type { Rule, Visit } from "./simulated-visit.ts";
import { checkStep, repairStep } from "./visit-step.ts";

/** What the library says at this point of a visit. */
export function adviceFor(
  { engine, findings, repairs, atHand, open, putOff }: Visit,
  options: NextOptions = {},
): Next {
  return next(engine.profile, findings, { repairs, atHand, open, putOff, ...options });
}

/** Our plan. */
export const PLANNED: Rule = (visit) => {
  const { step } = adviceFor(visit);
  return step.kind === "call" ? undefined : step;
};

/** Repairs by probability per cost, made up to date after each; nothing is checked. */
export const REPAIRS_ONLY: Rule = (visit) => {
  const { step } = adviceFor(visit, { knowledge: { ...KNOWLEDGE, checks: [] } });
  return step.kind === "repair" ? step : undefined;
};

/** A repair is tried from this chance of a cure on, or when no check tells anything worth its time. */
const SURE_ENOUGH = 0.7;
const LEAST_BITS_PER_MINUTE = 0.002;

/** The check that tells most for its minutes until one repair is likely enough. */
export const INFORMATION: Rule = (visit) => {
  const { step, checks, repairs } = adviceFor(visit);
  const surest = [...repairs].sort((a, b) => b.cures - a.cures)[0];
  if (surest && surest.cures >= SURE_ENOUGH) return surest;
  const telling = checks
    .filter(({ tellsBits, minutes }) => tellsBits / minutes > LEAST_BITS_PER_MINUTE)
    .sort((a, b) => b.tellsBits / b.minutes - a.tellsBits / a.minutes)[0];
  return telling ?? surest ?? (step.kind === "call" ? undefined : step);
};

/**
 * The order that the trade is fond of (common practice): plugs, then what leads to them, then the coil of the
 * cylinder that is named, then its injector; then compression is measured, and somebody else is called.
 */
const FIXED_ORDER = [
  ["repair.plug-set"],
  ["repair.lead-set", "repair.boot-set"],
  [
    "repair.rail",
    "repair.pack",
    "repair.coil-double",
    "repair.coil-single",
    "repair.coil-distributor",
  ],
  ["repair.injector-one"],
] as const;

export const FIXED: Rule = (visit) => {
  for (const ids of FIXED_ORDER) {
    const step = fixedRepair(visit, ids);
    if (step && !isDone(visit, step)) return step;
  }
  const isMeasured = isLookedAt(visit, "compression") || visit.putOff.includes("check.compression");
  return isMeasured ? undefined : checkOf(visit, "check.compression");
};

/** Whether tools, skill and place allow a step. */
function isAllowed({ atHand }: Visit, row: CheckRow | RepairRow, minutes: number): boolean {
  return refusal(atHand, { ...row, minutes }) === undefined;
}

/** The first of the repairs that suits the engine, at the cylinder that codes or counts name. */
function fixedRepair(visit: Visit, ids: readonly string[]): NextRepair | undefined {
  const { engine } = visit;
  const row = ids
    .map((id) => KNOWLEDGE.repairs.find((each) => each.id === id))
    .find((each) => each && suitsEngine(engine.profile, each));
  if (!row) return undefined;
  const at = placeOfRepair(engine, row, { cylinder: suspect(visit) }) ?? places(engine, row.at)[0];
  if (!at) return undefined;
  const step = repairStep(visit, row, at);
  return isAllowed(visit, row, step.minutes) ? step : undefined;
}

/** The cylinder that codes or counts name first; the first in the row where they name none. */
function suspect({ engine, findings }: Visit): CylinderName {
  const [named] = missingCylinders(engine, answeredOf(engine, findings, KNOWLEDGE));
  return named ?? (engine.names[0] as CylinderName);
}

function isDone({ repairs }: Visit, { repair }: NextRepair): boolean {
  return repairs.some((done) => done.repair === repair);
}

function isLookedAt({ findings }: Visit, finding: string): boolean {
  return findings.some((each) => each.finding === finding);
}

/** A check over all cylinders. */
function checkOf(visit: Visit, id: string): NextCheck | undefined {
  const row = KNOWLEDGE.checks.find((each) => each.id === id);
  if (!row) return undefined;
  const step = checkStep(
    visit,
    row,
    visit.engine.names.map((_, c) => c),
  );
  return isAllowed(visit, row, step.minutes) ? step : undefined;
}
