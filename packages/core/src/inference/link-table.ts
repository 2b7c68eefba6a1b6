// Links between faults, ready for look-up.
import type { DiagnosisModel, Link } from "../model/diagnosis-model.ts";

export interface LinkTable {
  /** One entry a pair, a < b, multipliers of doubled links multiplied, none of them 1. */
  readonly links: readonly Link[];
  /** Odds multiplier of two faults together; 1 for strangers. */
  readonly times: (f: number, g: number) => number;
}

export function linkTable({ faults, links, alone }: DiagnosisModel): LinkTable {
  const byPair = new Map<number, number>();
  for (const { a, b, times } of links) {
    if (alone[a] || alone[b]) continue;
    const key = Math.min(a, b) * faults + Math.max(a, b);
    byPair.set(key, (byPair.get(key) ?? 1) * times);
  }
  const merged = [...byPair]
    .filter(([, times]) => times !== 1)
    .map(([key, times]) => ({ a: Math.floor(key / faults), b: key % faults, times }));
  return {
    links: merged,
    times: (f, g) => byPair.get(Math.min(f, g) * faults + Math.max(f, g)) ?? 1,
  };
}
