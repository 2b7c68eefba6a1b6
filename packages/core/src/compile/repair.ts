// What a repair at a place cures, and what its result tells of every fault.
import { checkEntries } from "../engine/check-shape.ts";
import type { Engine } from "../engine/engine.ts";
import { type Place, places } from "../engine/place.ts";
import type { EngineProfile } from "../engine/profile.ts";
import type { RepairDone } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import { REPAIR_RESULT_ROWS } from "../knowledge/repair-result.ts";
import type { RepairRow } from "../knowledge/schema.ts";
import type { Observation } from "../model/diagnosis-model.ts";
import { nearest } from "../units/nearest.ts";
import { type Problem, pointer } from "../units/problem.ts";
import type { Instance } from "./prior.ts";

/** Chance that a repair at a place cures a fault at its place; 0 where it does not reach it. */
export function cureOf(
  row: RepairRow,
  at: Place,
  { fault, place }: Pick<Instance, "fault" | "place">,
): number {
  const works = row.mends.find((mend) => mend.fault === fault.id)?.works;
  if (works === undefined) return 0;
  return place.cylinders.every((cylinder) => at.cylinders.includes(cylinder)) ? works : 0;
}

/** Where a repair that was done was done; `undefined` when the engine has no such place. */
export function placeOfRepair(
  engine: Engine,
  row: RepairRow,
  done: Pick<RepairDone, "cylinder">,
): Place | undefined {
  const all = places(engine, row.at);
  if (done.cylinder === undefined) return all.length === 1 ? all[0] : undefined;
  const cylinder = engine.names.findIndex((name) => String(name) === String(done.cylinder));
  return all.find(({ cylinders }) => cylinders.includes(cylinder));
}

/** One observation for each repair that was tried (see `checkRepairs`). */
export function observeRepairs(
  engine: Engine,
  instances: readonly Instance[],
  repairs: readonly RepairDone[],
  knowledge: Knowledge,
): readonly Observation[] {
  return repairs.flatMap((done, answer) => {
    const row = knowledge.repairs.find(({ id }) => id === done.repair);
    const at = row && placeOfRepair(engine, row, done);
    const result = REPAIR_RESULT_ROWS.find((each) => each.result === done.result);
    if (!row || !at || !result) return [];
    const chance = (instance: Instance): number => {
      const { always, seldom, cured } = result;
      const unmended = instance.fault.shows * always + (1 - instance.fault.shows) * seldom;
      const cure = cureOf(row, at, instance);
      return cure * cured + (1 - cure) * unmended;
    };
    const value = Float64Array.from(instances, chance);
    const background = result.always;
    // Repairs are not answers of the caller: counted from −1 downwards they collide with none.
    return [{ form: "choice" as const, background, value, answer: -1 - answer }];
  });
}

/** Problems of a list of repairs; paths begin with the position in the list, `/3/cylinder`. */
export function checkRepairs(
  engine: Engine,
  repairs: readonly RepairDone[],
  knowledge: Knowledge,
): readonly Problem[] {
  const shape = checkEntries("repairs", repairs, "repair");
  if (shape.length > 0) return shape;
  return repairs.flatMap((done, i) => {
    const row = knowledge.repairs.find(({ id }) => id === done.repair);
    if (!row) return [unknownRepair(i, done, knowledge)];
    if (row.suits && !row.suits.includes(engine.ignition)) {
      return [notHere(i, row, engine.profile)];
    }
    return placeOfRepair(engine, row, done) ? [] : [noPlace(i, row, done, engine)];
  });
}

function unknownRepair(i: number, { repair }: RepairDone, { repairs }: Knowledge): Problem {
  const ids = repairs.map(({ id }) => id);
  const near = nearest(repair, ids, Number.POSITIVE_INFINITY).slice(0, 2);
  return {
    code: "repair-unknown",
    path: pointer(i, "repair"),
    message: `There is no repair "${repair}".`,
    hint: `Did you mean ${near.map((id) => `"${id}"`).join(" or ")}?`,
  };
}

function notHere(i: number, row: RepairRow, { ignition }: EngineProfile): Problem {
  return {
    code: "repair-not-here",
    path: pointer(i, "repair"),
    message: `"${row.id}" cannot be done on an engine with ignition "${ignition}".`,
    hint: "Leave it out, or correct the engine's ignition.",
  };
}

function noPlace(i: number, row: RepairRow, { cylinder }: RepairDone, engine: Engine): Problem {
  const path = pointer(i, "cylinder");
  const names = engine.names.join(", ");
  return cylinder === undefined
    ? {
        code: "cylinder-missing",
        path,
        message: `"${row.id}" needs the cylinder at which it was done.`,
        hint: `Write one of ${names}.`,
      }
    : {
        code: "cylinder-unknown",
        path,
        message: `"${row.id}" cannot be done at cylinder ${cylinder} of this engine.`,
        hint: `Write one of ${names} where the engine has that part.`,
      };
}
