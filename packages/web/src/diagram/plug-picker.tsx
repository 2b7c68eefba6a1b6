// Which look has each plug? All of them side by side as they came out of the engine, bank by bank; one is
// taken in hand, and its like is chosen by looking.
import type { CylinderName, Engine } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { PICKER, PLUG } from "../text/en-plug.ts";
import { PlugDrawing, type PlugState } from "./plug.tsx";
import { PLUG_LOOKS, type PlugLook } from "./plug-geometry.ts";

interface PlugLookPickerProps {
  readonly engine: Engine;
  /** What is known of each plug so far. */
  readonly plugs: ReadonlyMap<CylinderName, PlugState>;
  /** `undefined` takes the look of that plug back. */
  readonly onPick: (cylinder: CylinderName, look: PlugLook | undefined) => void;
}

/** The row and the looks together, for where nothing else is asked of a plug. */
export function PlugLookPicker({ engine, plugs, onPick }: PlugLookPickerProps): VNode {
  const [inHand, setInHand] = useState(inOrder(engine)[0] ?? 1);
  return (
    <div class="plug-picker">
      <PlugRow engine={engine} plugs={plugs} inHand={inHand} onTake={setInHand} />
      <PlugLooks
        cylinder={inHand}
        look={plugs.get(inHand)?.look}
        onPick={(look) => onPick(inHand, look)}
      />
    </div>
  );
}

/** The cylinders as they stand in the block, bank by bank, each from the front. */
export function inOrder(engine: Engine): readonly CylinderName[] {
  return engine.banks.flat().map((c) => engine.names[c] ?? c);
}

interface PlugRowProps extends Pick<PlugLookPickerProps, "engine" | "plugs"> {
  readonly inHand: CylinderName;
  readonly onTake: (cylinder: CylinderName) => void;
}

/** The plugs laid out as the cylinders stand, front of the engine on the left. */
export function PlugRow({ engine, plugs, inHand, onTake }: PlugRowProps): VNode {
  return (
    <fieldset class="plug-row">
      <legend>{PICKER.row}</legend>
      {engine.banks.map((bank) => (
        <div key={bank.join()} class="plug-bank">
          {bank.map((c) => {
            const name = engine.names[c] ?? c;
            const known = plugs.get(name) ?? {};
            const seen = known.look ? PLUG.looks[known.look].name : PLUG.unseen;
            return (
              <button
                key={name}
                type="button"
                class="plug-seat"
                aria-pressed={name === inHand}
                aria-label={PICKER.seat(String(name), seen)}
                onClick={() => onTake(name)}
              >
                <PlugDrawing of={known} isDecoration />
                <b>{name}</b>
              </button>
            );
          })}
        </div>
      ))}
    </fieldset>
  );
}

interface PlugLooksProps {
  readonly cylinder: CylinderName;
  readonly look: PlugLook | undefined;
  readonly onPick: (look: PlugLook | undefined) => void;
}

/** Every look as a drawing to choose from. */
export function PlugLooks({ cylinder, look, onPick }: PlugLooksProps): VNode {
  return (
    <fieldset class="plug-looks">
      <legend>{PICKER.which(String(cylinder))}</legend>
      {PLUG_LOOKS.map((each) => (
        <button
          key={each}
          type="button"
          class="plug-look"
          aria-pressed={look === each}
          onClick={() => onPick(each)}
        >
          <PlugDrawing of={{ look: each }} isDecoration />
          <span>
            {PLUG.looks[each].name}
            <small>{PLUG.looks[each].hint}</small>
          </span>
        </button>
      ))}
      <button type="button" class="plug-look is-dashed" onClick={() => onPick(undefined)}>
        <PlugDrawing of={{}} isDecoration />
        <span>{PICKER.cannotTell}</span>
      </button>
    </fieldset>
  );
}
