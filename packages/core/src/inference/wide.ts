// What the wide rows say of three faults, as a sum of products of what each has: its traits. There are two
// ways to have traits. By selection: with two faults held, a row is linear in a number of the third (q of
// a choice, p of a sign), so the products of these numbers over each selection of rows will do. By class:
// faults of which all wide rows say the same are one class, and to be of it is the trait. The one with
// fewer traits is taken.
import { type Row, said } from "./evidence.ts";

export interface Traits {
  readonly count: number;
  /** By fault: of faults with the same number all wide rows say the same. */
  readonly classOf: Uint32Array;
  /** [fault·count + trait]. */
  readonly of: Float64Array;
  /** What the rows say of three is Σ over traits of out[trait] · trait of the third. */
  readonly third: (a: number, b: number, out: Float64Array) => void;
  /** The rows say Σ over i, j, k of core · the traits i, j, k of three; for two traits, every i and core. */
  readonly cores: (j: number, k: number, visit: (i: number, core: number) => void) => void;
}

/** With more traits than this the closed form is no gain. */
const MOST_TRAITS = 160;

/** Undefined when there are too many. */
export function traitsOf(wide: readonly Row[], faults: number): Traits | undefined {
  const { classOf, first } = classesOf(wide, faults);
  const fewest = Math.min(first.length, 2 ** wide.length);
  if (fewest > MOST_TRAITS) return undefined;
  return fewest < first.length ? bySelection(wide, classOf) : byClass(wide, classOf, first);
}

function bySelection(wide: readonly Row[], classOf: Uint32Array): Traits {
  const count = 2 ** wide.length;
  const faults = classOf.length;
  const of = new Float64Array(faults * count);
  for (let f = 0; f < faults; f++) {
    const start = f * count;
    of[start] = 1;
    wide.forEach(({ say }, i) => {
      const bit = 1 << i;
      for (let k = 0; k < bit; k++) {
        of[start + k + bit] = (say[f] as number) * (of[start + k] as number);
      }
    });
  }
  const third = (a: number, b: number, out: Float64Array): void => {
    out[0] = 1;
    for (let i = 0; i < wide.length; i++) {
      const row = wide[i] as Row;
      const without = held(row, a, b);
      const times = slope(row, a, b);
      const bit = 1 << i;
      for (let k = 0; k < bit; k++) {
        const before = out[k] as number;
        out[k + bit] = before * times;
        out[k] = before * without;
      }
    }
  };
  return { count, classOf, of, third, cores: coresOf(wide) };
}

/** In a choice exactly one of three is selected, with 1/3; of a sign any may be. */
function coresOf(wide: readonly Row[]): Traits["cores"] {
  const choices = wide.reduce((bits, { isChoice }, i) => (isChoice ? bits | (1 << i) : bits), 0);
  const signs = 2 ** wide.length - 1 - choices;
  return (j, k, visit) => {
    if (j & k & choices) return;
    const needed = choices & ~(j | k);
    // all subsets of the signs, from all of them down to none
    for (let some = signs; ; some = (some - 1) & signs) {
      visit(needed | some, coreOf(wide, needed | some, j, k));
      if (some === 0) break;
    }
  };
}

function coreOf(wide: readonly Row[], i: number, j: number, k: number): number {
  let product = 1;
  for (let bit = 0; bit < wide.length; bit++) {
    const { isChoice, gain } = wide[bit] as Row;
    const selected = ((i >> bit) & 1) + ((j >> bit) & 1) + ((k >> bit) & 1);
    if (isChoice) product /= 3;
    else if (selected > 0) product *= selected === 2 ? -gain : gain;
  }
  return product;
}

function byClass(wide: readonly Row[], classOf: Uint32Array, first: readonly number[]): Traits {
  const count = first.length;
  const of = new Float64Array(classOf.length * count);
  classOf.forEach((own, f) => {
    of[f * count + own] = 1;
  });
  const table = new Float64Array(count ** 3);
  const put = (i: number, j: number, k: number, value: number): void => {
    table[(i * count + j) * count + k] = value;
  };
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      for (let k = 0; k <= j; k++) {
        const three = [first[i] as number, first[j] as number, first[k] as number];
        const value = wide.reduce((product, row) => product * said(row, three), 1);
        put(i, j, k, value);
        put(i, k, j, value);
        put(j, i, k, value);
        put(j, k, i, value);
        put(k, i, j, value);
        put(k, j, i, value);
      }
    }
  }
  return {
    count,
    classOf,
    of,
    third: (a, b, out) => {
      const start = ((classOf[a] as number) * count + (classOf[b] as number)) * count;
      for (let k = 0; k < count; k++) out[k] = table[start + k] as number;
    },
    cores: (j, k, visit) => {
      const start = (j * count + k) * count;
      for (let i = 0; i < count; i++) visit(i, table[start + i] as number);
    },
  };
}

function classesOf(wide: readonly Row[], faults: number) {
  const numbers = new Map<string, number>();
  const first: number[] = [];
  const classOf = Uint32Array.from({ length: faults }, (_, f) => {
    const key = wide.map(({ say }) => say[f]).join(" ");
    const known = numbers.get(key) ?? numbers.size;
    if (known === numbers.size) {
      numbers.set(key, known);
      first.push(f);
    }
    return known;
  });
  return { classOf, first };
}

/** What a wide row says of three when the third says 0. */
export function held({ isChoice, gain, say }: Row, a: number, b: number): number {
  const x = say[a] as number;
  const y = say[b] as number;
  return isChoice ? (x + y) / 3 : 1 + gain * (x + y - x * y);
}

/** By how much that grows with what the third says. */
export function slope({ isChoice, gain, say }: Row, a: number, b: number): number {
  return isChoice ? 1 / 3 : gain * (1 - (say[a] as number)) * (1 - (say[b] as number));
}
