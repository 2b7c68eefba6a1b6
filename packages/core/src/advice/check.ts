// Where each check could be made on this engine, and what it would show in every state.
import { answeredOf, questionKey } from "../compile/answered.ts";
import { fits } from "../compile/fits.ts";
import type { Engine } from "../engine/engine.ts";
import type { CylinderName } from "../engine/profile.ts";
import { servedBy } from "../engine/served-by.ts";
import type { Finding } from "../knowledge/answer.ts";
import { EXCHANGE, exchangesFirst, isExchange } from "../knowledge/exchange.ts";
import type { CheckRow, FindingRow } from "../knowledge/schema.ts";
import { randomSet } from "../model/diagnosis-model.ts";
import { type Look, type Outcome, outcomesOf } from "./look.ts";
import type { Prospect } from "./outlook.ts";

/** A check at some cylinders, with all that it may show. */
export interface CheckHere {
  readonly row: CheckRow;
  /** Empty for a check of the whole engine. */
  readonly cylinders: readonly number[];
  readonly outcomes: readonly Outcome[];
  readonly tellsBits: number;
}

/** Places at which one check is weighed; where it looks at the whole engine as well, it is made once. */
const PLACES_WEIGHED = 2;
/** Outcomes of a check that are told apart; the rest count as "anything else". */
const OUTCOMES_TOLD = 14;
/** Combinations of answers that are worked out at most. */
const MOST_COMBINED = 64;

/** All checks that suit the engine and would answer something not answered yet. */
export function checksHere(
  prospect: Prospect,
  findings: readonly Finding[],
  putOff: readonly string[],
): readonly CheckLooks[] {
  const [first] = prospect.outlooks;
  if (!first) return [];
  const { engine } = first;
  const suspects = suspectsOf(prospect);
  const misses = missesOf(prospect);
  const isMissing = (c: number): boolean => (misses[c] as number) > EXCHANGE.leastMisses;
  const rowOf = (id: string): FindingRow | undefined => prospect.knowledge.findings.get(id);
  const known = new Set(
    answeredOf(engine, findings, prospect.knowledge).map(({ row, cylinder }) =>
      questionKey(engine, row, cylinder),
    ),
  );
  const outcomesOnce = remembered(prospect);
  return prospect.knowledge.checks.flatMap((row) => {
    if (putOff.includes(row.id)) return [];
    if (!fits(engine, row)) return [];
    const asked = row.yields
      .flatMap((id) => rowOf(id) ?? [])
      .filter((finding) => fits(engine, finding));
    const at = exchangesFirst(row, rowOf) ? suspects.filter(isMissing) : suspects;
    const places = row.everyCylinder ? [at] : placesOf(engine, asked, at);
    const here = places.flatMap((cylinders): readonly CheckLooks[] => {
      const looks = looksAt(engine, asked, cylinders).filter(
        (look) => !known.has(look.key) && (!isExchange(look.row) || isAt(engine, look, isMissing)),
      );
      return looks.length === 0 ? [] : [{ row, cylinders, looks: looks.map(outcomesOnce) }];
    });
    return here.filter((each, i) => !here.slice(0, i).some((before) => tellsAlike(before, each)));
  });
}

/** Whether one of the cylinders that a look is about is such. */
function isAt(engine: Engine, { row, cylinder }: Look, isSuch: (c: number) => boolean): boolean {
  return servedBy(engine, row.scope, cylinder).some(isSuch);
}

/** One place is as good as another: a connector that feeds all, or two coils of which nothing is known. */
function tellsAlike({ looks: a }: CheckLooks, { looks: b }: CheckLooks): boolean {
  return (
    a.length === b.length &&
    a.every(({ tellsBits }, i) => Math.abs(tellsBits - (b[i] as LookHere).tellsBits) < ALIKE_BITS)
  );
}

const ALIKE_BITS = 1e-9;

/** A check by its looks, before they are taken together. */
export interface CheckLooks {
  readonly row: CheckRow;
  readonly cylinders: readonly number[];
  readonly looks: readonly LookHere[];
}

interface LookHere {
  readonly look: Look;
  readonly outcomes: readonly Outcome[];
  readonly tellsBits: number;
}

/** At most what a check tells: its looks may tell the same. */
export function mostBits({ looks }: CheckLooks): number {
  return looks.reduce((sum, { tellsBits }) => sum + tellsBits, 0);
}

/** All looks of a check taken together, the most telling ones first. */
export function together(prospect: Prospect, { row, cylinders, looks }: CheckLooks): CheckHere {
  const sorted = [...looks].sort((a, b) => b.tellsBits - a.tellsBits);
  const outcomes = fewest(prospect, joined(prospect, sorted));
  return { row, cylinders, outcomes, tellsBits: bitsOf(prospect.chance, outcomes) };
}

/** Several checks look at the same things: each look is worked out once. */
function remembered(prospect: Prospect): (asked: AskedLook) => LookHere {
  const known = new Map<string, LookHere>();
  return ({ key, ...look }) => {
    const before = known.get(key);
    if (before) return before;
    const outcomes = outcomesOf(prospect, look);
    const here = { look, outcomes, tellsBits: bitsOf(prospect.chance, outcomes) };
    known.set(key, here);
    return here;
  };
}

