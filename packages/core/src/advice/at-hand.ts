// What hand, place and purse allow, and what things cost in minutes.
import type { AtHand } from "../knowledge/answer.ts";
import {
  allowsStep,
  holdsTool,
  type PlacedStep,
  SPARE,
  USUAL_CALL_PRICE,
  USUAL_HOUR_RATE,
  USUAL_PRICE,
} from "../knowledge/at-hand.ts";
import type { PartsPrice, Tool } from "../knowledge/schema.ts";
import type { Withheld } from "./advice.ts";

/** A step, as far as it can be ruled out. */
interface Demand extends PlacedStep {
  readonly tool: Tool;
  readonly skill: number;
}

/**
 * Why a step cannot be done with what is at hand; `undefined` when it can. `minutes`: its own, with what must
 * come off first where that is known.
 */
export function refusal(
  { tools, skill, where }: AtHand,
  demand: Demand,
): Withheld["why"] | undefined {
  if (!holdsTool(tools, demand.tool)) return demand.tool === SPARE ? "spare" : "tool";
  const needsParts = demand.parts !== undefined && demand.parts !== "none";
  // Who carries no tool carries no part either.
  const isBare = tools?.every((tool) => tool === "none") ?? false;
  if (isBare && needsParts) return "tool";
  if (skill !== undefined && demand.skill > skill) return "skill";
  return where === undefined || allowsStep(where, demand) ? undefined : "place";
}

/** Time that costs nothing would make every part dearer than any work. */
const LEAST_HOUR_RATE = 1;

/** What an hour of the user's own time counts for. */
export function hourRateOf({ hourRate }: AtHand): number {
  return Math.max(LEAST_HOUR_RATE, hourRate ?? USUAL_HOUR_RATE);
}

/** What a price is worth in minutes of the user's own time. */
export function inMinutes(price: number, atHand: AtHand): number {
  return (price / hourRateOf(atHand)) * 60;
}

export function priceOf(parts: PartsPrice, { partsPrice }: AtHand): number {
  return parts === "none" ? 0 : (partsPrice?.[parts] ?? USUAL_PRICE[parts]);
}

export function callMinutes(atHand: AtHand): number {
  return inMinutes(atHand.callPrice ?? USUAL_CALL_PRICE, atHand);
}
