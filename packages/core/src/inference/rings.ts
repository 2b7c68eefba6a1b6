// The three rings, summed in closed form over kinds of faults.
//
// Per set T (see lattice.ts) let a_f be the numbers of the faults and, per kind, G = Σa, D = Σa², E = Σa³.
// Pairs of two kinds sum to G·G', pairs within a kind to (G² − D)/2, triples within a kind to
// (G³ − 3GD + 2E)/6. What a single fault f of kind A takes part in is a_f·(c0 + c1·a_f + c2·a_f²), where
// the last two take f out of its own company. No hypothesis is visited one by one.
import type { Evidence } from "./evidence.ts";

export interface Rings {
  /** By set: weight of all hypotheses whose union lies inside it, without that set's likelihood. */
  readonly inside: Float64Array;
  /** [kind·size + T]: the polynomial that gives what one fault takes part in. */
  readonly c0: Float64Array;
  readonly c1: Float64Array;
  readonly c2: Float64Array;
  /** Upper bound on the weight left out. */
  readonly leftOut: number;
  /** Hypotheses summed. */
  readonly visited: number;
}

/** Faults summed by kind. */
export interface KindSums {
  readonly size: number;
  /** [kind·size + T]. */
  readonly g: Float64Array;
  readonly d: Float64Array;
  readonly e: Float64Array;
  /** Faults of each kind that can have company. */
  readonly count: Uint32Array;
}

export interface RingOptions {
  /** Faults together at most. */
  readonly most: 1 | 2 | 3;
  /** Weight that triples may leave out. */
  readonly allowed: number;
  /** Largest likelihood of any set. */
  readonly bestSet: number;
}

export function kindSums(
  evidence: Evidence,
  inside: Float64Array,
  size: number,
  canJoin: (fault: number) => boolean,
): KindSums {
  const { kinds, kindOf } = evidence;
  const g = new Float64Array(kinds * size);
  const d = new Float64Array(kinds * size);
  const e = new Float64Array(kinds * size);
  const count = new Uint32Array(kinds);
  kindOf.forEach((kind, fault) => {
    if (!canJoin(fault)) return;
    count[kind] = (count[kind] as number) + 1;
    for (let t = 0; t < size; t++) {
      const a = inside[fault * size + t] as number;
      const at = kind * size + t;
      g[at] = (g[at] as number) + a;
      d[at] = (d[at] as number) + a * a;
      e[at] = (e[at] as number) + a * a * a;
    }
  });
  return { size, g, d, e, count };
}

/**
 * By set: Σ over kinds c of what the observations say of a, b and c together, times the kind's sum.
 * Remembered by pair of kinds.
 */
export function thirdSums(
  { kinds, triple }: Evidence,
  { size, g }: KindSums,
): (a: number, b: number) => Float64Array {
  const known = new Map<number, Float64Array>();
  return (a, b) => {
    const key = Math.min(a, b) * kinds + Math.max(a, b);
    const found = known.get(key) ?? new Float64Array(size);
    if (known.has(key)) return found;
    for (let c = 0; c < kinds; c++) {
      const said = triple(a, b, c);
      for (let t = 0; t < size; t++) {
        found[t] = (found[t] as number) + said * (g[c * size + t] as number);
      }
    }
    known.set(key, found);
    return found;
  };
}

/** Sums singles, pairs and triples of faults that can have company. */
export function sumRings(evidence: Evidence, sums: KindSums, options: RingOptions): Rings {
  const { kinds, solo } = evidence;
  const { size, g, count } = sums;
  const rings = {
    inside: new Float64Array(size),
    c0: new Float64Array(kinds * size),
    c1: new Float64Array(kinds * size),
    c2: new Float64Array(kinds * size),
    leftOut: 0,
    visited: 0,
  };
  for (let a = 0; a < kinds; a++) {
    const s = solo[a] as number;
    rings.visited += count[a] as number;
    for (let t = 0; t < size; t++) {
      rings.inside[t] = (rings.inside[t] as number) + s * (g[a * size + t] as number);
      rings.c0[a * size + t] = s;
    }
  }
  if (options.most >= 2) {
    for (let a = 0; a < kinds; a++)
      for (let b = a; b < kinds; b++) addPairs(evidence, sums, rings, a, b);
  }
  if (options.most >= 3) {
    const groups = (kinds * (kinds + 1) * (kinds + 2)) / 6;
    const least = options.allowed / groups / options.bestSet;
    for (let a = 0; a < kinds; a++) {
      for (let b = a; b < kinds; b++) addTriples(evidence, sums, rings, a, b, least);
    }
    rings.leftOut *= options.bestSet;
  }
  return rings;
}

type Open = { -readonly [K in keyof Rings]: Rings[K] };

