// The figures of the service manual that wear is held to; they belong to the engine and are kept with it.
import type { EngineProfile, Figures } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { changeEngine } from "../state/case.ts";
import { MANUAL } from "../text/en-record.ts";
import { QuantityField } from "../ui/quantity-field.tsx";
import { usualGap } from "./usual-gap.ts";

type Field = "serviceKm" | "serviceMonths" | "plugGapMm";

export function Manual({ profile }: { profile: EngineProfile }): VNode {
  const { figures = {} } = profile;
  const { serviceKm, serviceMonths, plugGapMm } = figures;
  const set = <F extends Field>(field: F, value: Figures[F] | undefined): void => {
    const { [field]: _, ...rest } = figures;
    const next: Figures = value === undefined ? rest : { ...rest, [field]: value };
    changeEngine({ ...profile, figures: next });
  };
  // As it was when it was come upon: what is filled in meanwhile does not fold it away under the hand.
  const [isOpen] = useState(!(plugGapMm && (serviceKm ?? serviceMonths) !== undefined));
  return (
    <details class="manual" open={isOpen}>
      <summary>{MANUAL.title}</summary>
      <p class="help">{MANUAL.help}</p>
      <GapRange range={plugGapMm} onChange={(range) => set("plugGapMm", range)} />
      <div class="pair-of-fields">
        <QuantityField
          label={MANUAL.every}
          quantity="distance"
          value={serviceKm}
          onChange={(value) => set("serviceKm", value)}
          within={[1, 1_000_000]}
        />
        <div class="field">
          <label>
            {MANUAL.months}
            <input
              type="number"
              inputMode="numeric"
              min="1"
              max="600"
              step="1"
              value={serviceMonths ?? ""}
              onChange={(event) => {
                const months = event.currentTarget.valueAsNumber;
                const isSound = Number.isInteger(months) && months > 0;
                set("serviceMonths", isSound ? months : undefined);
              }}
            />
          </label>
        </div>
      </div>
    </details>
  );
}

interface GapRangeProps {
  readonly range: Figures["plugGapMm"];
  readonly onChange: (range: Figures["plugGapMm"]) => void;
}

/** Two figures that count only together. */
function GapRange({ range, onChange }: GapRangeProps): VNode {
  const [from, setFrom] = useState(range?.[0]);
  const [to, setTo] = useState(range?.[1]);
  const commit = (low: number | undefined, high: number | undefined): void => {
    setFrom(low);
    setTo(high);
    if (low !== undefined && high !== undefined && low <= high) onChange([low, high]);
    if (low === undefined && high === undefined) onChange(undefined);
  };
  return (
    <div class="pair-of-fields">
      <QuantityField
        label={MANUAL.gapFrom}
        quantity="gap"
        value={from}
        onChange={(value) => commit(value, to)}
        within={[0.1, 5]}
        usual={usualGap()}
      />
      <QuantityField
        label={MANUAL.gapTo}
        quantity="gap"
        value={to}
        onChange={(value) => commit(from, value)}
        within={[0.1, 5]}
        usual={usualGap()}
      />
      {from !== undefined && to !== undefined && from > to && (
        <p class="wrong" role="alert">
          {MANUAL.gapOrder}
        </p>
      )}
    </div>
  );
}
