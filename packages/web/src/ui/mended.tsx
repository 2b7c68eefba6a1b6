// A closed case: what it was, what mended it and when, how that was proven, and how to open it again.
import { proofResult, type RepairDone } from "@half-order/core";
import type { VNode } from "preact";
import { arePlugsNoted } from "../record/noted.ts";
import { openCase, reopen, repairs } from "../state/case.ts";
import { provenIndex } from "../state/proof.ts";
import { at } from "../state/route.ts";
import { drivesOf } from "../state/work.ts";
import { MENDED, PROOF, REPAIRS } from "../text/en-mend.ts";
import { chanceText } from "./chance.tsx";
import { Heading } from "./heading.tsx";
import { Dashed } from "./option.tsx";
import { useMending } from "./repair-mending.ts";
import { Part } from "./repair-part.tsx";
import "../style/mend.css";

/** Stands in the place of the ranking: nothing is likely any more. */
function Mended(): VNode | null {
  const doc = openCase.value?.doc;
  const index = provenIndex(repairs.value, undefined);
  const repair = repairs.value[index];
  if (doc?.closed === undefined) return null;
  const isNoted = arePlugsNoted(doc);
  return (
    <section class="column proof">
      <Heading of="closed" class="act">
        {MENDED.title}
      </Heading>
      <p class="lead">{MENDED.on(sayDay(doc.closed))}</p>
      {repair && <Story key={repair.when} repair={repair} index={index} />}
      <p>{MENDED.body}</p>
      <ul class="links">
        {!isNoted && <Way to="record" say={MENDED.record} more={MENDED.recordMore} />}
        <Way to="hand-over" say={MENDED.handOver} more={MENDED.handOverMore} />
        {isNoted && <Way to="record" say={MENDED.noted} more={MENDED.notedMore} />}
        <Way to="repairs" say={REPAIRS.title} />
        <Way to="answers" say={MENDED.answers} />
      </ul>
      <Dashed more={MENDED.reopenMore} onClick={reopen}>
        {MENDED.reopen}
      </Dashed>
    </section>
  );
}

function Way({ to, say, more }: { to: string; say: string; more?: string }): VNode {
  return (
    <li>
      <a href={at(to)}>
        {say}
        {more && <small>{more}</small>}
      </a>
    </li>
  );
}

/** Faults that the repair was for, told of when they were at least this likely before it. */
const WORTH_TELLING = 0.1;

function Story({ repair, index }: { repair: RepairDone; index: number }): VNode | null {
  // As it looked before the repair.
  const mending = useMending(repair, index)?.mending;
  if (!mending) return null;
  const { name, faults, proof } = mending;
  const told = faults.filter(({ probability }, i) => i === 0 || probability >= WORTH_TELLING);
  const result = proof && proofResult(proof, drivesOf(repair.when ?? String(index)));
  return (
    <>
      <Part title={MENDED.done}>
        <p>
          {name}
          {repair.when !== undefined && <small>{REPAIRS.when(sayDay(repair.when))}</small>}
        </p>
      </Part>
      {told.length > 0 && (
        <Part title={MENDED.was}>
          <ul class="group">
            {told.map(({ fault, place, name, probability }) => (
              <li key={`${fault}@${place}`}>{MENDED.likely(name, chanceText(probability))}</li>
            ))}
          </ul>
        </Part>
      )}
      {proof && (
        <Part title={MENDED.proven}>
          <p>
            {MENDED.drives(result?.cleanTrials ?? 0, proof.trials)}{" "}
            {PROOF.believed(chanceText(result?.believed ?? proof.belief))}
          </p>
        </Part>
      )}
    </>
  );
}

function sayDay(iso: string): string {
  return new Date(iso).toLocaleDateString(undefined, { dateStyle: "long" });
}

export { Mended as Screen };
