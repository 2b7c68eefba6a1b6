// The cautions of a check where the car stands, before its steps; after them all that must be back on.
import { type CheckRow, type Engine, putBackAfter, stepCautions } from "@half-order/core";
import type { VNode } from "preact";
import { atHand } from "../state/case.ts";
import { units } from "../state/unit.ts";
import { STEP } from "../text/en-mend.ts";
import { Cautions } from "./caution.tsx";
import { Part } from "./repair-part.tsx";

export function StepCautions({ of }: { of: CheckRow | undefined }): VNode | null {
  return of ? <Cautions ids={stepCautions(of, atHand.value?.where)} /> : null;
}

interface BackOnProps {
  readonly of: CheckRow;
  readonly engine: Engine;
  readonly depth: 1 | 2;
}

/** A list that is no longer than this stands open. */
const SHORT = 3;

/** What the check takes off, unplugs or cuts; nothing where it leaves everything in its place. */
export function BackOn({ of, engine, depth }: BackOnProps): VNode | null {
  const { gap, torque } = units.value;
  const lines = putBackAfter(engine.profile, of, { gap, torque }, atHand.value?.tools);
  if (lines.length === 0) return null;
  const list = (
    <ol class="steps">
      {lines.map(({ id, say }) => (
        <li key={id}>{say}</li>
      ))}
    </ol>
  );
  return (
    <Part title={STEP.backOn} depth={depth}>
      {lines.length <= SHORT ? (
        list
      ) : (
        <details>
          <summary>{STEP.backOnAll(lines.length)}</summary>
          {list}
        </details>
      )}
    </Part>
  );
}
