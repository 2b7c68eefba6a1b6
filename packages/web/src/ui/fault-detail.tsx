// What is there to say of the fault that is picked?
import type { RankedFault } from "@half-order/core";
import type { VNode } from "preact";
import { checkRow } from "../state/catalogue.ts";
import { faultWords } from "../state/prose.ts";
import { at } from "../state/route.ts";
import { ranking } from "../state/thinking.ts";
import { keyOf, picked } from "../state/view.ts";
import { COLUMN } from "../text/en-column.ts";
import { NOTES } from "../text/en-ranking.ts";
import { chanceText } from "./chance.tsx";
import { Because } from "./ledger.tsx";

function PickedFault(): VNode | null {
  const of = picked.value;
  return of ? <FaultDetail key={keyOf(of)} of={of} /> : null;
}

/** What the fault is, why it stands here, what looks at it and what mends it. */
function FaultDetail({ of }: { of: RankedFault }): VNode {
  const check = checkRow(of.firstCheck);
  const words = faultWords(of.fault);
  const part = ranking.value?.components.find(({ component }) => component === of.component);
  const [own, whole] = [chanceText(of.probability), part && chanceText(part.probability)];
  return (
    <section class="detail" aria-label={COLUMN.title(of.name)}>
      <h2>{of.name}</h2>
      <p>{words?.about}</p>
      {whole !== undefined && whole !== own && <p class="help">{COLUMN.ofPart(own, whole)}</p>}
      <dl class="facts-of">
        {check && (
          <div class="fact">
            <dt>{NOTES.look}</dt>
            <dd>
              <a href={at("check", check.id)}>{check.name}</a>
            </dd>
          </div>
        )}
        <div class="fact">
          <dt>{NOTES.mend}</dt>
          <dd>{words?.mend}</dd>
        </div>
      </dl>
      <Because fault={of.fault} place={of.place} probability={of.probability} />
    </section>
  );
}

export { PickedFault as Screen };
