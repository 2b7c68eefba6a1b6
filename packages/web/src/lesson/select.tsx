// A list to choose from, under its name.
import type { ComponentChildren, VNode } from "preact";
import { useId } from "preact/hooks";

interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly onPick: (value: string) => void;
  readonly children: ComponentChildren;
}

export function Select({ label, value, onPick, children }: SelectProps): VNode {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onPick(event.currentTarget.value)}>
        {children}
      </select>
    </div>
  );
}
