// The plug in hand: its gap, its look, what went in instead of it, its photo.
import type { CylinderName, Engine } from "@half-order/core";
import type { VNode } from "preact";
import { useRef, useState } from "preact/hooks";
import { inOrder, PlugLooks } from "../diagram/plug-picker.tsx";
import { sayQuantity } from "../state/unit.ts";
import { RECORD } from "../text/en-record.ts";
import { QuantityField } from "../ui/quantity-field.tsx";
import { type Draft, type Edit, plugOf, setField, withPlug, withSameForAll } from "./draft.ts";
import { asLook } from "./look.ts";
import { usualGap } from "./usual-gap.ts";

interface PlugFormProps {
  readonly engine: Engine;
  readonly draft: Draft;
  readonly inHand: CylinderName;
  readonly onChange: (edit: Edit) => void;
  /** False where the plug in hand is not done with. */
  readonly onTake: (cylinder: CylinderName) => boolean;
  /** Stands between the fields and the looks, e.g. a photo. */
  readonly children: VNode;
}

export function PlugForm(props: PlugFormProps): VNode {
  const { engine, draft, inHand, onChange, onTake, children } = props;
  const [isSpread, setSpread] = useState(false);
  const plug = plugOf(draft, inHand);
  const order = inOrder(engine);
  const next = order[order.indexOf(inHand) + 1];
  const heading = useRef<HTMLHeadingElement>(null);
  const set = <K extends "gapMm" | "look" | "torqueNm" | "part">(
    field: K,
    value: (typeof plug)[K],
  ): void => {
    setSpread(false);
    onChange((all) => withPlug(all, setField(plugOf(all, inHand), field, value)));
  };
  return (
    <section class="plug-form" aria-label={RECORD.plug(String(inHand))}>
      <h3 ref={heading} tabIndex={-1}>
        {RECORD.plug(String(inHand))}
      </h3>
      <QuantityField
        key={`gap ${inHand}`}
        label={RECORD.gap}
        quantity="gap"
        value={plug.gapMm}
        onChange={(value) => set("gapMm", value)}
        within={[0, 5]}
        usual={usualGap()}
      />
      <PlugLooks cylinder={inHand} look={asLook(plug.look)} onPick={(look) => set("look", look)} />
      {children}
      <div class="pair-of-fields">
        <QuantityField
          key={`torque ${inHand}`}
          label={RECORD.torque}
          help={torqueHelp(engine)}
          quantity="torque"
          value={plug.torqueNm}
          onChange={(value) => set("torqueNm", value)}
          within={[1, 100]}
          usual={engine.profile.figures?.plugTorqueNm}
        />
        <div class="field">
          <label>
            {RECORD.part}
            <input
              maxLength={80}
              autocomplete="off"
              spellcheck={false}
              value={plug.part ?? ""}
              onInput={(event) => set("part", event.currentTarget.value || undefined)}
            />
          </label>
        </div>
      </div>
      <div class="plug-steps">
        <button
          type="button"
          class="quiet"
          onClick={() => {
            onChange((all) => withSameForAll(all, inHand, order));
            setSpread(true);
          }}
        >
          {RECORD.sameForAll}
        </button>
        <span role="status">{isSpread ? RECORD.sameDone : ""}</span>
      </div>
      {next !== undefined && (
        <button
          type="button"
          class="option"
          onClick={() => {
            if (!onTake(next)) return;
            setSpread(false);
            // Its fields stand above; whoever cannot see that is taken there.
            heading.current?.focus();
          }}
        >
          {RECORD.nextPlug(String(next))}
        </button>
      )}
    </section>
  );
}

function torqueHelp({ profile }: Engine): string {
  const range = profile.figures?.plugTorqueNm;
  if (!range) return RECORD.torqueHelp;
  const [low = "", high = ""] = range.map((torque) => sayQuantity(torque, "torque"));
  return `${RECORD.torqueManual(low, high)} ${RECORD.torqueHelp}`;
}
