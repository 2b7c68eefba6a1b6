// What a ranking says beside the list: a conflict, faults it cannot tell apart, what to put right as well.
import type { Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { answerOf } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { keyOf } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { sayAnswer, sayAsked } from "../text/answer.ts";
import { LEDGER, RANKING } from "../text/en.ts";

export function Conflict({ now }: { now: Ranking }): VNode | null {
  const { conflictDb, suspect } = now.fit;
  // The library names a suspect only when the conflict is more than the noise of crude weights.
  if (!suspect) return null;
  const row = findingRow(suspect.finding);
  const answer = answerOf(suspect.finding, suspect.cylinder);
  return (
    <section class="caution" role="alert">
      <strong>{RANKING.conflict}</strong>
      <p>{RANKING.conflictBody(conflictDb.toFixed(1))}</p>
      <p>
        {sayAsked(row, suspect)} {answer !== undefined && <b>{sayAnswer(row, answer)}</b>}
      </p>
      <a class="act-link" href={askFrom("ranking", suspect.finding)}>
        {RANKING.lookAgain}
      </a>
    </section>
  );
}

export function Apart({ now }: { now: Ranking }): VNode | null {
  if (now.ambiguity.length === 0) return null;
  const byKey = new Map(now.ranking.map((fault) => [keyOf(fault), fault]));
  return (
    <details class="aside">
      <summary>{RANKING.apart(now.ambiguity.length)}</summary>
      <p class="help">{RANKING.apartBody}</p>
      <ul class="group">
        {now.ambiguity.map((group) => (
          <li key={group.join()}>
            {group.map((key) => byKey.get(key)?.name ?? key).join(RANKING.or)}
          </li>
        ))}
      </ul>
    </details>
  );
}

export function PutRight({ now }: { now: Ranking }): VNode | null {
  if (now.alsoPutRight.length === 0) return null;
  return (
    <section class="aside">
      <h2 class="minor">
        {RANKING.putRight}, {RANKING.putRightBody}
      </h2>
      <ul class="group">
        {now.alsoPutRight.map(({ finding, cylinder, say, grounds }) => (
          <li key={`${finding} ${cylinder} ${say}`}>
            {cylinder !== undefined && `${LEDGER.cylinder(String(cylinder))}: `}
            {say} <small class="grounds">{LEDGER.grounds[grounds.basis]}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}
