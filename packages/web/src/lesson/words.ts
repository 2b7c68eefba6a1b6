// What physics says of a broken engine, in words.
import { type Engine, MISFIRE_CODES } from "@half-order/core";
import {
  type BrokenFigure,
  SOUND_LOSS,
  type WatchedRegime,
  type WatchedShake,
} from "@half-order/core/physics";
import { sayQuantity } from "../state/unit.ts";
import { list } from "../text/en.ts";
import { LESSON } from "../text/en-lesson.ts";
import { namesOf, type Spot } from "./spot.ts";

/** A share as so many of a hundred. */
export function hundredth(share: number): number {
  return Math.round(share * 100);
}

export function saySpot(engine: Engine, { kind, cylinders }: Spot): string {
  return LESSON.spots[kind](list(namesOf(engine, cylinders)));
}

/** "Cylinder 3: the boot lets go from 9.3 kV on, wet from 41 % of that." */
export function sayBroken(
  engine: Engine,
  { figure, value, cylinders, wetShare }: BrokenFigure,
): string {
  const says =
    LESSON.figures[figure](value, sayQuantity(value * 1000, "gap")) +
    (wetShare === undefined || wetShare >= 1 ? "" : LESSON.wet(wetShare));
  return cylinders.length === 0
    ? LESSON.ofAll(says)
    : LESSON.ofCylinders(list(namesOf(engine, cylinders)), cylinders.length, says);
}

/** Who misses in a way of driving. */
export function sayMisses(engine: Engine, { regime, share }: WatchedRegime): string {
  const who = share
    .map((each, c) => ({ name: String(engine.names[c]), each }))
    .filter(({ each }) => each > SOUND_LOSS)
    .map(({ name, each }) => LESSON.one(name, hundredth(each)));
  return LESSON.missing(LESSON.regimes[regime], who.length > 0 ? list(who) : LESSON.none);
}

/** Whether those who miss have a spark. */
export function saySparks(engine: Engine, { share, dark }: WatchedRegime): readonly string[] {
  const missing = [...share.keys()].filter((c) => (share[c] ?? 0) > SOUND_LOSS);
  const isDark = (c: number): boolean => (dark[c] ?? 0) > (share[c] ?? 0) / 2;
  const without = missing.filter(isDark);
  const lit = missing.filter((c) => !isDark(c));
  return [
    ...(without.length > 0 ? [LESSON.dark(list(namesOf(engine, without)))] : []),
    ...(lit.length > 0 ? [LESSON.lit(list(namesOf(engine, lit)))] : []),
  ];
}

/** What a code stands for on this engine; cylinders and coils as the control unit counts them. */
export function sayCode(engine: Engine, code: string): string {
  const number = Number(code.slice(1));
  const name = (index: number): string | undefined => namesOf(engine, [index])[0];
  const { code: words } = LESSON;
  if (code === MISFIRE_CODES.several) return words.several;
  if (number > 300 && number <= 312) return words.misfire(name(number - 301) ?? "");
  if (number >= 351 && number <= 362)
    return words.coil(list(namesOf(engine, engine.groups[number - 351] ?? [])));
  if (number >= 201 && number <= 212) return words.injector(name(number - 201) ?? "");
  if (number === 335) return words.crank;
  return number === 171 ? words.lean : words.rich;
}

/** Halves of a turn count as cancelled below this part of what comes once a turn. */
const CANCELLED = 0.1;

/** In what rhythm it shakes, and why, where that can be said in a sentence; `undefined` when nobody misses. */
export function sayBeat({ missing, rhythm }: WatchedShake): string | undefined {
  const { shakes, orders } = rhythm;
  if (shakes === undefined) return undefined;
  if (shakes === 0.5 && missing.length === 1) return LESSON.beat.half;
  const swing = (order: number): number => orders.find((each) => each.order === order)?.rpm ?? 0;
  if (shakes === 1 && swing(0.5) < CANCELLED * swing(1)) return LESSON.beat.whole;
  return LESSON.beat.mixed(LESSON.times(shakes));
}
