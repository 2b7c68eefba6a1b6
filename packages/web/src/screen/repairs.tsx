// What was mended on this case, in the order in which it was done: what came of it can be changed, and a repair
// taken out again.
import type { RepairDone } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { followNames } from "../state/advice.ts";
import {
  canRedo,
  canUndo,
  redo,
  removeRepair,
  repairs,
  setRepairResult,
  undo,
} from "../state/case.ts";
import { at } from "../state/route.ts";
import { isDesk } from "../state/view.ts";
import { UNDO } from "../text/en.ts";
import { MEND, REPAIRS } from "../text/en-mend.ts";
import { Heading } from "../ui/heading.tsx";
import { keepPlace } from "../ui/keep-place.ts";
import { RepairResults } from "../ui/repair-result.tsx";
import "../style/mend.css";

function Repairs(): VNode {
  const [names, setNames] = useState<readonly string[]>([]);
  useEffect(() => followNames(setNames), []);
  return (
    <section class="column">
      <Heading of="repairs" level={isDesk.value ? 2 : 1}>
        {REPAIRS.title}
      </Heading>
      {repairs.value.length === 0 && <p class="help">{REPAIRS.none}</p>}
      <p class="acts">
        <button type="button" class="quiet" disabled={!canUndo.value} onClick={undo}>
          {UNDO.undo}
        </button>
        <button type="button" class="quiet" disabled={!canRedo.value} onClick={redo}>
          {UNDO.redo}
        </button>
      </p>
      <ol class="repairs">
        {repairs.value.map((done, i) => (
          <Done key={done.when ?? i} of={done} index={i} name={names[i]} />
        ))}
      </ol>
    </section>
  );
}

interface DoneProps {
  readonly of: RepairDone;
  readonly index: number;
  /** `undefined` until it has come. */
  readonly name: string | undefined;
}

function Done({ of, index, name = of.repair }: DoneProps): VNode {
  const { result, when } = of;
  const said = result === undefined ? REPAIRS.untried : MEND.results[result][0];
  return (
    <li>
      <p>
        {name} <b>{said}</b>
        {when !== undefined && <small>{REPAIRS.when(sayMoment(when))}</small>}
      </p>
      <details>
        <summary>
          {REPAIRS.change}
          <span class="vh"> {name}</span>
        </summary>
        <RepairResults given={result} onResult={(next) => setRepairResult(index, next)} />
      </details>
      <p class="acts">
        {result === "cured" && (
          <a class="quiet" href={at("proof", String(index))}>
            {REPAIRS.prove}
            <span class="vh">: {name}</span>
          </a>
        )}
        <button
          type="button"
          class="quiet"
          onClick={({ currentTarget }) => keepPlace(currentTarget, () => removeRepair(index))}
        >
          {REPAIRS.remove}
          <span class="vh">: {name}</span>
        </button>
      </p>
    </li>
  );
}

function sayMoment(iso: string): string {
  return new Date(iso).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
}

export { Repairs as Screen };
