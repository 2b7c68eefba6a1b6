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
  units,
} from "./unit.ts";

/** What a figure may be, in the unit of documents. */
export interface Bounds {
  readonly within: readonly [lowest: number, highest: number];
  /** Left out for a figure that is measured in one unit everywhere, such as volts. */
  readonly quantity?: Quantity | undefined;
  /** The unit of documents. */
  readonly unit: string;
  /** A figure that is usual, to show how one is written. */
  readonly usual?: number | undefined;
}

/** What can be read of a finding: the bounds to which the library holds an answer. */
export function boundsOf(reading: NonNullable<FindingRow["reading"]>): Bounds {
  const { unit, possible, otherwise } = reading;
  return {
    within: possible,
    quantity: QUANTITIES.find((each) => UNITS[each][0] === unit),
    unit,
    usual: otherwise && (otherwise[0] + otherwise[1]) / 2,
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
  const [lowest, highest] = bounds.within;
  return stored >= lowest && stored <= highest ? stored : undefined;
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
  const such = usual === undefined ? "" : FIGURE.such(sayFigure(own(usual), unit, locale));
  return `${words}${such}.${unit === "thou" ? ` ${FIGURE.thou}` : ""}`;
}
