// Was a figure rather read in another unit than the one that is set? Asked back at its field, with a way to take that
// unit, and one to leave the figure as it is where it can be.
import type { VNode } from "preact";
import { type Bounds, type Elsewhere, sayBounds } from "../state/bounds.ts";
import { chooseUnit, units } from "../state/unit.ts";
import { FIGURE, UNIT_NAMES } from "../text/en-measured.ts";

interface UnitAskedProps {
  readonly id: string;
  /** As it was typed. */
  readonly text: string;
  readonly bounds: Bounds;
  readonly of: Elsewhere;
  /** With the figure in the unit of documents; by then the other unit is the one that is set. */
  readonly onTake: (stored: number) => void;
  /** Left out where the figure cannot be meant in the unit that is set. */
  readonly onKeep?: (() => void) | undefined;
}

export function UnitAsked({ id, text, bounds, of, onTake, onKeep }: UnitAskedProps): VNode {
  const { quantity, unit, stored } = of;
  const set = units.value[quantity];
  const figure = (unit: string): string => `${text.trim()}\u00a0${unit}`;
  return (
    <div id={id} class="wrong options" role="alert">
      <p>{FIGURE.elsewhere(figure(unit), UNIT_NAMES[set])}</p>
      {!onKeep && <p>{sayBounds(bounds)}</p>}
      <button
        type="button"
        class="small"
        onClick={() => {
          chooseUnit(quantity, unit);
          onTake(stored);
        }}
      >
        {FIGURE.take(figure(unit), UNIT_NAMES[unit])}
      </button>
      {onKeep && (
        <button type="button" class="quiet" onClick={onKeep}>
          {FIGURE.keep(figure(set))}
        </button>
      )}
    </div>
  );
}