function addPairs(evidence: Evidence, sums: KindSums, rings: Open, a: number, b: number): void {
  const { size, g, d, count } = sums;
  const s = evidence.pair(a, b);
  const na = count[a] as number;
  rings.visited += a === b ? (na * (na - 1)) / 2 : na * (count[b] as number);
  for (let t = 0; t < size; t++) {
    const ia = a * size + t;
    const ib = b * size + t;
    const ga = g[ia] as number;
    const gb = g[ib] as number;
    if (a === b) {
      rings.inside[t] = (rings.inside[t] as number) + (s * (ga * ga - (d[ia] as number))) / 2;
      rings.c0[ia] = (rings.c0[ia] as number) + s * ga;
      rings.c1[ia] = (rings.c1[ia] as number) - s;
    } else {
      rings.inside[t] = (rings.inside[t] as number) + s * ga * gb;
      rings.c0[ia] = (rings.c0[ia] as number) + s * gb;
      rings.c0[ib] = (rings.c0[ib] as number) + s * ga;
    }
  }
}

/** All triples of the kinds a ≤ b ≤ c for one a and b, but for groups that weigh less than `least`. */
function addTriples(
  evidence: Evidence,
  sums: KindSums,
  rings: Open,
  a: number,
  b: number,
  least: number,
): void {
  const { size, g, count } = sums;
  const { c0 } = rings;
  if (a === b) addWithin(evidence, sums, rings, a);
  else addOneAndTwo(evidence, sums, rings, a, b);
  const two = new Float64Array(size);
  for (let t = 0; t < size; t++) {
    const ga = g[a * size + t] as number;
    two[t] = a === b ? pairsWithin(sums, a, t) : ga * (g[b * size + t] as number);
  }
  const third = new Float64Array(size);
  for (let c = b + 1; c < evidence.kinds; c++) {
    const s = evidence.triple(a, b, c);
    const start = c * size;
    const bound = s * (two[size - 1] as number) * (g[start + size - 1] as number);
    if (bound < least) {
      rings.leftOut += bound;
      continue;
    }
    rings.visited += triplesOf(count, a, b, c);
    for (let t = 0; t < size; t++) {
      third[t] = (third[t] as number) + s * (g[start + t] as number);
      c0[start + t] = (c0[start + t] as number) + s * (two[t] as number);
    }
  }
  addThird(sums, rings, a, b, two, third);
}

/** What the thirds make of the pairs of kinds a ≤ b. */
function addThird(
  { size, g }: KindSums,
  rings: Open,
  a: number,
  b: number,
  two: Float64Array,
  third: Float64Array,
): void {
  const { inside, c0, c1 } = rings;
  for (let t = 0; t < size; t++) {
    const v = third[t] as number;
    const ia = a * size + t;
    const ib = b * size + t;
    inside[t] = (inside[t] as number) + v * (two[t] as number);
    c0[ia] = (c0[ia] as number) + v * (g[ib] as number);
    if (a === b) c1[ia] = (c1[ia] as number) - v;
    else c0[ib] = (c0[ib] as number) + v * (g[ia] as number);
  }
}

/** One of kind a with two of kind b. */
function addOneAndTwo(evidence: Evidence, sums: KindSums, rings: Open, a: number, b: number): void {
  const { size, g, count } = sums;
  const s = evidence.triple(a, b, b);
  rings.visited += triplesOf(count, b, b, a);
  for (let t = 0; t < size; t++) {
    const ia = a * size + t;
    const ib = b * size + t;
    const ga = g[ia] as number;
    const within = pairsWithin(sums, b, t);
    rings.inside[t] = (rings.inside[t] as number) + s * ga * within;
    rings.c0[ia] = (rings.c0[ia] as number) + s * within;
    rings.c0[ib] = (rings.c0[ib] as number) + s * ga * (g[ib] as number);
    rings.c1[ib] = (rings.c1[ib] as number) - s * ga;
  }
}

/** Three of one kind. */
function addWithin(evidence: Evidence, sums: KindSums, rings: Open, a: number): void {
  const { size, g, d, e, count } = sums;
  const s = evidence.triple(a, a, a);
  const n = count[a] as number;
  rings.visited += (n * (n - 1) * (n - 2)) / 6;
  for (let t = 0; t < size; t++) {
    const at = a * size + t;
    const ga = g[at] as number;
    const triples = (ga ** 3 - 3 * ga * (d[at] as number) + 2 * (e[at] as number)) / 6;
    rings.inside[t] = (rings.inside[t] as number) + s * triples;
    rings.c0[at] = (rings.c0[at] as number) + s * pairsWithin(sums, a, t);
    rings.c1[at] = (rings.c1[at] as number) - s * ga;
    rings.c2[at] = (rings.c2[at] as number) + s;
  }
}

/** Σ over pairs of one kind. */
function pairsWithin({ size, g, d }: KindSums, kind: number, t: number): number {
  const sum = g[kind * size + t] as number;
  return (sum * sum - (d[kind * size + t] as number)) / 2;
}

function triplesOf(count: Uint32Array, a: number, b: number, c: number): number {
  const na = count[a] as number;
  const pairs = a === b ? (na * (na - 1)) / 2 : na * (count[b] as number);
  return pairs * (count[c] as number);
}
