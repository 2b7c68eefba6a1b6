// While the firing order is not known: which one is drawn, and how likely is it?
import type { CylinderName, Engine, OrderCandidate, Ranking } from "@half-order/core";

/** The order in which an engine fires, by the names of its cylinders. */
export function orderOf({ order, names }: Engine): readonly CylinderName[] {
  return order.map((c) => names[c] ?? c);
}

/** True where a candidate fires as this engine does. */
export function isOrderOf(engine: Engine, { firingOrder }: OrderCandidate): boolean {
  return orderOf(engine).join() === firingOrder.join();
}

/** The candidate that is drawn; `undefined` where the order is known, or none of the ranking is drawn. */
export function drawnOrder(now: Ranking | undefined, engine: Engine): OrderCandidate | undefined {
  return now?.orders?.find((candidate) => isOrderOf(engine, candidate));
}
