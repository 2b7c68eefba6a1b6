// Which unit for what: kept on this device, for every case.
import type { VNode } from "preact";
import {
  areUnitsKept,
  chooseUnit,
  QUANTITIES,
  type Quantity,
  UNITS,
  units,
} from "../state/unit.ts";
import { UNIT } from "../text/en-record.ts";

export function UnitPanel(): VNode {
  return (
    <details class="unit-panel">
      <summary>{UNIT.title}</summary>
      <p class="help">{UNIT.help}</p>
      {QUANTITIES.map((quantity) => (
        <UnitRow key={quantity} quantity={quantity} />
      ))}
      {!areUnitsKept.value && (
        <p class="wrong" role="status">
          {UNIT.notKept}
        </p>
      )}
    </details>
  );
}

function UnitRow({ quantity }: { quantity: Quantity }): VNode {
  return (
    <fieldset class="targets">
      <legend>{UNIT.names[quantity]}</legend>
      {UNITS[quantity].map((unit) => (
        <button
          key={unit}
          type="button"
          class="target"
          aria-pressed={units.value[quantity] === unit}
          onClick={() => chooseUnit(quantity, unit)}
        >
          {unit}
        </button>
      ))}
    </fieldset>
  );
}
