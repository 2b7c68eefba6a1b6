// A caution, where the hand is about to go: what it is about at once, the rest of it one tap away.
import { CAUTIONS, type CautionRow, cautionsHere } from "@half-order/core";
import type { VNode } from "preact";
import { atHand } from "../state/case.ts";
import { SAFE } from "../text/en.ts";

const rows = new Map<string, CautionRow>(CAUTIONS.map((row) => [row.id, row]));

/** The words of a caution; empty when there is no such caution. */
function cautionWords(id: string): string {
  return rows.get(id)?.say ?? "";
}

/** The first thing of all: away from the traffic. */
export function SafeFirst(): VNode {
  return (
    <section class="caution" aria-label={SAFE.title}>
      <strong>{SAFE.title}</strong>
      <p>{cautionWords(SAFE.caution)}</p>
    </section>
  );
}

interface CautionsProps {
  readonly ids: readonly string[];
  /** True where the same danger is told of already, so that the first sentence will do. */
  readonly isShort?: boolean;
}

/** One stands in full; of several each is named, and all stand in full behind one tap. */
export function Cautions({ ids, isShort }: CautionsProps): VNode | null {
  const words = cautionsHere(ids, atHand.value?.where).map(cautionWords);
  if (words.length === 0) return null;
  if (words.length === 1 && !isShort) return <p class="caution">{words[0]}</p>;
  return (
    <div class="caution">
      <p>{words.map(firstSentence).join(" ")}</p>
      <details>
        <summary>{SAFE.inFull}</summary>
        <ul>
          {words.map((say) => (
            <li key={say}>{say}</li>
          ))}
        </ul>
      </details>
    </div>
  );
}

function firstSentence(say: string): string {
  return /^.*?[.!?:;](?=\s|$)/.exec(say)?.[0].replace(/[:;]$/, ".") ?? say;
}
