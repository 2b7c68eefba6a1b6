// The only source of chance in core: seeded, so that every draw can be made again.
//
// xoshiro128** (D. Blackman & S. Vigna, "Scrambled linear pseudorandom number generators", ACM
// Transactions on Mathematical Software 47 (2021) 36): 32-bit words, period 2^128 − 1. The seed is spread
// over the state by SplitMix in its 32-bit form, so that neighbouring seeds give unlike streams.

/** A stream of draws; each call moves it on. */
export interface Random {
  /** Whole number 0 … 2^32 − 1. */
  readonly word: () => number;
  /** 0 ≤ u < 1, in steps of 2^−53. */
  readonly uniform: () => number;
  /** Normal with mean 0 and standard deviation 1. */
  readonly normal: () => number;
  /** Index drawn in proportion to weights ≥ 0, at least one of them above 0. */
  readonly choice: (weights: ArrayLike<number>) => number;
}

/** The stream of a seed (a whole number; its lowest 32 bits count). */
export function randomOf(seed: number): Random {
  return randomFrom(spread(seed));
}

/** The stream of a state of four words, not all zero; for holding it against published outputs. */
export function randomFrom(state: readonly [number, number, number, number]): Random {
  const word = xoshiro(state);
  const uniform = (): number => (word() * 2 ** 21 + (word() >>> 11)) / 2 ** 53;
  return { word, uniform, normal: () => normal(uniform), choice: (of) => choice(of, uniform()) };
}

function xoshiro(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return result;
  };
}

function rotate(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

function spread(seed: number): [number, number, number, number] {
  let x = seed | 0;
  const next = (): number => {
    x = (x + 0x9e3779b9) | 0;
    let z = Math.imul(x ^ (x >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return z ^ (z >>> 15);
  };
  return [next(), next(), next(), next()];
}

/** G. E. P. Box & M. E. Muller, Annals of Mathematical Statistics 29 (1958) 610; one of the pair. */
function normal(uniform: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

function choice(weights: ArrayLike<number>, u: number): number {
  let rest = u * Array.from(weights).reduce((sum, weight) => sum + weight, 0);
  let last = -1;
  for (let i = 0; i < weights.length; i++) {
    const weight = weights[i] as number;
    if (!(weight > 0)) continue;
    last = i;
    rest -= weight;
    if (rest < 0) return i;
  }
  if (last < 0) throw new Error("choice: no weight is above 0");
  return last;
}
