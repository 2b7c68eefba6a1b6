// The dial as a question: which cylinders? Each is a toggle button at the angle at which it fires.
import type { Engine } from "@half-order/core";
import type { VNode } from "preact";
import {
  DIAL_BOX,
  DIAL_HALF,
  discRadius,
  legLine,
  PITCH_ASKED,
  pointAt,
  RADIUS,
  seats,
} from "./geometry.ts";
import { nameOf } from "./mark.tsx";

interface DialInputProps {
  readonly engine: Engine;
  /** Says what the group of buttons asks. */
  readonly label: string;
  readonly pressed: ReadonlySet<number>;
  readonly onToggle: (cylinder: number) => void;
  /** What a button says to someone who does not see the dial. */
  readonly sayCylinder: (name: string) => string;
  /** Cylinders that cannot be asked for. */
  readonly isOff?: (cylinder: number) => boolean;
}

/** In the order of counting, so that the keyboard walks 1, 2, 3 and not the firing order. */
export function DialInput(props: DialInputProps): VNode {
  const { engine, label, pressed, onToggle, sayCylinder, isOff } = props;
  const places = seats(engine.angles, PITCH_ASKED);
  const percent = (value: number): string => `${((value + DIAL_HALF) / (2 * DIAL_HALF)) * 100}%`;
  return (
    <fieldset class="dial-input">
      <legend class="vh">{label}</legend>
      <svg class="dial" viewBox={DIAL_BOX} aria-hidden="true">
        <circle class="pitch" r={PITCH_ASKED} />
        <circle class="hub" r={RADIUS.hub} />
        {places.map((seat, c) => {
          const [from, to] = legLine(engine, c, seat, discRadius(places));
          const hub = pointAt(seat.angle, RADIUS.hub);
          const start = engine.ignition === "hybrid" ? hub : from;
          return (
            <line
              key={engine.names[c]}
              class={pressed.has(c) ? "spoke is-pressed" : "spoke"}
              {...{ x1: start.x, y1: start.y, x2: to.x, y2: to.y }}
            />
          );
        })}
      </svg>
      {places.map(({ at }, c) => (
        <button
          key={engine.names[c]}
          type="button"
          class="cylinder"
          aria-pressed={pressed.has(c)}
          aria-label={sayCylinder(String(nameOf(engine, c)))}
          disabled={isOff?.(c) ?? false}
          style={{ left: percent(at.x), top: percent(at.y) }}
          onClick={() => onToggle(c)}
        >
          {nameOf(engine, c)}
        </button>
      ))}
    </fieldset>
  );
}
