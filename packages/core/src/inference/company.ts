// What links add to the three rings, which are summed as if all faults were strangers.
//
// A link λ between f and g adds (λ−1)·w to the pair and to each triple that holds it. A triple with two
// or three links needs Πλ − 1 − Σ(λ−1) on top.
import type { KindSums, Rings } from "./rings.ts";
import type { Scale } from "./weigh.ts";

/**
 * Adds the links' part to `rings.inside` and, for third faults, to `rings.c0`; returns by fault, by
 * set, what the linked faults take part in on top of their polynomial.
 */
export function addLinks(
  scale: Scale,
  sums: KindSums,
  rings: Rings,
  most: 1 | 2 | 3,
): ReadonlyMap<number, Float64Array> {
  const own = new Map<number, Float64Array>();
  if (most === 1) return own;
  const vectorOf = (fault: number): Float64Array => {
    const vector = own.get(fault) ?? new Float64Array(sums.size);
    own.set(fault, vector);
    return vector;
  };
  /** By pair of kinds: Σ over its links of (λ−1)·a_f·a_g, what every third fault shares. */
  const byKinds = new Map<number, Float64Array>();
  for (const { a, b, times } of scale.links.links) {
    const two = linkedPair(scale, a, b, times - 1);
    addPair(scale, rings, most, two, [a, b], [vectorOf(a), vectorOf(b)]);
    if (most < 3) continue;
    const key =
      (scale.evidence.kindOf[a] as number) * scale.evidence.kinds +
      (scale.evidence.kindOf[b] as number);
    const sofar = byKinds.get(key);
    byKinds.set(key, sofar ? sofar.map((weight, t) => weight + (two[t] as number)) : two);
  }
  for (const [key, two] of byKinds) addThirds(scale, rings, key, two);
  if (most === 3)
    for (const chain of scale.links.chains) addChain(scale, rings, chain, chain.map(vectorOf));
  return own;
}

function linkedPair({ inside, size }: Scale, a: number, b: number, extra: number): Float64Array {
  return Float64Array.from(
    { length: size },
    (_, t) => extra * (inside[a * size + t] as number) * (inside[b * size + t] as number),
  );
}

/** The pair by itself and with any third, as seen by the two. */
function addPair(
  { evidence, inside, size, thirds }: Scale,
  rings: Rings,
  most: 2 | 3,
  two: Float64Array,
  [a, b]: readonly [number, number],
  [ofA, ofB]: readonly [Float64Array, Float64Array],
): void {
  const [ka, kb] = [evidence.kindOf[a] as number, evidence.kindOf[b] as number];
  const said = evidence.pair(ka, kb);
  const third = most === 3 ? thirds(ka, kb) : undefined;
  const [sa, sb] = third ? [evidence.triple(ka, kb, ka), evidence.triple(ka, kb, kb)] : [0, 0];
  for (let t = 0; t < size; t++) {
    const base = two[t] as number;
    let weight = base * said;
    let [ownA, ownB] = [0, 0];
    if (third) {
      // a and b are no third of their own pair; c0 will give them as much, so it is taken out again
      ownA = base * sa * (inside[a * size + t] as number);
      ownB = base * sb * (inside[b * size + t] as number);
      weight += base * (third[t] as number) - ownA - ownB;
    }
    rings.inside[t] = (rings.inside[t] as number) + weight;
    ofA[t] = (ofA[t] as number) + weight - ownA;
    ofB[t] = (ofB[t] as number) + weight - ownB;
  }
}

/** Every third fault takes part in the triples of the linked pairs. */
function addThirds({ evidence, size }: Scale, rings: Rings, key: number, two: Float64Array): void {
  const [a, b] = [Math.floor(key / evidence.kinds), key % evidence.kinds];
  for (let kind = 0; kind < evidence.kinds; kind++) {
    const said = evidence.triple(a, b, kind);
    for (let t = 0; t < size; t++) {
      const at = kind * size + t;
      rings.c0[at] = (rings.c0[at] as number) + said * (two[t] as number);
    }
  }
}

function addChain(
  { evidence, inside, links, size }: Scale,
  rings: Rings,
  [f, g, h]: readonly [number, number, number],
  own: readonly Float64Array[],
): void {
  const [fg, fh, gh] = [links.times(f, g), links.times(f, h), links.times(g, h)];
  const extra = fg * fh * gh - 1 - (fg - 1) - (fh - 1) - (gh - 1);
  const kind = (fault: number): number => evidence.kindOf[fault] as number;
  const said = extra * evidence.triple(kind(f), kind(g), kind(h));
  for (let t = 0; t < size; t++) {
    const weight =
      said *
      (inside[f * size + t] as number) *
      (inside[g * size + t] as number) *
      (inside[h * size + t] as number);
    rings.inside[t] = (rings.inside[t] as number) + weight;
    for (const vector of own) vector[t] = (vector[t] as number) + weight;
  }
}
