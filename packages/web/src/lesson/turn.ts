// Which cylinder of a double coil is looked at first, when it is about to fire?
import type { Place, WatchedRegime } from "@half-order/core/physics";

/** Which of the pair's firings tells most of the break; 0 where no coil has two plugs. */
export function firstTurn({ pair, share }: WatchedRegime, { cylinders }: Place): number {
  const misses = pair.map(({ legs: [own] }) =>
    cylinders.length === 1 ? Number(own.cylinder === cylinders[0]) : (share[own.cylinder] ?? 0),
  );
  return Math.max(0, misses.indexOf(Math.max(...misses)));
}