/** By cylinder: the chance that it misses steadily. */
function missesOf({ outlooks, chance }: Prospect): Float64Array {
  const cylinders = outlooks[0]?.engine.names.length ?? 0;
  const misses = new Float64Array(cylinders);
  for (const { states, start } of outlooks) {
    states.forEach(({ set }, i) => {
      for (let c = 0; c < cylinders; c++) {
        if (!isInSet(set, c, cylinders)) continue;
        misses[c] = (misses[c] as number) + (chance[start + i] as number);
      }
    });
  }
  return misses;
}

/** Strokes lost at random single out no cylinder. */
function isInSet(set: number, c: number, cylinders: number): boolean {
  return set < randomSet(cylinders) && ((set >> c) & 1) === 1;
}

/** Cylinders, the most suspected first: a fault sits there, or they miss. */
function suspectsOf({ outlooks, chance }: Prospect): readonly number[] {
  const cylinders = outlooks[0]?.engine.names.length ?? 0;
  const mass = new Float64Array(cylinders);
  for (const { instances, states, start } of outlooks) {
    states.forEach(({ faults, set }, i) => {
      const at = faults.flatMap((fault) => instances[fault]?.place.cylinders ?? []);
      for (let c = 0; c < cylinders; c++) {
        // A fault of the whole engine singles out no cylinder.
        const isThere = at.length < cylinders && at.includes(c);
        if (isThere || isInSet(set, c, cylinders))
          mass[c] = (mass[c] as number) + (chance[start + i] as number);
      }
    });
  }
  return [...mass.keys()].sort((a, b) => (mass[b] as number) - (mass[a] as number));
}

/**
 * Where a check is made: nowhere in particular, or at the most suspected cylinders, each with those of them that
 * share its coil, since one is judged by its companion. `suspects`: the most suspected first.
 */
function placesOf(
  engine: Engine,
  asked: readonly FindingRow[],
  suspects: readonly number[],
): readonly (readonly number[])[] {
  if (asked.every(({ scope }) => scope === "engine")) return [[]];
  const most = asked.some(({ scope }) => scope === "engine") ? 1 : PLACES_WEIGHED;
  const found = new Map<string, readonly number[]>();
  for (const suspect of suspects) {
    const coil = engine.groups[engine.groupOf[suspect] ?? 0] ?? [];
    const mates =
      engine.groups.length > 1 ? coil.filter((c) => c !== suspect && suspects.includes(c)) : [];
    const cylinders = [suspect, ...mates];
    const key = [...cylinders].sort((a, b) => a - b).join(" ");
    if (!found.has(key)) found.set(key, cylinders);
    if (found.size === most) break;
  }
  return [...found.values()];
}

interface AskedLook extends Look {
  /** Looks with one key are about the same thing. */
  readonly key: string;
}

/** Every question of a check at some cylinders; one coil or connector is asked about once. */
function looksAt(
  engine: Engine,
  asked: readonly FindingRow[],
  cylinders: readonly number[],
): readonly AskedLook[] {
  const looks = asked.flatMap((row): readonly AskedLook[] => {
    if (row.scope === "engine") return [{ row, key: questionKey(engine, row, undefined) }];
    return cylinders.map((cylinder) => ({
      row,
      cylinder: engine.names[cylinder] as CylinderName,
      key: questionKey(engine, row, cylinder),
    }));
  });
  return looks.filter(({ key }, i) => looks.findIndex((each) => each.key === key) === i);
}

/** Outcomes of several looks at once: given a state they are independent, but for what hides from all of them. */
function joined(prospect: Prospect, looks: readonly LookHere[]): readonly Outcome[] {
  return looks.reduce((sofar: readonly Outcome[], { look, outcomes }) => {
    if (sofar.length === 0) return outcomes;
    if (sofar.length * outcomes.length > MOST_COMBINED) return sofar;
    return sofar.flatMap((a) => {
      const same = a.answers.filter(({ finding }) => look.row.made && finding === look.row.id);
      const next = same.length > 0 ? outcomesOf(prospect, look, same) : outcomes;
      return next.map((b) => both(a, b));
    });
  }, []);
}

function both(a: Outcome, b: Outcome): Outcome {
  const chance = new Float64Array(a.chance.length);
  for (let s = 0; s < chance.length; s++) {
    chance[s] = (a.chance[s] as number) * (b.chance[s] as number);
  }
  return { answers: [...a.answers, ...b.answers], chance };
}

/** The likeliest outcomes; the others become one. */
function fewest({ chance }: Prospect, outcomes: readonly Outcome[]): readonly Outcome[] {
  if (outcomes.length <= OUTCOMES_TOLD) return outcomes;
  const sorted = [...outcomes]
    .map((outcome) => ({ outcome, probability: dot(chance, outcome.chance) }))
    .sort((a, b) => b.probability - a.probability)
    .map(({ outcome }) => outcome);
  const rest = new Float64Array(chance.length);
  for (const outcome of sorted.slice(OUTCOMES_TOLD)) {
    outcome.chance.forEach((value, s) => {
      rest[s] = (rest[s] as number) + value;
    });
  }
  return [...sorted.slice(0, OUTCOMES_TOLD), { answers: [], chance: rest }];
}

/** What the outcome tells of the state: mutual information, bits. */
function bitsOf(chance: Float64Array, outcomes: readonly Outcome[]): number {
  let bits = 0;
  for (const outcome of outcomes) {
    const all = dot(chance, outcome.chance);
    if (all <= 0) continue;
    for (let s = 0; s < chance.length; s++) {
      const given = outcome.chance[s] as number;
      if (given > 0) bits += (chance[s] as number) * given * Math.log2(given / all);
    }
  }
  return Math.max(0, bits);
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
