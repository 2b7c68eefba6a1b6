// Two faults and a third: what is expected of the three, and where it is booked.
import type { ClassPair, Work } from "./crowd.ts";
import type { Row } from "./evidence.ts";
import { held, slope } from "./wide.ts";

/** What is expected of two faults when a mask joins them, and what the wide rows say of them. */
export function expectPair(
  { wide, reach, expected, held: base, slope: rise }: Work,
  a: number,
  b: number,
): void {
  const { masks, first, atomMask, atomWeight, unionOf, unionSet, joined } = reach;
  const row = b * unionSet.length;
  expected.fill(0);
  for (let atom = first[a] as number; atom < (first[a + 1] as number); atom++) {
    const weight = atomWeight[atom] as number;
    const start = (atomMask[atom] as number) * masks;
    for (let m = 0; m < masks; m++) {
      const union = unionOf[start + m] as number;
      expected[m] = (expected[m] as number) + weight * (joined[row + union] as number);
    }
  }
  for (let i = 0; i < wide.length; i++) {
    base[i] = held(wide[i] as Row, a, b);
    rise[i] = slope(wide[i] as Row, a, b);
  }
}

/** What the wide rows say of the pair and a third. */
export function saidOf({ says, held: base, slope: rise }: Work, c: number): number {
  const rows = base.length;
  const start = c * rows;
  let product = 1;
  for (let i = 0; i < rows; i++) {
    product *= (base[i] as number) + (rise[i] as number) * (says[start + i] as number);
  }
  return product;
}

/** Σ over the atoms of a third of its weight times what is expected with it. */
export function expectOf({ reach, expected }: Work, c: number): number {
  const { first, atomMask, atomWeight } = reach;
  let sum = 0;
  for (let atom = first[c] as number; atom < (first[c + 1] as number); atom++) {
    sum += (atomWeight[atom] as number) * (expected[atomMask[atom] as number] as number);
  }
  return sum;
}

export function addAtoms({ reach, thirds }: Work, c: number, factor: number): void {
  const { first, atomMask, atomWeight } = reach;
  for (let atom = first[c] as number; atom < (first[c + 1] as number); atom++) {
    const m = atomMask[atom] as number;
    thirds[m] = (thirds[m] as number) + factor * (atomWeight[atom] as number);
  }
}

export function classPair(work: Work, a: number, b: number): ClassPair {
  const { traits, reach, pool, classPairs } = work;
  const first = traits.classOf[a] as number;
  const second = traits.classOf[b] as number;
  const key = Math.min(first, second) * work.faults + Math.max(first, second);
  const known = classPairs.get(key);
  if (known) return known;
  const { count } = traits;
  const { masks } = reach;
  // one array for the three: there are many pairs
  const all = new Float64Array(count + 2 * masks);
  const say = all.subarray(0, count);
  const thirds = all.subarray(count, count + masks);
  traits.third(a, b, say);
  for (let k = 0; k < count; k++) addScaled(thirds, pool, k * masks, say[k] as number);
  let allThirds = 0;
  for (let m = 0; m < masks; m++) allThirds += thirds[m] as number;
  const pair = { say, thirds, allThirds, offers: all.subarray(count + masks) };
  classPairs.set(key, pair);
  return pair;
}

/** `factor` times the pair with any light third. */
export function offerThirds({ thirds, expected }: Work, pair: ClassPair, factor: number): void {
  const { thirds: any, offers } = pair;
  for (let m = 0; m < thirds.length; m++) {
    thirds[m] = (thirds[m] as number) + factor * (any[m] as number);
    offers[m] = (offers[m] as number) + factor * (expected[m] as number);
  }
}

/** True when `factor` times the pair with any third is too little to be told; it is then booked. */
export function isLeftOut(
  { ring, expected, least, allowed }: Work,
  { allThirds }: ClassPair,
  factor: number,
): boolean {
  const bound = Math.abs(factor) * allThirds * largest(expected);
  if (bound >= least || ring.leftOut + bound > allowed) return false;
  ring.leftOut += bound;
  return true;
}

/** The pair with one more, so many times what strangers would make of it. */
export function addThird(work: Work, c: number, times: number, most: number): void {
  const weight = times * saidOf(work, c);
  const bound = Math.abs(weight) * most * (work.company.weight[c] as number);
  const { ring, reach, expected, thirds } = work;
  if (bound < work.least && ring.leftOut + bound <= work.allowed) {
    ring.leftOut += bound;
    return;
  }
  const { first, atomMask, atomWeight } = reach;
  const end = first[c + 1] as number;
  let sum = 0;
  for (let atom = first[c] as number; atom < end; atom++) {
    const m = atomMask[atom] as number;
    const own = atomWeight[atom] as number;
    sum += own * (expected[m] as number);
    thirds[m] = (thirds[m] as number) + weight * own;
  }
  ring.fault[c] = (ring.fault[c] as number) + weight * sum;
}

/** Unions of a second member with its thirds. */
export function addOthers({ reach, thirds, others }: Work, b: number): void {
  const { masks, first, atomMask, atomWeight, unionOf } = reach;
  for (let atom = first[b] as number; atom < (first[b + 1] as number); atom++) {
    const weight = atomWeight[atom] as number;
    const start = (atomMask[atom] as number) * masks;
    for (let m = 0; m < masks; m++) {
      const u = unionOf[start + m] as number;
      others[u] = (others[u] as number) + weight * (thirds[m] as number);
    }
  }
}

/** Sets of a first member with its others. */
export function addSets({ reach, ring, others }: Work, a: number): void {
  const { masks, first, atomMask, atomWeight, setOf } = reach;
  for (let atom = first[a] as number; atom < (first[a + 1] as number); atom++) {
    const weight = atomWeight[atom] as number;
    const mask = atomMask[atom] as number;
    for (let u = 0; u < others.length; u++) {
      const set = setOf[u * masks + mask] as number;
      ring.set[set] = (ring.set[set] as number) + weight * (others[u] as number);
    }
  }
}

/** to += factor · from, one row of masks. */
export function addScaled(
  to: Float64Array,
  from: Float64Array,
  start: number,
  factor: number,
): void {
  for (let m = 0; m < to.length; m++) {
    to[m] = (to[m] as number) + factor * (from[start + m] as number);
  }
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

export function largest(of: Float64Array): number {
  let most = 0;
  for (let i = 0; i < of.length; i++) most = Math.max(most, of[i] as number);
  return most;
}
