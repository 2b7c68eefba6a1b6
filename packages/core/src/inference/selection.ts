// Traits by selection: with two faults held, a row is linear in a few numbers of the third, so the products
// of these numbers over the rows say all that the rows say of three.
import type { Row } from "./evidence.ts";

export interface Traits {
  readonly count: number;
  /** [fault·count + trait]. */
  readonly of: Float64Array;
  /** What the rows say of three is Σ over traits of out[trait] · trait of the third. */
  readonly third: (a: number, b: number, out: Float64Array) => void;
  /** Of two they say Σ over j, k of core · the traits j, k; for one trait, every k and core. */
  readonly seconds: (j: number, visit: (k: number, core: number) => void) => void;
  /** The rows say Σ over i, j, k of core · the traits i, j, k of three; for two traits, every i and core. */
  readonly cores: (j: number, k: number, visit: (i: number, core: number) => void) => void;
}

/** In how many numbers of a fault a row is linear. */
export function waysOf({ isChoice, hasSilent }: Row): number {
  return isChoice && hasSilent ? 3 : 2;
}

type Core = readonly [i: number, j: number, k: number, core: number];

/**
 * The factor on numbers i, j, k of three. The numbers are 1 and what the fault says; where faults may be
 * silent: what the row says of it alone (1 of the silent), what it says and 1 (0 and 0). Of two who are
 * silent the row then says the first number of a third, and no more.
 */
function coresOf({ isChoice, hasSilent, gain }: Row): readonly Core[] {
  if (!isChoice) {
    return [[0, 0, 0, 1], ...oneOf(1, 0, gain), ...oneOf(0, 1, -gain), [1, 1, 1, gain]];
  }
  if (!hasSilent) return oneOf(1, 0, 1 / 3);
  return [
    [0, 0, 0, 1],
    ...oneOf(0, 1, -1),
    [0, 1, 2, 1 / 2],
    [0, 2, 1, 1 / 2],
    [1, 0, 2, 1 / 2],
    [1, 2, 0, 1 / 2],
    [2, 0, 1, 1 / 2],
    [2, 1, 0, 1 / 2],
    [1, 1, 1, 2],
    ...oneOf(2, 1, -1),
    ...oneOf(1, 2, 1 / 3),
  ];
}

/** One number of any of three, another of the other two. */
function oneOf(one: number, other: number, core: number): readonly Core[] {
  return [
    [one, other, other, core],
    [other, one, other, core],
    [other, other, one, core],
  ];
}

/** The factor on numbers i, j of two. */
function pairCoresOf({ isChoice, hasSilent, gain }: Row): readonly Core[] {
  const either = (x: number, y: number, core: number): readonly Core[] => [
    [x, y, 0, core],
    [y, x, 0, core],
  ];
  if (!isChoice) return [[0, 0, 0, 1], ...either(1, 0, gain), [1, 1, 0, -gain]];
  if (!hasSilent) return either(1, 0, 1 / 2);
  return [[0, 0, 0, 1], [1, 1, 0, -1], ...either(2, 1, 1 / 2)];
}

export function bySelection(wide: readonly Row[], faults: number, count: number): Traits {
  const of = new Float64Array(faults * count);
  for (let f = 0; f < faults; f++) {
    const own = of.subarray(f * count, (f + 1) * count);
    own[0] = 1;
    let filled = 1;
    for (const row of wide) {
      const say = row.say[f] as number;
      if (waysOf(row) === 2) filled = spread(own, filled, 1, say);
      else filled = say < 0 ? spread(own, filled, 1, 0, 0) : spread(own, filled, say, say, 1);
    }
  }
  const third = (a: number, b: number, out: Float64Array): void => {
    out[0] = 1;
    let filled = 1;
    for (const row of wide) {
      const speaks = held(row, a, b);
      const rise = slope(row, a, b);
      if (waysOf(row) === 2) filled = spread(out, filled, speaks, rise);
      else {
        const none = silent(row, a, b);
        filled = spread(out, filled, none, rise - none, speaks);
      }
    }
  };
  const seconds = visitorOf(wide, pairCoresOf);
  let cores: Traits["cores"] | undefined;
  return {
    count,
    of,
    third,
    seconds: (j, visit) => seconds(j, 0, visit),
    cores: (j, k, visit) => {
      // where only pairs are summed nobody asks
      cores ??= visitorOf(wide, coresOf);
      cores(j, k, visit);
    },
  };
}

/** Each number so far times each of two or three; gives how many there are then. */
function spread(out: Float64Array, filled: number, x: number, y: number, z?: number): number {
  for (let k = 0; k < filled; k++) {
    const own = out[k] as number;
    out[k] = own * x;
    out[k + filled] = own * y;
    if (z !== undefined) out[k + 2 * filled] = own * z;
  }
  return filled * (z === undefined ? 2 : 3);
}

/** Products of one core of each row, by j · count + k; visits i with its factor. */
function visitorOf(
  wide: readonly Row[],
  coresOf: (row: Row) => readonly Core[],
): (j: number, k: number, visit: (i: number, core: number) => void) => void {
  let count = 1;
  let all: readonly Core[] = [[0, 0, 0, 1]];
  for (const row of wide) {
    const step = count;
    all = coresOf(row).flatMap(([x, y, z, own]) =>
      all.map(([i, j, k, core]): Core => [i + step * x, j + step * y, k + step * z, core * own]),
    );
    count *= waysOf(row);
  }
  const start = new Uint32Array(count * count + 1);
  for (const [, j, k] of all) start[j * count + k + 1] = (start[j * count + k + 1] as number) + 1;
  for (let at = 1; at < start.length; at++) {
    start[at] = (start[at] as number) + (start[at - 1] as number);
  }
  const next = start.slice();
  const which = new Uint32Array(all.length);
  const factor = new Float64Array(all.length);
  for (const [i, j, k, core] of all) {
    const at = next[j * count + k] as number;
    next[j * count + k] = at + 1;
    which[at] = i;
    factor[at] = core;
  }
  return (j, k, visit) => {
    const end = start[j * count + k + 1] as number;
    for (let at = start[j * count + k] as number; at < end; at++) {
      visit(which[at] as number, factor[at] as number);
    }
  };
}

/** What a wide row says of three when the third says 0. */
export function held({ isChoice, gain, say }: Row, a: number, b: number): number {
  const x = say[a] as number;
  const y = say[b] as number;
  if (!isChoice) return 1 + gain * (x + y - x * y);
  return (Math.max(0, x) + Math.max(0, y)) / speaking(x, y, 0);
}

/** By how much that grows with what the third says. */
export function slope({ isChoice, gain, say }: Row, a: number, b: number): number {
  const x = say[a] as number;
  const y = say[b] as number;
  return isChoice ? 1 / speaking(x, y, 0) : gain * (1 - x) * (1 - y);
}

/** What a choice says of three when the third is silent. */
export function silent({ say }: Row, a: number, b: number): number {
  const x = say[a] as number;
  const y = say[b] as number;
  const count = speaking(x, y, -1);
  return count === 0 ? 1 : (Math.max(0, x) + Math.max(0, y)) / count;
}

function speaking(x: number, y: number, z: number): number {
  return (x >= 0 ? 1 : 0) + (y >= 0 ? 1 : 0) + (z >= 0 ? 1 : 0);
}
