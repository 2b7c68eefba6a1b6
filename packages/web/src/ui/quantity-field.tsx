// A field for a measured figure in the person's own unit; what goes in and out is in the unit of documents.
import type { VNode } from "preact";
import { useId, useRef, useState } from "preact/hooks";
import { type Bounds, readElsewhere, readFigure, sayBounds } from "../state/bounds.ts";
import { type Quantity, sayFigure, toUnit, UNITS, units } from "../state/unit.ts";
import { UnitAsked } from "./unit-asked.tsx";

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
  /** What is common, where that is known. */
  readonly usual?: readonly [number, number] | undefined;
}

interface Typed {
  readonly text: string;
  readonly stored: number | undefined;
  readonly unit: string;
  readonly isWrong: boolean;
}

export function QuantityField(props: QuantityFieldProps): VNode {
  const { label, quantity, value, onChange, help, within, usual } = props;
  const unit = units.value[quantity];
  const bounds: Bounds = { within, quantity, unit: UNITS[quantity][0], usual };
  // What is typed stays as it is typed; anything that comes from outside takes its place.
  const [typed, setTyped] = useState<Typed>();
  const id = useId();
  const isCurrent = typed?.unit === unit && (typed.isWrong || typed.stored === value);
  const isWrong = isCurrent && typed.isWrong;
  const shown = value === undefined ? "" : sayFigure(toUnit(value, quantity, unit), unit);
  const elsewhere = isWrong ? readElsewhere(typed.text, bounds) : undefined;
  const type = (text: string, isMeant = false): void => {
    const stored = readFigure(text, bounds);
    const isClear = stored !== undefined && (isMeant || !readElsewhere(text, bounds));
    const isSound = isClear || text.trim() === "";
    setTyped({ text, stored, unit, isWrong: !isSound });
    if (isSound) onChange(stored);
  };
  const field = useRef<HTMLInputElement>(null);
  /** What was tapped is gone by then. */
  const goBack = (): void => field.current?.focus();
  return (
    <div class={isWrong ? "field is-wrong" : "field"}>
      <label for={id}>
        {label}, {unit}
        {help && <small>{help}</small>}
      </label>
      <input
        id={id}
        ref={field}
        inputMode={within[0] < 0 ? "text" : "decimal"}
        autocomplete="off"
        value={isCurrent ? typed.text : shown}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? `${id}-wrong` : undefined}
        onInput={(event) => type(event.currentTarget.value)}
      />
      {isWrong && !elsewhere && (
        <p id={`${id}-wrong`} class="wrong" role="alert">
          {sayBounds(bounds)}
        </p>
      )}
      {elsewhere && (
        <UnitAsked
          id={`${id}-wrong`}
          text={typed?.text ?? ""}
          bounds={bounds}
          of={elsewhere}
          onTake={(stored) => {
            setTyped(undefined);
            onChange(stored);
            goBack();
          }}
          onKeep={
            typed && readFigure(typed.text, bounds) !== undefined
              ? () => {
                  type(typed.text, true);
                  goBack();
                }
              : undefined
          }
        />
      )}
    </div>
  );
}
