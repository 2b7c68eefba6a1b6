// What links add to the three rings, which are summed as if all faults were strangers.
//
// A link λ between f and g adds (λ−1)·w to the pair and to each triple that holds it. A triple with two
// or three links needs Πλ − 1 − Σ(λ−1) on top.
import type { Evidence } from "./evidence.ts";
import type { LinkTable } from "./link-table.ts";
import type { KindSums, Rings } from "./rings.ts";

/** Adds the links' part to `rings.inside` and `rings.c0`; returns by fault what c0 cannot hold. */
export function addLinks(
  evidence: Evidence,
  sums: KindSums,
  rings: Rings,
  table: LinkTable,
  inside: Float64Array,
  most: 1 | 2 | 3,
): ReadonlyMap<number, Float64Array> {
  const own = new Map<number, Float64Array>();
  if (most === 1) return own;
  const add = (fault: number, t: number, weight: number): void => {
    const vector = own.get(fault) ?? new Float64Array(sums.size);
    vector[t] = (vector[t] as number) + weight;
    own.set(fault, vector);
  };
  for (const { a, b, times } of table.links) {
    const third = most === 3 ? thirdOf(evidence, sums, a, b) : undefined;
    addLink(evidence, sums, rings, inside, { a, b, extra: times - 1 }, third, add);
  }
  if (most === 3)
    for (const chain of table.chains) addChain(evidence, sums, rings, table, inside, chain, add);
  return own;
}

interface Extra {
  readonly a: number;
  readonly b: number;
  readonly extra: number;
}

type Add = (fault: number, t: number, weight: number) => void;

/** By kind of the third: what the observations say of it together with a and b. */
function thirdOf(
  { kinds, kindOf, triple }: Evidence,
  _: KindSums,
  a: number,
  b: number,
): Float64Array {
  const [ka, kb] = [kindOf[a] as number, kindOf[b] as number];
  return Float64Array.from({ length: kinds }, (_, c) => triple(ka, kb, c));
}

function addLink(
  evidence: Evidence,
  { size, g }: KindSums,
  rings: Rings,
  inside: Float64Array,
  { a, b, extra }: Extra,
  third: Float64Array | undefined,
  add: Add,
): void {
  const ka = evidence.kindOf[a] as number;
  const kb = evidence.kindOf[b] as number;
  const said = evidence.pair(ka, kb);
  for (let t = 0; t < size; t++) {
    const xa = inside[a * size + t] as number;
    const xb = inside[b * size + t] as number;
    const two = extra * xa * xb;
    let weight = two * said;
    third?.forEach((s, kind) => {
      const at = kind * size + t;
      const self = (kind === ka ? xa : 0) + (kind === kb ? xb : 0);
      weight += two * s * ((g[at] as number) - self);
      rings.c0[at] = (rings.c0[at] as number) + two * s;
      // a and b are no third of their own pair: take out what c0 will give them
      if (kind === ka) add(a, t, -two * s * xa);
      if (kind === kb) add(b, t, -two * s * xb);
    });
    rings.inside[t] = (rings.inside[t] as number) + weight;
    add(a, t, weight);
    add(b, t, weight);
  }
}

function addChain(
  evidence: Evidence,
  { size }: KindSums,
  rings: Rings,
  { times }: LinkTable,
  inside: Float64Array,
  [f, g, h]: readonly [number, number, number],
  add: Add,
): void {
  const [fg, fh, gh] = [times(f, g), times(f, h), times(g, h)];
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
    for (const fault of [f, g, h]) add(fault, t, weight);
  }
}
