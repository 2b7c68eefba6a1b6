// A caution, where the hand is about to go.
import type { VNode } from "preact";
import { cautionWords } from "../state/catalogue.ts";
import { SAFE } from "../text/en.ts";

/** The first thing of all: away from the traffic. */
export function SafeFirst(): VNode {
  return (
    <section class="caution" aria-label={SAFE.title}>
      <strong>{SAFE.title}</strong>
      <p>{cautionWords(SAFE.caution)}</p>
    </section>
  );
}

export function Cautions({ ids }: { ids: readonly string[] }): VNode | null {
  if (ids.length === 0) return null;
  return (
    <ul class="caution">
      {ids.map((id) => (
        <li key={id}>{cautionWords(id)}</li>
      ))}
    </ul>
  );
}
