// What goes with the ranking: faults that it cannot tell apart, what to put right as well, how it was weighed.
import type { Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { ORDERS } from "../parts.ts";
import { findings } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { at } from "../state/route.ts";
import { problems, ranking } from "../state/thinking.ts";
import { drawn, keyOf } from "../state/view.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { LEDGER } from "../text/en.ts";
import { LISTED } from "../text/en-answers.ts";
import { GROUNDS, NOTES } from "../text/en-ranking.ts";
import { chanceText } from "./chance.tsx";
import { Lazy } from "./lazy.tsx";

/** On a phone it stands below the hand's next move. */
function RankingNotes(): VNode | null {
  const now = ranking.value;
  if (!now || problems.value.length > 0) return null;
  return (
    <div class="notes">
      <PutRight now={now} />
      <Apart now={now} />
      {now.orders && <Lazy entry={ORDERS} />}
      <section class="print-only">
        <h2 class="minor">{LISTED.title}</h2>
        <ul class="group">
          {findings.value.map((given) => {
            const row = findingRow(given.finding);
            const asked = sayAsked(row, given, drawn.value);
            return (
              <li key={asked}>
                {asked} <b>{sayAnswer(row, given.answer)}</b>
              </li>
            );
          })}
        </ul>
      </section>
      <ul class="links">
        <li>
          <a href={at("sure")}>
            {NOTES.sure}
            <small>{NOTES.sureMore}</small>
          </a>
        </li>
      </ul>
      <p class="fine">
        {NOTES.searched(now.instances)}, {NOTES.unsearched(chanceText(now.unsearched))}.{" "}
        {NOTES.estimates}
      </p>
    </div>
  );
}

function Apart({ now }: { now: Ranking }): VNode | null {
  if (now.ambiguity.length === 0) return null;
  const byKey = new Map(now.ranking.map((fault) => [keyOf(fault), fault]));
  return (
    <details class="aside">
      <summary>{NOTES.apart(now.ambiguity.length)}</summary>
      <p class="help">{NOTES.apartBody}</p>
      <ul class="group">
        {now.ambiguity.map((group) => (
          <li key={group.join()}>
            {group.map((key) => byKey.get(key)?.name ?? key).join(NOTES.or)}
          </li>
        ))}
      </ul>
    </details>
  );
}

function PutRight({ now }: { now: Ranking }): VNode | null {
  if (now.alsoPutRight.length === 0) return null;
  return (
    <section class="aside">
      <h2 class="minor">
        {NOTES.putRight}, {NOTES.putRightBody}
      </h2>
      <ul class="group">
        {now.alsoPutRight.map(({ finding, cylinder, say, grounds }) => (
          <li key={`${finding} ${cylinder} ${say}`}>
            {cylinder !== undefined && `${LEDGER.cylinder(String(cylinder))}: `}
            {say} <small class="grounds">{GROUNDS[grounds.basis]}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}

export { RankingNotes as Screen };
