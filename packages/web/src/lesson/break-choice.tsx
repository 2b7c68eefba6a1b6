// Which part breaks, and how: the same places as on the dial, as a list; then the ways to fail at one of them.
import type { PlaceKind, SimulatedFaultId } from "@half-order/core/physics";
import type { VNode } from "preact";
import { LESSON } from "../text/en-lesson.ts";
import {
  breakAgain,
  choice,
  lessonEngine,
  spot,
  spots,
  takeFault,
  takeSpot,
  watched,
} from "./lesson.ts";
import { Select } from "./select.tsx";
import { sayAgain, sayKind, saySpot } from "./words.ts";

export function BreakChoice(): VNode | null {
  const engine = lessonEngine.value;
  const [here, taken] = [spot.value, choice.value];
  if (!engine || !here || !taken) return null;
  const kinds = [...new Set(spots.value.map(({ kind }): PlaceKind => kind))];
  return (
    <>
      <Select label={LESSON.where} value={here.id} onPick={takeSpot}>
        {kinds.map((kind) => (
          <optgroup key={kind} label={sayKind(engine, kind)}>
            {spots.value
              .filter((each) => each.kind === kind)
              .map((each) => (
                <option key={each.id} value={each.id}>
                  {saySpot(engine, each)}
                </option>
              ))}
          </optgroup>
        ))}
      </Select>
      <Select
        label={LESSON.how}
        value={taken.fault}
        onPick={(fault) => takeFault(fault as SimulatedFaultId)}
      >
        {here.choices.map(({ fault }) => (
          <option key={fault} value={fault}>
            {LESSON.faults[fault]}
          </option>
        ))}
      </Select>
    </>
  );
}

/** The same once more, in another size: it stands with what comes of it. */
export function BreakAgain(): VNode | null {
  if (!choice.value) return null;
  return (
    <div>
      <p>
        <button type="button" class="quiet" onClick={breakAgain}>
          {LESSON.again}
        </button>
      </p>
      <p class="fine">{sayAgain(watched.value?.broken ?? [])}</p>
    </div>
  );
}
