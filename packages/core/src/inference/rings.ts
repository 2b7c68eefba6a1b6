// The three rings (singles, pairs, triples) summed in closed form over kinds of faults.
//
// Per set T (see lattice.ts) let a_f be the numbers of the faults and, per kind, G = Σa, D = Σa², E = Σa³;
// let s be what the observations say of kinds together. What one fault f of kind A takes part in is
// a_f·(c0 + c1·a_f + c2·a_f²), where the last two take f out of its own company:
//
//   alone      c0 = s_A
//   pairs      c0 = Σ_B s_AB·G_B                                  c1 = −s_AA
//   triples    c0 = (Σ_B G_B·V_AB − Σ_B s_ABB·D_B) / 2            c1 = −V_AA       c2 = s_AAA
//              with V_AB = Σ_C s_ABC·G_C
//
// and the weight of all hypotheses of k faults is Σ_A (G·c0 + D·c1 + E·c2) / k. No hypothesis is visited
// one by one.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import type { Evidence } from "./evidence.ts";
import { sumOverSubsets } from "./lattice.ts";

export interface Rings {
  /** By set: weight of all hypotheses whose union lies inside it, without that set's likelihood. */
  readonly inside: Float64Array;
  /** [kind·size + T]: the polynomial that gives what one fault takes part in. */
  readonly c0: Float64Array;
  readonly c1: Float64Array;
  readonly c2: Float64Array;
  /** Upper bound on the weight left out. */
  readonly leftOut: number;
}

/** Faults that can have company, summed by kind. */
export interface KindSums {
  readonly size: number;
  /** [kind·size + T]. */
  readonly g: Float64Array;
  readonly d: Float64Array;
  readonly e: Float64Array;
  /** By kind: the sets its faults reach, each with odds times chance; random left out. */
  readonly reached: readonly (readonly (readonly [set: number, weight: number])[])[];
}

export interface RingOptions {
  /** Faults together at most. */
  readonly most: 1 | 2 | 3;
  /** Weight that triples may leave out. */
  readonly allowed: number;
  /** Largest likelihood of any set. */
  readonly bestSet: number;
}

/** V_AB, by set; remembered by pair of kinds. */
export type ThirdSums = (a: number, b: number) => Float64Array;

export function kindSums(
  model: DiagnosisModel,
  { kinds, kindOf }: Evidence,
  inside: Float64Array,
  size: number,
): KindSums {
  const g = new Float64Array(kinds * size);
  const d = new Float64Array(kinds * size);
  const e = new Float64Array(kinds * size);
  const reached = Array.from({ length: kinds }, () => new Map<number, number>());
  for (let f = 0; f < model.faults; f++) {
    if (model.alone[f]) continue;
    const kind = kindOf[f] as number;
    for (let t = 0; t < size; t++) {
      const a = inside[f * size + t] as number;
      const at = kind * size + t;
      g[at] = (g[at] as number) + a;
      d[at] = (d[at] as number) + a * a;
      e[at] = (e[at] as number) + a * a * a;
    }
    addReached(model, f, size - 1, reached[kind] as Map<number, number>);
  }
  return { size, g, d, e, reached: reached.map((sets) => [...sets]) };
}

function addReached(
  model: DiagnosisModel,
  f: number,
  random: number,
  sets: Map<number, number>,
): void {
  for (let a = model.atomStart[f] as number; a < (model.atomStart[f + 1] as number); a++) {
    const set = model.atomSet[a] as number;
    if (set === random) continue;
    const weight = (model.odds[f] as number) * (model.atomChance[a] as number);
    sets.set(set, (sets.get(set) ?? 0) + weight);
  }
}

/** Adds up over the sets that are reached, which are few, before it goes to all sets. */
export function thirdSums({ kinds, triple }: Evidence, { size, g, reached }: KindSums): ThirdSums {
  const any = size - 1;
  const known = new Map<number, Float64Array>();
  return (a, b) => {
    const key = Math.min(a, b) * kinds + Math.max(a, b);
    const before = known.get(key);
    if (before) return before;
    const sum = new Float64Array(size);
    for (let c = 0; c < kinds; c++) {
      const said = triple(a, b, c);
      for (const [set, weight] of reached[c] ?? []) {
        sum[set] = (sum[set] as number) + said * weight;
      }
      sum[any] = (sum[any] as number) + said * (g[c * size + any] as number);
    }
    sumOverSubsets(sum);
    known.set(key, sum);
    return sum;
  };
}

