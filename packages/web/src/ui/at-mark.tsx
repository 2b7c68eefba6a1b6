// What sits at the mark that was tapped: the likeliest is picked, the others are one tap away.
import type { RankedFault } from "@half-order/core";
import type { VNode } from "preact";
import { atTapped } from "../state/tap.ts";
import { keyOf, pick, picked } from "../state/view.ts";
import { NOTES } from "../text/en-ranking.ts";
import { Chance } from "./chance.tsx";

export function AtMark(): VNode | null {
  const there = atTapped.value;
  if (there.length === 0) return null;
  return (
    <section class="at-mark" aria-label={NOTES.atMark}>
      <p class="minor">{NOTES.atMark}</p>
      <ul class="ways" role="status">
        {there.map((fault) => (
          <li key={keyOf(fault)}>
            <button
              type="button"
              aria-pressed={fault.component === picked.value?.component}
              onClick={() => show(fault)}
            >
              {fault.name}
            </button>
            <Chance of={fault.probability} name={fault.name} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Picks it, and brings its row into sight once it is drawn. */
function show(fault: RankedFault): void {
  pick(keyOf(fault));
  requestAnimationFrame(() => {
    document.querySelector(".ranked-row.is-open")?.scrollIntoView({ block: "nearest" });
  });
}
