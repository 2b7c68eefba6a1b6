// What comes before the planner's word: to start the engine after something was mended by the way, and to
// renew the part that a swap has proven.
import { type Answered, answeredOf } from "../compile/answered.ts";
import { fits } from "../compile/fits.ts";
import { placeOfRepair } from "../compile/repair.ts";
import type { Engine } from "../engine/engine.ts";
import { places } from "../engine/place.ts";
import type { Finding, RepairDone } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import { CONCLUSIVE, MADE_BY_CHECK, PROVEN_BY_SWAP } from "../knowledge/made-by-check.ts";
import type { RepairRow } from "../knowledge/schema.ts";
import type { Outlook, Prospect } from "./outlook.ts";
import { isDone, type RepairPlace, repairAt } from "./repair.ts";

/** What has been seen and mended on an engine so far. */
export interface SoFar {
  readonly engine: Engine;
  readonly answered: readonly Answered[];
  readonly repairs: readonly RepairDone[];
  readonly knowledge: Knowledge;
}

export function soFar(
  { outlooks, knowledge }: Prospect,
  findings: readonly Finding[],
  repairs: readonly RepairDone[],
): SoFar {
  const [{ engine }] = outlooks as [Outlook];
  return { engine, answered: answeredOf(engine, findings, knowledge), repairs, knowledge };
}

/** A repair that a check made by the way. */
interface Made extends RepairPlace {
  /** True where an answer tells how the engine ran afterwards. */
  readonly isTold: boolean;
  /** True where that answer says that it runs right. */
  readonly isCured: boolean;
}

/** What checks have mended by the way, in the order of the answers. */
export function madeByChecks({ engine, answered, knowledge }: SoFar): readonly Made[] {
  return answered.flatMap(({ row: { id }, options, cylinder }) => {
    const made = MADE_BY_CHECK.find(
      ({ finding, option }) => finding === id && (!option || options.includes(option)),
    );
    const row = made && suiting(engine, made.repairs, knowledge);
    if (!row) return [];
    return places(engine, row.at)
      .filter(({ cylinders }) => cylinder === undefined || cylinders.includes(cylinder))
      .map((place) => {
        const told = answered.filter(
          (each) =>
            each.row.id === made.toldBy &&
            (each.cylinder === undefined || place.cylinders.includes(each.cylinder)),
        );
        const isCured = told.some((each) => each.options.some((one) => one === made.curedBy));
        return { row, place, isTold: told.length > 0, isCured };
      });
  });
}

/** A repair that is made, and what calls for the engine to be run now. */
export interface Trial extends RepairPlace {
  readonly by: "check" | "repair" | "cured";
}

/** What was mended last and waits for a start, or for its proof; `undefined` when nothing does. */
export function trialOf(known: SoFar): Trial | undefined {
  const { engine, knowledge, repairs } = known;
  const at = (done: RepairDone | undefined, by: Trial["by"]): Trial | undefined => {
    const row = knowledge.repairs.find(({ id }) => id === done?.repair);
    const place = done && row && placeOfRepair(engine, row, done);
    return place && { row, place, by };
  };
  const last = repairs.at(-1);
  const noted = repairs.findLast(({ result }) => result === undefined);
  const made = madeByChecks(known).filter((each) => !isDone(engine, each, repairs));
  const untried = made.findLast(({ isTold }) => !isTold);
  const cured = made.findLast(({ isCured }) => isCured);
  return (
    at(noted, "repair") ??
    (untried && { ...untried, by: "check" }) ??
    (cured && { ...cured, by: "cured" }) ??
    (last?.result === "cured" ? at(last, "cured") : undefined)
  );
}

/** The part that the last conclusive swap tells to renew, and what to do with the good one. */
export function provenBySwap(
  prospect: Prospect,
  known: SoFar,
): (RepairPlace & { readonly say: string }) | undefined {
  const { engine, answered, repairs, knowledge } = known;
  const proven = answered.flatMap(({ row: { id }, options, cylinder }) => {
    const swap = PROVEN_BY_SWAP.find(
      ({ finding, option }) => finding === id && options.includes(option),
    );
    const row = swap && suiting(engine, swap.repairs, knowledge);
    const place =
      row &&
      places(engine, row.at).find(
        ({ cylinders }) => cylinder === undefined || cylinders.includes(cylinder),
      );
    if (!place || isDone(engine, { row, place }, repairs)) return [];
    const { probability } = repairAt(prospect, row, place);
    return probability < CONCLUSIVE.leastCures ? [] : [{ row, place, say: swap.say }];
  });
  return proven.at(-1);
}

/** Repairs (ids) for which no part need be got: a swap has brought a good one. */
export function withPartThere({ answered }: SoFar): ReadonlySet<string> {
  const swaps = PROVEN_BY_SWAP.filter(
    ({ finding, option, hasPart }) =>
      hasPart &&
      answered.some(({ row, options }) => row.id === finding && options.includes(option)),
  );
  return new Set(swaps.flatMap(({ repairs }) => repairs));
}

function suiting(
  engine: Engine,
  ids: readonly string[],
  { repairs }: Knowledge,
): RepairRow | undefined {
  const rows = ids.flatMap((id) => repairs.find((row) => row.id === id) ?? []);
  return rows.find((row) => fits(engine, row));
}
