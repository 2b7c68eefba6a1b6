// A check or a repair of the catalogue as a step of a visit: at a place of the engine, with what must come off
// for it and its minutes. What it is worth nobody has asked.
import { openingsOf } from "../advice/access.ts";
import type { NextCheck, NextRepair } from "../advice/advice.ts";
import { priceOf } from "../advice/at-hand.ts";
import { nameAt } from "../engine/cylinder-name.ts";
import type { Engine } from "../engine/engine.ts";
import type { Place } from "../engine/place.ts";
import type { CylinderName } from "../engine/profile.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import type { CheckRow, RepairRow } from "../knowledge/schema.ts";
import { putBackAfter } from "../service/put-back.ts";
import type { Visit } from "./simulated-visit.ts";

/** A check at cylinders by index; none for a check of the whole engine. */
export function checkStep(
  { engine, open }: Visit,
  row: CheckRow,
  cylinders: readonly number[],
): NextCheck {
  const reached = cylinders.length > 0 ? cylinders : engine.names.map((_, c) => c);
  return {
    kind: "check",
    check: row.id,
    name: row.name,
    cylinders: namesOf(engine, cylinders),
    ...work(engine, open, row, reached),
    worthMinutes: 0,
    tellsBits: 0,
    cautions: row.cautions,
    putBack: putBackAfter(engine.profile, row),
    outcomes: [],
  };
}

/** A repair at its place; a place that is the whole engine has no cylinders. */
export function repairStep({ engine, open, atHand }: Visit, row: RepairRow, at: Place): NextRepair {
  const isWhole = at.kind === "engine" || at.kind === "set";
  return {
    kind: "repair",
    repair: row.id,
    name: nameAt(row.name, namesOf(engine, at.cylinders), engine.names.length),
    cylinders: isWhole ? [] : namesOf(engine, at.cylinders),
    ...work(engine, open, row, at.cylinders),
    partsPrice: priceOf(row.parts, atHand),
    cures: 0,
    cautions: row.cautions,
  };
}

function work(
  engine: Engine,
  open: readonly string[],
  row: CheckRow | RepairRow,
  cylinders: readonly number[],
): Pick<NextCheck, "opens" | "minutes"> {
  const openings = openingsOf(engine, KNOWLEDGE, open);
  const opens = openings
    .of(row.access ?? [], cylinders)
    .flatMap((number) => openings.all[number] ?? []);
  return { opens, minutes: opens.reduce((sum, { minutes }) => sum + minutes, row.minutes) };
}

export function namesOf(engine: Engine, cylinders: readonly number[]): readonly CylinderName[] {
  return cylinders.map((c) => engine.names[c] as CylinderName);
}
