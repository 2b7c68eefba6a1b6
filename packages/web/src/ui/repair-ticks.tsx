// The put-back list to tick, line by line in the order in which the hand does it. The ticks are part of the case.
import type { PutBackLine } from "@half-order/core";
import type { VNode } from "preact";
import { ONLY_AFTER, tick, tickedOf } from "../state/work.ts";
import { MEND } from "../text/en-mend.ts";
import { Cautions } from "./caution.tsx";
import { Part } from "./repair-part.tsx";

interface TicksProps {
  /** By which the ticks are kept. */
  readonly of: string;
  readonly lines: readonly PutBackLine[];
  /** Ids of cautions that stand on the screen already. */
  readonly told: readonly string[];
}

export function Ticks({ of, lines, told }: TicksProps): VNode {
  const done = tickedOf(of);
  const left = lines.filter(({ id }) => !done.includes(id)).length;
  return (
    <Part title={MEND.putBack}>
      <p class="help">{MEND.putBackHelp}</p>
      <ol class="ticks">
        {lines.map((line, i) => (
          <li key={line.id}>
            <Cautions ids={newCautions(lines, i, told)} />
            <Line of={line} done={done} onTick={(isDone) => tick(of, line.id, isDone)} />
          </li>
        ))}
      </ol>
      <p class="facts" role="status">
        {left === 0 ? MEND.allTicked : MEND.left(left)}
      </p>
    </Part>
  );
}

/** Each caution stands where it first matters; before the first start all of its own stand once more. */
function newCautions(
  lines: readonly PutBackLine[],
  i: number,
  told: readonly string[],
): readonly string[] {
  const ids = lines[i]?.cautions ?? [];
  if (i === lines.length - 1) return ids;
  const before = new Set([...told, ...lines.slice(0, i).flatMap(({ cautions }) => cautions)]);
  return ids.filter((id) => !before.has(id));
}

interface LineProps {
  readonly of: PutBackLine;
  readonly done: readonly string[];
  readonly onTick: (isDone: boolean) => void;
}

function Line({ of, done, onTick }: LineProps): VNode {
  const isDone = done.includes(of.id);
  const before = ONLY_AFTER[of.id];
  const waits = before !== undefined && !done.includes(before);
  return (
    <button
      type="button"
      class="option is-several"
      aria-pressed={isDone}
      disabled={waits}
      onClick={() => onTick(!isDone)}
    >
      <span class="tick" aria-hidden="true" />
      <span class="words">
        {of.say}
        {of.isFigureMissing && <small>{MEND.missing}</small>}
        {waits && <small>{MEND.waits}</small>}
      </span>
    </button>
  );
}
