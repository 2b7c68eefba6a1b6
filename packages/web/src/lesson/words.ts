// What physics says of a broken engine, in words.
import { type Engine, MISFIRE_CODES } from "@half-order/core";
import type { BrokenFigure, Watched, WatchedRegime, WatchedShake } from "@half-order/core/physics";
import { sayQuantity, units } from "../state/unit.ts";
import { list } from "../text/en.ts";
import { LESSON } from "../text/en-lesson.ts";
import { namesOf, type Spot } from "./spot.ts";

/** A share as so many of a hundred. */
export function hundredth(share: number): number {
  return Math.round(share * 100);
}

/** The bore or stroke of a cylinder, m, in the unit that goes with that of a gap. */
export function saySize(metres: number): string {
  return units.value.gap === "thou"
    ? `${(metres / 0.0254).toFixed(2)}\u00a0in`
    : `${Math.round(metres * 1000)}\u00a0mm`;
}

/** Only a distributor has a rotor, and all its cylinders share it. */
export function sayKind({ ignition }: Engine, kind: Spot["kind"]): string {
  return kind === "engine" && ignition === "distributor"
    ? LESSON.groupWithRotor
    : LESSON.groups[kind];
}

export function saySpot(engine: Engine, { kind, cylinders }: Spot): string {
  if (kind === "engine" && engine.ignition === "distributor") return LESSON.spotWithRotor;
  return LESSON.spots[kind](list(namesOf(engine, cylinders)));
}

/** "Cylinder 3: the boot lets go from 9.3 kV on, wet from 41 % of that." */
export function sayBroken(
  engine: Engine,
  { figure, value, cylinders, wetShare }: BrokenFigure,
): string {
  const length = (metres: number): string => sayQuantity(metres * 1000, "gap");
  const says =
    LESSON.figures[figure](value, length) +
    (wetShare === undefined || wetShare >= 1 ? "" : LESSON.wet(wetShare));
  return cylinders.length === 0
    ? LESSON.ofAll(says)
    : LESSON.ofCylinders(list(namesOf(engine, cylinders)), cylinders.length, says);
}

/** What the next break draws anew; how that upsets the order of gaps is told where a gap is broken. */
export function sayAgain(broken: readonly BrokenFigure[]): string {
  const isGap = broken.some(({ figure }) => figure === "plug.gapM");
  return isGap ? `${LESSON.againHelp} ${LESSON.againGap}` : LESSON.againHelp;
}

/** Who misses in a way of driving, by the break and not as any engine does. */
export function sayMisses(engine: Engine, { regime, share, struck }: WatchedRegime): string {
  const who = list(sayEach(engine, share, struck));
  return LESSON.missing(LESSON.regimes[regime], struck.length > 0 ? who : LESSON.none);
}

function sayEach(
  engine: Engine,
  share: readonly number[],
  cylinders: readonly number[],
): readonly string[] {
  const shares = new Set(cylinders.map((c) => hundredth(share[c] ?? 0)));
  const [alike] = shares;
  if (alike !== undefined && shares.size === 1 && cylinders.length > 2)
    return [LESSON.allAlike(list(namesOf(engine, cylinders)), alike)];
  return cylinders.map((c) => LESSON.one(String(engine.names[c]), hundredth(share[c] ?? 0)));
}

/** Whether those whom the break makes miss have a spark. */
export function saySparks(
  engine: Engine,
  { share, dark, struck }: WatchedRegime,
): readonly string[] {
  const isDark = (c: number): boolean => (dark[c] ?? 0) > (share[c] ?? 0) / 2;
  const without = struck.filter(isDark);
  const lit = struck.filter((c) => !isDark(c));
  return [
    ...(without.length > 0 ? [LESSON.dark(list(namesOf(engine, without)))] : []),
    ...(lit.length > 0 ? [LESSON.lit(list(namesOf(engine, lit)))] : []),
  ];
}

/** Why the codes do not name all who miss, or name others than the broken one. */
export function sayUnnamed(engine: Engine, { regimes }: Watched): readonly string[] {
  const names = (cylinders: readonly number[]): string => list(namesOf(engine, cylinders));
  const struckIn = (isCounted: boolean): readonly number[] => [
    ...new Set(regimes.filter((each) => each.isCounted === isCounted).flatMap((r) => r.struck)),
  ];
  const counted = struckIn(true);
  const atStart = struckIn(false).filter((c) => !counted.includes(c));
  const [least] = [...regimes].sort((a, b) => a.trim - b.trim);
  const { lambda = [], struck = [], trim = 0 } = least ?? {};
  const rich = [...lambda.keys()].filter((c) => (lambda[c] ?? 1) < 1 - OFF);
  const lean = struck.filter((c) => (lambda[c] ?? 1) > 1 + OFF);
  const isByTrim = trim < -OFF && rich.length > 0 && lean.length > 0;
  return [
    ...(atStart.length > 0 ? [LESSON.atStartOnly(names(atStart), atStart.length)] : []),
    ...(isByTrim
      ? [LESSON.leanByTrim(names(rich), rich.length, hundredth(-trim), names(lean), lean.length)]
      : []),
  ];
}

/** From this deviation on a mixture, or a trim, is told as off. */
const OFF = 0.1;

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

/** Whether who misses does so always or by chance, and what of that is drawn; `undefined` when nobody does. */
export function sayDrawn(engine: Engine, now: WatchedRegime): string | undefined {
  const { shake, share, struck } = now;
  const { missing, isSteady } = shake;
  if (struck.length === 0) return undefined;
  if (missing.length === 0) return LESSON.trace.together(list(sayEach(engine, share, struck)));
  const who = list(namesOf(engine, missing));
  if (missing.length === engine.names.length) return LESSON.trace.nobody;
  if (!isSteady) {
    const each = list(sayEach(engine, share, struck));
    return LESSON.trace.byChance(each, who, missing.length);
  }
  const isNever = missing.every((c) => hundredth(share[c] ?? 0) === 100);
  const always = isNever
    ? LESSON.trace.never(who, missing.length)
    : LESSON.trace.steady(list(sayEach(engine, share, missing)));
  const rest = struck.filter((c) => !missing.includes(c));
  if (rest.length === 0) return always;
  return `${always} ${LESSON.trace.besides(list(sayEach(engine, share, rest)))}`;
}

/** Halves of a turn count as cancelled below this part of what comes once a turn. */
const CANCELLED = 0.1;

/** In what rhythm it shakes, and why, where that can be said in a sentence; `undefined` where nobody always misses, or all. */
export function sayBeat({ missing, isSteady, rhythm }: WatchedShake): string | undefined {
  const { shakes, orders, strokes } = rhythm;
  if (shakes === undefined || !isSteady || missing.length === strokes.length) return undefined;
  if (shakes === 0.5 && missing.length === 1) return LESSON.beat.half;
  const swing = (order: number): number => orders.find((each) => each.order === order)?.rpm ?? 0;
  if (shakes === 1 && swing(0.5) < CANCELLED * swing(1)) return LESSON.beat.whole;
  return LESSON.beat.mixed(LESSON.times(shakes));
}