/** Sums singles, pairs and triples of faults that can have company. */
export function sumRings(
  evidence: Evidence,
  sums: KindSums,
  thirds: ThirdSums,
  options: RingOptions,
): Rings {
  const { kinds } = evidence;
  const { size } = sums;
  const rings = {
    inside: new Float64Array(size),
    c0: new Float64Array(kinds * size),
    c1: new Float64Array(kinds * size),
    c2: new Float64Array(kinds * size),
    leftOut: 0,
  };
  addRing(sums, rings, 1, (ring) => singles(evidence, sums, ring));
  if (options.most >= 2) addRing(sums, rings, 2, (ring) => pairs(evidence, sums, ring));
  if (options.most >= 3) {
    addRing(sums, rings, 3, (ring) => {
      rings.leftOut = triples(evidence, sums, thirds, options, ring);
    });
  }
  return rings;
}

interface Polynomial {
  readonly c0: Float64Array;
  readonly c1: Float64Array;
  readonly c2: Float64Array;
}

/** Lets one ring fill its polynomials and adds it to the sum of all. */
function addRing(
  { size, g, d, e }: KindSums,
  rings: Rings,
  members: number,
  fill: (ring: Polynomial) => void,
): void {
  const length = rings.c0.length;
  const ring = {
    c0: new Float64Array(length),
    c1: new Float64Array(length),
    c2: new Float64Array(length),
  };
  fill(ring);
  for (let at = 0; at < length; at++) {
    const [c0, c1, c2] = [ring.c0[at] as number, ring.c1[at] as number, ring.c2[at] as number];
    const weight = (g[at] as number) * c0 + (d[at] as number) * c1 + (e[at] as number) * c2;
    const t = at % size;
    rings.inside[t] = (rings.inside[t] as number) + weight / members;
    rings.c0[at] = (rings.c0[at] as number) + c0;
    rings.c1[at] = (rings.c1[at] as number) + c1;
    rings.c2[at] = (rings.c2[at] as number) + c2;
  }
}

function singles({ kinds, solo }: Evidence, { size }: KindSums, { c0 }: Polynomial): void {
  for (let a = 0; a < kinds; a++) c0.fill(solo[a] as number, a * size, (a + 1) * size);
}

function pairs({ kinds, pair }: Evidence, { size, g }: KindSums, { c0, c1 }: Polynomial): void {
  for (let a = 0; a < kinds; a++) {
    for (let b = a; b < kinds; b++) {
      const said = pair(a, b);
      if (a === b) c1.fill(-said, a * size, (a + 1) * size);
      addTimes(c0, a, said, g, b, size);
      if (a !== b) addTimes(c0, b, said, g, a, size);
    }
  }
}

/** to[a] += factor·from[b], kind by kind. */
function addTimes(
  to: Float64Array,
  a: number,
  factor: number,
  from: Float64Array,
  b: number,
  size: number,
): void {
  const [ia, ib] = [a * size, b * size];
  for (let t = 0; t < size; t++) {
    to[ia + t] = (to[ia + t] as number) + factor * (from[ib + t] as number);
  }
}

/** Returns a bound on the weight of the pairs of kinds that were left out as too light. */
function triples(
  evidence: Evidence,
  { size, g, d }: KindSums,
  thirds: ThirdSums,
  { allowed, bestSet }: RingOptions,
  { c0, c1, c2 }: Polynomial,
): number {
  const { kinds, triple } = evidence;
  const any = size - 1;
  const least = allowed / ((kinds * (kinds + 1)) / 2);
  let leftOut = 0;
  for (let a = 0; a < kinds; a++) {
    c2.fill(triple(a, a, a), a * size, (a + 1) * size);
    for (let b = a; b < kinds; b++) {
      const two = (g[a * size + any] as number) * (g[b * size + any] as number);
      const bound = two * bestSet * heaviestThird(evidence, g, size, a, b);
      if (a !== b && bound < least) {
        leftOut += bound;
        continue;
      }
      const v = thirds(a, b);
      addHalf(c0, a, v, g, b, size);
      addTimes(c0, a, -triple(a, b, b) / 2, d, b, size);
      if (a !== b) {
        addHalf(c0, b, v, g, a, size);
        addTimes(c0, b, -triple(a, a, b) / 2, d, a, size);
        continue;
      }
      for (let t = 0; t < size; t++) c1[a * size + t] = -(v[t] as number);
    }
  }
  return leftOut;
}

/** V_AB with every third at its full odds. */
function heaviestThird(
  { kinds, triple }: Evidence,
  g: Float64Array,
  size: number,
  a: number,
  b: number,
): number {
  let sum = 0;
  for (let c = 0; c < kinds; c++) sum += triple(a, b, c) * (g[c * size + size - 1] as number);
  return sum;
}

/** to[a] += v·from[b] / 2, set by set. */
function addHalf(
  to: Float64Array,
  a: number,
  v: Float64Array,
  from: Float64Array,
  b: number,
  size: number,
): void {
  const [ia, ib] = [a * size, b * size];
  for (let t = 0; t < size; t++) {
    to[ia + t] = (to[ia + t] as number) + ((v[t] as number) * (from[ib + t] as number)) / 2;
  }
}
