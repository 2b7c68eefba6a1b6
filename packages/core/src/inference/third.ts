// Two faults and a third: what is expected of the three, and where it is booked.
import type { Work } from "./crowd.ts";
import type { Row } from "./evidence.ts";
import { held, silent, slope } from "./selection.ts";

/** What the wide rows say of two. */
export function saidOfTwo(wide: readonly Row[], a: number, b: number): number {
  let product = 1;
  for (let i = 0; i < wide.length; i++) {
    const { isChoice, gain, say } = wide[i] as Row;
    const x = say[a] as number;
    const y = say[b] as number;
    if (!isChoice) product *= 1 + gain * (x + y - x * y);
    else if (x >= 0 && y >= 0) product *= (x + y) / 2;
    else if (x >= 0 || y >= 0) product *= Math.max(x, y);
  }
  return product;
}

/** From here on pairs are pairs of this fault. */
export function beginFault({ joins }: Work, a: number): void {
  joins.of = a;
  joins.isWritten.fill(0);
}

/** What is expected of the fault and another when a mask joins them, and what the wide rows say of them. */
export function expectPair(work: Work, b: number): void {
  const { wide, reach, joins, expected, held: base, slope: rise, silent: none } = work;
  const { masks, first, atomMask, atomWeight } = reach;
  const { of: a, expected: joined, isWritten } = joins;
  expected.fill(0);
  for (let atom = first[b] as number; atom < (first[b + 1] as number); atom++) {
    const mask = atomMask[atom] as number;
    if (!isWritten[mask]) writeRow(work, mask);
    addScaled(expected, joined, mask * masks, atomWeight[atom] as number);
  }
  for (let i = 0; i < wide.length; i++) {
    base[i] = held(wide[i] as Row, a, b);
    rise[i] = slope(wide[i] as Row, a, b);
    none[i] = silent(wide[i] as Row, a, b);
  }
}

function writeRow({ reach, joins }: Work, mask: number): void {
  const { masks, unionOf, rows, joined } = reach;
  const start = mask * masks;
  const row = joins.of * rows;
  joins.isWritten[mask] = 1;
  for (let m = 0; m < masks; m++) {
    joins.expected[start + m] = joined[row + (unionOf[start + m] as number)] as number;
    joins.weight[start + m] = 0;
  }
}

/** What the wide rows say of the pair and a third. */
export function saidOf({ says, held: base, slope: rise, silent: none }: Work, c: number): number {
  const rows = base.length;
  const start = c * rows;
  let product = 1;
  for (let i = 0; i < rows; i++) {
    const own = says[start + i] as number;
    product *= own < 0 ? (none[i] as number) : (base[i] as number) + (rise[i] as number) * own;
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

/** All light thirds of the pair, as if all were strangers. */
export function findStrangers(
  { traits, reach, pool, joins, say, strangers }: Work,
  b: number,
): void {
  traits.third(joins.of, b, say);
  strangers.fill(0);
  for (let k = 0; k < say.length; k++) {
    const own = say[k] as number;
    if (own !== 0) addScaled(strangers, pool, k * reach.masks, own);
  }
}

/** Books `factor` times the pair with any of these thirds. */
export function addAnyThird(
  { say, strangers, thirds, expected, offered }: Work,
  factor: number,
): void {
  const masks = thirds.length;
  for (let m = 0; m < masks; m++) {
    thirds[m] = (thirds[m] as number) + factor * (strangers[m] as number);
  }
  for (let k = 0; k < say.length; k++) {
    const own = factor * (say[k] as number);
    if (own === 0) continue;
    const start = k * masks;
    for (let m = 0; m < masks; m++) {
      offered[start + m] = (offered[start + m] as number) + own * (expected[m] as number);
    }
  }
}

/** True when `factor` times the pair with any third is too little to be told; it is then booked. */
export function isLeftOut(
  { ring, strangers, expected, least, allowed }: Work,
  factor: number,
): boolean {
  let weight = 0;
  for (let m = 0; m < strangers.length; m++) weight += strangers[m] as number;
  const bound = Math.abs(factor) * weight * largest(expected);
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

/** Books the sets of a second member with its thirds. */
export function addOthers({ reach, thirds, joins }: Work, b: number): void {
  const { masks, first, atomMask, atomWeight } = reach;
  const { weight } = joins;
  for (let atom = first[b] as number; atom < (first[b + 1] as number); atom++) {
    const own = atomWeight[atom] as number;
    const start = (atomMask[atom] as number) * masks;
    for (let m = 0; m < masks; m++) {
      weight[start + m] = (weight[start + m] as number) + own * (thirds[m] as number);
    }
  }
}

/** Sets of the fault with all its seconds and thirds. */
export function endFault({ reach, ring, joins, others }: Work): void {
  const { masks, first, atomMask, atomWeight, unionOf, setOf } = reach;
  const { of: a, weight, isWritten } = joins;
  others.fill(0);
  for (let at = 0; at < weight.length; at += masks) {
    if (!isWritten[at / masks]) continue;
    for (let m = at; m < at + masks; m++) {
      const u = unionOf[m] as number;
      others[u] = (others[u] as number) + (weight[m] as number);
    }
  }
  for (let atom = first[a] as number; atom < (first[a + 1] as number); atom++) {
    const own = atomWeight[atom] as number;
    const mask = atomMask[atom] as number;
    for (let u = 0; u < others.length; u++) {
      const set = setOf[u * masks + mask] as number;
      ring.set[set] = (ring.set[set] as number) + own * (others[u] as number);
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
