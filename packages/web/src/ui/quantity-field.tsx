// A field for a measured figure in the person's own unit; what goes in and out is in the unit of documents.
import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { type Bounds, readFigure, sayBounds } from "../state/bounds.ts";
import { type Quantity, sayFigure, toUnit, UNITS, units } from "../state/unit.ts";

interface QuantityFieldProps {
  readonly label: string;
  readonly quantity: Quantity;
  /** mm, N·m, km, kPa or °C. */
  readonly value: number | undefined;
  /** `undefined` when the field was emptied; not called while what is typed is no number. */
  readonly onChange: (value: number | undefined) => void;
  readonly help?: string | undefined;
  /** Lowest and highest value that can be meant, in the unit of documents. */
  readonly within: readonly [number, number];
}

interface Typed {
  readonly text: string;
  readonly stored: number | undefined;
  readonly unit: string;
  readonly isWrong: boolean;
}

export function QuantityField(props: QuantityFieldProps): VNode {
  const { label, quantity, value, onChange, help, within } = props;
  const unit = units.value[quantity];
  const bounds: Bounds = { within, quantity, unit: UNITS[quantity][0] };
  // What is typed stays as it is typed; anything that comes from outside takes its place.
  const [typed, setTyped] = useState<Typed>();
  const id = useId();
  const isCurrent = typed?.unit === unit && (typed.isWrong || typed.stored === value);
  const isWrong = isCurrent && typed.isWrong;
  const shown = value === undefined ? "" : sayFigure(toUnit(value, quantity, unit), unit);
  const type = (text: string): void => {
    const stored = readFigure(text, bounds);
    const isSound = stored !== undefined || text.trim() === "";
    setTyped({ text, stored, unit, isWrong: !isSound });
    if (isSound) onChange(stored);
  };
  return (
    <div class={isWrong ? "field is-wrong" : "field"}>
      <label for={id}>
        {label}, {unit}
        {help && <small>{help}</small>}
      </label>
      <input
        id={id}
        inputMode={within[0] < 0 ? "text" : "decimal"}
        autocomplete="off"
        value={isCurrent ? typed.text : shown}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? `${id}-wrong` : undefined}
        onInput={(event) => type(event.currentTarget.value)}
      />
      {isWrong && (
        <p id={`${id}-wrong`} class="wrong" role="alert">
          {sayBounds(bounds)}
        </p>
      )}
    </div>
  );
}
