// A field that narrows a list, and what it finds, said to who does not see the list.
import type { VNode } from "preact";

interface SearchFieldProps {
  readonly label: string;
  readonly typed: string;
  readonly onType: (typed: string) => void;
  /** How much was found; empty while nothing is looked for. */
  readonly says: string;
}

export function SearchField({ label, typed, onType, says }: SearchFieldProps): VNode {
  return (
    <>
      <div class="field">
        <label>
          {label}
          <input
            type="search"
            autocomplete="off"
            value={typed}
            onInput={(event) => onType(event.currentTarget.value)}
          />
        </label>
      </div>
      <p class="fine" role="status">
        {says}
      </p>
    </>
  );
}
