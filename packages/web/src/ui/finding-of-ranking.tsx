// What a ranking says beside the list: a conflict, faults it cannot tell apart, what to put right as
// well, and what hangs on a firing order that is not known.
import type { Engine, OrderCandidate, Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { answerOf, changeEngine, engines } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { drawn, drawnIndex, keyOf } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { sayAnswer, sayAsked, sayGroups, sayOrder } from "../text/answer.ts";
import { LEDGER, RANKING } from "../text/en.ts";
import { Chance, chanceText } from "./chance.tsx";

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

/** Orders this unlikely are not worth a line. */
const WORTH_A_LINE = 0.01;

export function Orders({ now }: { now: Ranking }): VNode | null {
  if (!now.orders) return null;
  const shown = now.orders.filter(({ probability }) => probability >= WORTH_A_LINE);
  const [first] = shown;
  return (
    <details class="aside">
      <summary>
        <span>
          {RANKING.orders}.{" "}
          {first &&
            RANKING.likeliestOrder(sayOrder(first.firingOrder), chanceText(first.probability))}
        </span>
      </summary>
      <p class="help">{RANKING.ordersBody(shown.length)}</p>
      <ul class="orders">
        {shown.map((order) => (
          <Order
            key={`${sayOrder(order.firingOrder)} ${order.probability}`}
            now={now}
            order={order}
          />
        ))}
      </ul>
    </details>
  );
}

function Order({ now, order }: { now: Ranking; order: OrderCandidate }): VNode {
  const index = engines.value.findIndex((engine) => isOf(engine, order));
  const engine = engines.value[index];
  const groups = engine?.groups.map((group) => group.map((c) => engine.names[c] ?? c)) ?? [];
  const isPaired = engine !== undefined && engine.ignition !== "distributor";
  const pairs = isPaired ? sayGroups(groups) : "";
  const first = now.ranking.find((fault) => keyOf(fault) === order.first);
  const isDrawn = engine !== undefined && engine === drawn.value;
  return (
    <li>
      <p>
        <strong>{RANKING.ifOrder(sayOrder(order.firingOrder))}</strong>
        {pairs && <>, {RANKING.share(pairs)}</>}
        {first && <>. {RANKING.firstThen(first.name)}</>}
      </p>
      <Chance of={order.probability} />
      <button
        type="button"
        class="quiet"
        aria-pressed={isDrawn}
        onClick={() => {
          drawnIndex.value = Math.max(0, index);
        }}
      >
        {isDrawn ? RANKING.drawnOrder : RANKING.draw}
      </button>
      {engine && (
        <button type="button" class="quiet" onClick={() => changeEngine(engine.profile)}>
          {RANKING.isOrder}
          <span class="vh"> {sayOrder(order.firingOrder)}</span>
        </button>
      )}
    </li>
  );
}

function isOf(engine: Engine, { firingOrder }: OrderCandidate): boolean {
  return sayOrder(engine.order.map((c) => engine.names[c] ?? c)) === sayOrder(firingOrder);
}
