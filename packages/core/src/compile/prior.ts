// From shares, places and risks to the prior odds of every fault at every place.
import type { Engine } from "../engine/engine.ts";
import { type Place, places } from "../engine/place.ts";
import type { IgnitionKind } from "../engine/profile.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { FaultRow, RiskRow } from "../knowledge/schema.ts";
import { suitsEngine } from "../knowledge/suits.ts";
import type { Answered } from "./answered.ts";
import { type Pattern, patternOf } from "./pattern.ts";

/** A fault type at one place of an engine. */
export interface Instance {
  readonly fault: FaultRow;
  readonly place: Place;
  /** Share of complaints in which it is present, before anything is known, 0..1. */
  readonly share: number;
  /** Which cylinders it makes miss. */
  readonly pattern: Pattern;
}

/** How a fault at a place is named in a ranking: `coil.half-dead@coil 2+5`. */
export function instanceKey({ fault, place }: Instance): string {
  return `${fault.id}@${place.id}`;
}

/** Least factor that "this was asked and is not so" may put on a risk. */
const LEAST_RISK = 0.05;

/** All faults of the catalogue at all places where this engine can have them. */
export function instancesOf(engine: Engine, knowledge: Knowledge): readonly Instance[] {
  return knowledge.faults.flatMap((fault) => {
    const share = shareOf(fault, engine.ignition);
    if (share === 0 || !suitsEngine(engine.profile, fault)) return [];
    const at = places(engine, fault.at);
    return at.map((place) => ({
      fault,
      place,
      share: share / 1000 / at.length,
      pattern: patternOf(engine, place, fault.reach),
    }));
  });
}

/** Share per 1,000 complaints on an ignition kind; a hybrid is half pack, half rail. */
export function shareOf(fault: FaultRow, ignition: IgnitionKind): number {
  const own = fault.shares[ignition];
  if (own !== undefined || ignition !== "hybrid") return own ?? 0;
  return ((fault.shares.pack ?? 0) + (fault.shares.rail ?? 0)) / 2;
}

/**
 * The factor on all shares after which a given part of all complaints has exactly two faults, when
 * hypotheses of one, two and three faults are weighed by the product of their odds.
 */
export function companyFactor(shares: readonly number[], twoFaults: number): number {
  let one = 0;
  let two = 0;
  let three = 0;
  for (const share of shares) {
    three += two * share;
    two += one * share;
    one += share;
  }
  const withTwo = (factor: number): number => {
    const pairs = two * factor * factor;
    return pairs / (one * factor + pairs + three * factor ** 3);
  };
  if (two === 0) return 1;
  let low = 0;
  let high = 1;
  // withTwo rises to its maximum and then falls; the root asked for is on the rising side.
  while (withTwo(high) < twoFaults && high > 1e-6 && withTwo(high * 2) > withTwo(high)) high *= 2;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (withTwo(middle) < twoFaults) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** What is known beforehand multiplies the odds of a fault. */
export function riskFactor(fault: FaultRow, answers: readonly Answered[]): number {
  return answers.reduce((product, answer) => {
    const risk = fault.risks.find(({ finding }) => finding === answer.row.id);
    return risk ? product * answerRisk(risk, answer, leftOf(answer, answers)) : product;
  }, 1);
}

/** How much of an answer's pull is left, by those that tell how far back it lies; all unless told. */
function leftOf({ row }: Answered, answers: readonly Answered[]): number {
  return answers.reduce((left, { row: { fades }, options }) => {
    const [option = ""] = options;
    return fades?.of === row.id ? left * (fades.left[option] ?? 1) : left;
  }, 1);
}

/** What one answer does to the odds of a fault beforehand. */
function answerRisk(risk: RiskRow, { row, options }: Answered, left: number): number {
  return Object.entries(row.options).reduce((product, [option, { chance }]) => {
    const times = timesOf(risk, option);
    if (times === undefined) return product;
    // What hands disturbed shows soon or never; a part that was renewed stays renewed.
    if (options.includes(option)) return product * (times > 1 ? times ** left : times);
    // Asked and not so: the other side of the same ratio, where options are asked one by one.
    const isAskedAlone = row.kind === "several" || row.kind === "presence";
    return isAskedAlone
      ? product * Math.max(LEAST_RISK, (1 - chance * times) / (1 - chance))
      : product;
  }, 1);
}

function timesOf(risk: RiskRow, option: string): number | undefined {
  return risk.times[option];
}
