// Links between faults, ready for look-up.
import type { DiagnosisModel, Link } from "../model/diagnosis-model.ts";

export interface LinkTable {
  /** One entry a pair, a < b, multipliers of doubled links multiplied, none of them 1. */
  readonly links: readonly Link[];
  /** Odds multiplier of two faults together; 1 for strangers. */
  readonly times: (f: number, g: number) => number;
  /** Faults that are linked with one. */
  readonly near: (f: number) => readonly number[];
  /** Triples that hold two or three links. */
  readonly chains: readonly (readonly [number, number, number])[];
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
  const near = neighboursOf(merged);
  return {
    links: merged,
    times: (f, g) => byPair.get(Math.min(f, g) * faults + Math.max(f, g)) ?? 1,
    near: (f) => near.get(f) ?? [],
    chains: chainsOf(near),
  };
}

function neighboursOf(links: readonly Link[]): ReadonlyMap<number, readonly number[]> {
  const near = new Map<number, number[]>();
  for (const { a, b } of links) {
    near.set(a, [...(near.get(a) ?? []), b]);
    near.set(b, [...(near.get(b) ?? []), a]);
  }
  return near;
}

function chainsOf(
  near: ReadonlyMap<number, readonly number[]>,
): readonly (readonly [number, number, number])[] {
  const chains = new Map<string, readonly [number, number, number]>();
  for (const [hub, ends] of near) {
    for (let i = 0; i < ends.length; i++) {
      for (let j = i + 1; j < ends.length; j++) {
        const chain = [hub, ends[i] as number, ends[j] as number].sort((x, y) => x - y);
        chains.set(chain.join(), chain as unknown as readonly [number, number, number]);
      }
    }
  }
  return [...chains.values()];
}
