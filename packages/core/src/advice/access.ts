// What must come off before a hand gets at a part of this engine; paid once, for everything behind it.
import type { Engine } from "../engine/engine.ts";
import { type Place, places } from "../engine/place.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { AccessRow } from "../knowledge/schema.ts";

export interface Opening {
  /** Stable for one engine: what comes off, and where. */
  readonly id: string;
  readonly say: string;
  /** Off and on again; 0 when it is off already. */
  readonly minutes: number;
}

/** Openings by number, as they are first asked for. */
export interface Openings {
  readonly all: readonly Opening[];
  /** Numbers of what must come off for a step at these cylinders (all of them for the whole engine). */
  readonly of: (access: readonly string[], cylinders: readonly number[]) => readonly number[];
}

export function openingsOf(
  engine: Engine,
  knowledge: Knowledge,
  open: readonly string[],
): Openings {
  const all: Opening[] = [];
  const numberOf = (opening: Opening): number => {
    const known = all.findIndex(({ id }) => id === opening.id);
    if (known >= 0) return known;
    all.push(open.includes(opening.id) ? { ...opening, minutes: 0 } : opening);
    return all.length - 1;
  };
  const of = (access: readonly string[], cylinders: readonly number[]): readonly number[] => {
    const rows = access.flatMap((id) => rowOf(knowledge, id, engine));
    const own = rows.flatMap((row) =>
      placesFor(engine, row, cylinders).map((place) =>
        numberOf({ id: `${row.id}@${place.id}`, say: row.say, minutes: row.minutes }),
      ),
    );
    const covers = rows.length === 0 ? [] : coversOver(engine, cylinders);
    return [...covers.map(numberOf), ...own];
  };
  return { all, of };
}

function rowOf(knowledge: Knowledge, id: string, engine: Engine): readonly AccessRow[] {
  const row = knowledge.access.find((each) => each.id === id);
  return row && (!row.suits || row.suits.includes(engine.ignition)) ? [row] : [];
}

/** Where something comes off so that all the cylinders are free. */
function placesFor(
  engine: Engine,
  { at }: AccessRow,
  cylinders: readonly number[],
): readonly Place[] {
  return places(engine, at).filter((place) => place.cylinders.some((c) => cylinders.includes(c)));
}

/** What the profile says lies over the cylinders. */
function coversOver({ profile, names }: Engine, cylinders: readonly number[]): readonly Opening[] {
  return (profile.covers ?? [])
    .filter((cover) =>
      cover.cylinders.some((name) => cylinders.some((c) => String(names[c]) === String(name))),
    )
    .map(({ name, minutes }) => ({ id: `cover@${name}`, say: `${name} off`, minutes }));
}
