// Probabilities, odds and decibans. A deciban is 10·log10 of an odds ratio (I. J. Good,
// "Weight of evidence: a brief survey", 1985).

/** No probability in the knowledge is nearer to 0 or 1 than this: a zero can never be argued away. */
export const PROBABILITY_FLOOR = 0.001;

/** Odds of a probability in (0, 1). */
export function odds(probability: number): number {
  return probability / (1 - probability);
}

/** Decibans (dB) of a ratio of probabilities or odds. */
export function decibans(ratio: number): number {
  return 10 * Math.log10(ratio);
}

/** Keeps a probability off 0 and 1 by the floor. */
export function floored(probability: number): number {
  return Math.min(1 - PROBABILITY_FLOOR, Math.max(PROBABILITY_FLOOR, probability));
}

/** Entropy in bits of a distribution given as weights that need not add up to one. */
export function entropyBits(weights: Iterable<number>): number {
  let total = 0;
  let sum = 0;
  for (const w of weights) {
    if (w <= 0) continue;
    total += w;
    sum += w * Math.log2(w);
  }
  return total > 0 ? Math.max(0, Math.log2(total) - sum / total) : 0;
}
