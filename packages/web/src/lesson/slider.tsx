// A number to be moved, under its name, with what it is now beside it.
import type { VNode } from "preact";
import { useId } from "preact/hooks";

interface SliderProps {
  readonly label: string;
  readonly range: readonly [low: number, high: number];
  readonly step: number;
  readonly value: number;
  /** The value in words. */
  readonly says: string;
  readonly onMove: (value: number) => void;
}

/** Moves in whole steps from the lower end, so that no dust of the arithmetic gathers. */
export function Slider({ label, range, step, value, says, onMove }: SliderProps): VNode {
  const id = useId();
  const [low, high] = range;
  return (
    <div class="lesson-slider">
      <label for={id}>{label}</label>
      <output for={id}>{says}</output>
      <input
        id={id}
        type="range"
        min={0}
        max={Math.round((high - low) / step)}
        value={Math.round((value - low) / step)}
        aria-valuetext={says}
        onInput={(event) => onMove(Math.min(high, low + step * Number(event.currentTarget.value)))}
      />
    </div>
  );
}
