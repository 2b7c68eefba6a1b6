// Which repairs could help on this engine, where, and what each would cure in every state.
import { fits } from "../compile/fits.ts";
import { cureOf, placeOfRepair } from "../compile/repair.ts";
import type { Engine } from "../engine/engine.ts";
import { type Place, places } from "../engine/place.ts";
import type { RepairDone } from "../knowledge/answer.ts";
import type { RepairRow } from "../knowledge/schema.ts";
import type { PlanTurn } from "../planning/problem.ts";
import { dot } from "./check.ts";
import type { Outlook, Prospect } from "./outlook.ts";

export interface RepairPlace {
  readonly row: RepairRow;
  readonly place: Place;
}

/** A repair at a place, with what it does. */
export interface RepairHere extends RepairPlace {
  /** By state: chance that the engine runs right after it. */
  readonly cures: Float64Array;
  /** Two things wrong and one mended: what is then left. */
  readonly turns: readonly PlanTurn[];
  readonly probability: number;
}

/** Repairs less likely to help than this are not weighed. */
const WORTH_WEIGHING = 0.002;

/** Whether a repair was done at that place. */
export function isDone(
  engine: Engine,
  { row, place }: RepairPlace,
  done: readonly RepairDone[],
): boolean {
  return done.some(
    (each) => each.repair === row.id && placeOfRepair(engine, row, each)?.id === place.id,
  );
}

/** All repairs that may help; those that were done already, also by the way of a check, are left out. */
export function repairsHere(
  prospect: Prospect,
  done: readonly RepairDone[],
  made: readonly RepairPlace[] = [],
): readonly RepairHere[] {
  const [first] = prospect.outlooks;
  if (!first) return [];
  const { engine } = first;
  const isMade = (at: RepairPlace): boolean =>
    isDone(engine, at, done) ||
    made.some(({ row, place }) => row.id === at.row.id && place.id === at.place.id);
  return prospect.knowledge.repairs.flatMap((row) => {
    if (!fits(engine, row)) return [];
    return placesOf(prospect, row).flatMap((place): readonly RepairHere[] => {
      if (isMade({ row, place })) return [];
      const here = repairAt(prospect, row, place);
      return here.probability < WORTH_WEIGHING ? [] : [here];
    });
  });
}

/** What a repair at a place does. */
export function repairAt(prospect: Prospect, row: RepairRow, place: Place): RepairHere {
  const { cures, turns } = effectOf(prospect, row, place);
  return { row, place, cures, turns, probability: dot(prospect.chance, cures) };
}

/** Places of all engines that it may be, each once. */
function placesOf({ outlooks }: Prospect, row: RepairRow): readonly Place[] {
  const byId = new Map<string, Place>();
  for (const { engine } of outlooks) {
    for (const place of places(engine, row.at)) byId.set(place.id, place);
  }
  return [...byId.values()];
}

function effectOf(
  prospect: Prospect,
  row: RepairRow,
  place: Place,
): Pick<RepairHere, "cures" | "turns"> {
  const cures = new Float64Array(prospect.chance.length);
  const turns: PlanTurn[] = [];
  for (const outlook of prospect.outlooks) {
    if (!hasPlace(outlook.engine, row, place)) continue;
    const cure = outlook.instances.map((instance) => cureOf(row, place, instance));
    outlook.states.forEach(({ faults }, i) => {
      const chances = faults.map((fault) => cure[fault] as number);
      cures[outlook.start + i] = chances.reduce((product, chance) => product * chance, 1);
      if (faults.length < 2) return;
      chances.forEach((chance, member) => {
        const other = faults[1 - member];
        const to = other === undefined ? undefined : stateOfOne(outlook, other);
        const mendsThisOnly = chance * (1 - (chances[1 - member] as number));
        if (to === undefined || mendsThisOnly === 0) return;
        turns.push({ from: outlook.start + i, to, chance: mendsThisOnly });
      });
    });
  }
  return { cures, turns };
}

function hasPlace(engine: Engine, { at }: RepairRow, place: Place): boolean {
  return places(engine, at).some(({ id }) => id === place.id);
}

/** The likeliest state in which only one fault is present; states come best first. */
function stateOfOne({ states, start }: Outlook, fault: number): number | undefined {
  const at = states.findIndex(({ faults }) => faults.length === 1 && faults[0] === fault);
  return at < 0 ? undefined : start + at;
}
