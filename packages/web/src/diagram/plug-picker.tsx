// Which look has each plug? All of them side by side as they came out of the engine, bank by bank; one is
// taken in hand, and its like is chosen by looking.
import type { CylinderName, Engine } from "@half-order/core";
import type { VNode } from "preact";
import { PICKER, PLUG } from "../text/en-plug.ts";
import { PlugDrawing, type PlugState } from "./plug.tsx";
import { PLUG_LOOKS, type PlugLook } from "./plug-geometry.ts";

/** The cylinders as they stand in the block, bank by bank, each from the front. */
export function inOrder(engine: Engine): readonly CylinderName[] {
  return engine.banks.flat().map((c) => engine.names[c] ?? c);
}

interface PlugRowProps {
  readonly engine: Engine;
  /** What is known of each plug so far. */
  readonly plugs: ReadonlyMap<CylinderName, PlugState>;
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
        <LookButton key={each} look={each} isGiven={look === each} onPick={() => onPick(each)} />
      ))}
      <button type="button" class="plug-look is-dashed" onClick={() => onPick(undefined)}>
        <PlugDrawing of={{}} isDecoration />
        <span>{PICKER.cannotTell}</span>
      </button>
    </fieldset>
  );
}

interface LookButtonProps {
  readonly look: PlugLook;
  readonly isGiven: boolean;
  readonly onPick: () => void;
}

/** One look as a drawing with its words. */
export function LookButton({ look, isGiven, onPick }: LookButtonProps): VNode {
  return (
    <button type="button" class="option plug-look" aria-pressed={isGiven} onClick={onPick}>
      <PlugDrawing of={{ look }} isDecoration />
      <span>
        {PLUG.looks[look].name}
        <small>{PLUG.looks[look].hint}</small>
      </span>
    </button>
  );
}
