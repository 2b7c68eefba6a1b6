// What hangs on a firing order that is not known?
import type { Engine, OrderCandidate, Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { changeEngine, engines } from "../state/case.ts";
import { ranking } from "../state/thinking.ts";
import { drawn, drawnIndex, keyOf } from "../state/view.ts";
import { sayGroups, sayOrder } from "../text/answer.ts";
import { RANKING } from "../text/en.ts";
import { Chance, chanceText } from "./chance.tsx";

/** Orders this unlikely are not worth a line. */
const WORTH_A_LINE = 0.01;

export function OrdersOfRanking(): VNode | null {
  const now = ranking.value;
  if (!now?.orders) return null;
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
