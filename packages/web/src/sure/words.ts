// What the figures of sureness mean, in words.
import type { NamedFlip, Stability } from "@half-order/core";
import { SURE } from "../text/en-sure.ts";
import { sayPercent } from "../ui/chance.tsx";
import type { Carrying } from "./work-out.ts";

/** A number that must move further than a factor of a thousand in odds is no worry. */
const FAR_DB = 30;
/** Twice the odds: most weights are estimates that may well be off by so much. */
const USUAL_DB = 3;
/** Less shows in no figure. */
const LEVEL_DB = 0.1;

/** Whether an error in it, or taking it back, could change the first place. */
export function decides({ flip, without }: Pick<Carrying, "flip" | "without">): boolean {
  return without !== undefined || Math.abs(flip?.moveDb ?? Number.MAX_VALUE) <= FAR_DB;
}

/** A first part that goes in one of ten small shakes is fair; in more than one of four, loose. */
export function verdictOf({ first }: Pick<Stability, "first">): keyof typeof SURE.verdict {
  if (first >= 0.9) return "firm";
  return first >= 0.75 ? "fair" : "loose";
}

/** How far a number may be off, and what comes first then; `name` of `fault@place`. */
export function sayFlip(
  { of, fault, from, to, moveDb, first }: NamedFlip,
  name: (key: string) => string,
): string {
  if (Math.abs(moveDb) < LEVEL_DB) return SURE.level(name(first));
  const times = sayTimes(10 ** (Math.abs(moveDb) / 10));
  const near = Math.abs(moveDb) <= USUAL_DB ? ` ${SURE.within}` : "";
  if (of === "prior") {
    if (first === fault) return SURE.commonerItself(name(fault), times) + near;
    const say = moveDb < 0 ? SURE.rarer : SURE.commoner;
    return say(name(fault), times, name(first)) + near;
  }
  const off = SURE.off(Math.abs(moveDb).toFixed(1), times) + near;
  const [now, then] = [sayPercent(from), sayPercent(to)];
  if (first === fault) return `${off} ${SURE.itself(name(fault), then, now)}`;
  const say = moveDb < 0 ? SURE.falls : SURE.rises;
  return `${off} ${say(name(fault), then, now, name(first))}`;
}

/** "1.7", "12". */
export function sayTimes(times: number): string {
  return times < 10 ? times.toFixed(1) : Math.round(times).toLocaleString();
}
