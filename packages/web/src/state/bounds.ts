// Can a figure that was typed be meant? Between the bounds of its thing, in the unit of the person.
import type { FindingRow, Unit } from "@half-order/core";
import { FIGURE } from "../text/en-measured.ts";
import {
  fromUnit,
  parseFigure,
  QUANTITIES,
  type Quantity,
  sayFigure,
  toUnit,
  UNITS,
  type UnitChoice,
  units,
} from "./unit.ts";

/** What a figure may be, in the unit of documents. */
export interface Bounds {
  readonly within: readonly [lowest: number, highest: number];
  /** Left out for a figure that is measured in one unit everywhere, such as volts. */
  readonly quantity?: Quantity | undefined;
  /** The unit of documents. */
  readonly unit: string;
  /** What is common: shows how such a figure is written, and in which unit one was rather read. */
  readonly usual?: readonly [number, number] | undefined;
}

/** What can be read of a finding: the bounds to which the library holds an answer. */
export function boundsOf(reading: NonNullable<FindingRow["reading"]>): Bounds {
  const { unit, possible, otherwise } = reading;
  return {
    within: possible,
    quantity: QUANTITIES.find((each) => UNITS[each][0] === unit),
    unit,
    usual: otherwise,
  };
}

/** The smallest figure above nothing that a tool of this unit shows: what is finer was read in another unit. */
const FINEST: Readonly<Partial<Record<Unit, number>>> = { thou: 1 };

/** The unit in which this person types it. */
export function unitOf({ quantity, unit }: Bounds): Unit {
  return quantity ? units.value[quantity] : (unit as Unit);
}

/** The figure in the unit of documents; `undefined` for what is no number or cannot be meant. */
export function readFigure(text: string, bounds: Bounds, locale?: string): number | undefined {
  const figure = parseFigure(text, locale);
  if (figure === undefined) return undefined;
  const unit = unitOf(bounds);
  if (figure !== 0 && Math.abs(figure) < (FINEST[unit] ?? 0)) return undefined;
  const stored = bounds.quantity ? fromUnit(figure, bounds.quantity, unit) : figure;
  return isIn(bounds.within, stored) ? stored : undefined;
}

/** A figure as it is in a unit that is not the one that is set. */
export interface Elsewhere {
  readonly quantity: Quantity;
  readonly unit: UnitChoice[Quantity];
  /** In the unit of documents. */
  readonly stored: number;
}

/**
 * The one other unit in which a figure that was typed is a common one, or at least possible where nothing is known to be
 * common; `undefined` where it can be meant as it stands, and where no unit or several would do.
 */
export function readElsewhere(
  text: string,
  bounds: Bounds,
  locale?: string,
): Elsewhere | undefined {
  const figure = parseFigure(text, locale);
  const { quantity, within, usual } = bounds;
  if (figure === undefined || !quantity) return undefined;
  const meant = readFigure(text, bounds, locale);
  const common = usual ? twiceAsWide(usual) : within;
  if (meant !== undefined && (meant === 0 || !usual || isIn(common, meant))) return undefined;
  const others = UNITS[quantity].filter((unit) => unit !== units.value[quantity]);
  const fitting = others
    .map((unit) => ({ quantity, unit, stored: fromUnit(figure, quantity, unit) }))
    .filter(({ stored }) => isIn(common, stored) && isIn(within, stored));
  return fitting.length === 1 ? fitting[0] : undefined;
}

function isIn([lowest, highest]: readonly [number, number], stored: number): boolean {
  return stored >= lowest && stored <= highest;
}

/** What is worn or half dead may lie as far again beyond what is common. */
function twiceAsWide([low, high]: readonly [number, number]): readonly [number, number] {
  return [low * (low / high), high * (high / low)];
}

/** What to type instead, in the unit of the person. */
export function sayBounds(bounds: Bounds, locale?: string): string {
  const { quantity, within, usual } = bounds;
  const unit = unitOf(bounds);
  const own = (stored: number): number => (quantity ? toUnit(stored, quantity, unit) : stored);
  const [low, high] = within.map(own) as [number, number];
  // Both bounds are told so that they can be typed.
  const words = FIGURE.wrong(
    sayFigure(low, unit, locale, "ceil"),
    sayFigure(high, unit, locale, "floor"),
    unit,
  );
  const such = usual ? FIGURE.such(sayFigure(own((usual[0] + usual[1]) / 2), unit, locale)) : "";
  return `${words}${such}.${unit === "thou" ? ` ${FIGURE.thou}` : ""}`;
}
