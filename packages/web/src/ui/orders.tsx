// What hangs on a firing order that is not known?
import type { OrderCandidate, Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { changeEngine, engines } from "../state/case.ts";
import { isOrderOf } from "../state/order.ts";
import { ranking } from "../state/thinking.ts";
import { drawn, drawnIndex, keyOf } from "../state/view.ts";
import { sayGroups, sayOrder } from "../text/answer.ts";
import { NOTES } from "../text/en-ranking.ts";
import { Chance, chanceText } from "./chance.tsx";

/** Orders this unlikely are not worth a line. */
const WORTH_A_LINE = 0.01;

function OrdersOfRanking(): VNode | null {
  const now = ranking.value;
  if (!now?.orders) return null;
  const shown = now.orders.filter(({ probability }) => probability >= WORTH_A_LINE);
  const [first] = shown;
  return (
    <details class="aside">
      <summary>
        <span>
          {NOTES.orders}.{" "}
          {first &&
            NOTES.likeliestOrder(sayOrder(first.firingOrder), chanceText(first.probability))}
        </span>
      </summary>
      <p class="help">{NOTES.ordersBody(shown.length)}</p>
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
  const index = engines.value.findIndex((engine) => isOrderOf(engine, order));
  const engine = engines.value[index];
  const groups = engine?.groups.map((group) => group.map((c) => engine.names[c] ?? c)) ?? [];
  const isPaired = engine !== undefined && engine.ignition !== "distributor";
  const pairs = isPaired ? sayGroups(groups) : "";
  const first = now.ranking.find((fault) => keyOf(fault) === order.first);
  const isDrawn = engine !== undefined && engine === drawn.value;
  return (
    <li>
      <p>
        <strong>{NOTES.ifOrder(sayOrder(order.firingOrder))}</strong>
        {pairs && <>, {NOTES.share(pairs)}</>}
        {first && <>. {NOTES.firstThen(first.name)}</>}
      </p>
      <Chance of={order.probability} name={sayOrder(order.firingOrder)} />
      <button
        type="button"
        class="quiet"
        aria-pressed={isDrawn}
        onClick={() => {
          drawnIndex.value = Math.max(0, index);
        }}
      >
        {isDrawn ? NOTES.drawnOrder : NOTES.draw}
      </button>
      {engine && (
        <button type="button" class="quiet" onClick={() => changeEngine(engine.profile)}>
          {NOTES.isOrder}
          <span class="vh"> {sayOrder(order.firingOrder)}</span>
        </button>
      )}
    </li>
  );
}

export { OrdersOfRanking as Screen };
