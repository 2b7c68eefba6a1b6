// Misfire counts by cylinder: what they tell of the cylinders that really miss.
import { COUNTS_FROM_MISFIRE } from "../knowledge/code.ts";
import { randomSet } from "../model/diagnosis-model.ts";
import { bits } from "./pattern.ts";

/**
 * Chance of the counts given the set that really misses: a Dirichlet-multinomial on each cylinder's
 * share of the counts. (Its coefficient is the same for every set; without it thousands of counts
 * would round every chance to zero.)
 *
 * @param counts by cylinder index, whole numbers ≥ 0
 */
export function countsLikelihood(counts: readonly number[]): (set: number) => number {
  const rule = COUNTS_FROM_MISFIRE;
  const total = counts.reduce((sum, count) => sum + count, 0);
  const isLittle = total < rule.fewest;
  return (set) => {
    const little = set === 0 ? rule.littleCounted.nothing : rule.littleCounted.misfire;
    if (isLittle) return little;
    const weights = counts.map(
      (_, cylinder) => rule.firmness * expectedShare(set, cylinder, counts.length),
    );
    return (1 - little) * Math.exp(logDirichletMultinomial(counts, weights));
  };
}

/** Share of the counts that a cylinder is expected to take. */
export function expectedShare(set: number, cylinder: number, cylinders: number): number {
  const missing = set === randomSet(cylinders) ? 0 : bits(set);
  if (missing === 0 || missing === cylinders) return 1 / cylinders;
  const isHit = Math.floor(set / 2 ** cylinder) % 2 === 1;
  return isHit
    ? (1 - COUNTS_FROM_MISFIRE.strays) / missing
    : COUNTS_FROM_MISFIRE.strays / (cylinders - missing);
}

/** ln of N!/Π n! · Γ(A)/Γ(A+N) · Π Γ(α+n)/Γ(α), the Pólya distribution. */
function logDirichletMultinomial(counts: readonly number[], weights: readonly number[]): number {
  const total = counts.reduce((sum, count) => sum + count, 0);
  const firmness = weights.reduce((sum, weight) => sum + weight, 0);
  let log = logRising(1, total) - logRising(firmness, total);
  counts.forEach((count, cylinder) => {
    log += logRising(weights[cylinder] ?? 0, count) - logRising(1, count);
  });
  return log;
}

/** ln of the rising factorial x(x+1)…(x+n−1) = Γ(x+n)/Γ(x). */
function logRising(x: number, n: number): number {
  if (n === 0) return 0;
  if (n < 64) {
    let log = 0;
    for (let i = 0; i < n; i++) log += Math.log(x + i);
    return log;
  }
  return logGamma(x + n) - logGamma(x);
}

/** ln Γ(x) for x > 0 by Stirling's series after shifting x above 12 (error below 1e-12). */
function logGamma(x: number): number {
  let shift = 0;
  let y = x;
  while (y < 12) {
    shift += Math.log(y);
    y++;
  }
  const inverse = 1 / (y * y);
  const series = (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse / 1680))) / y;
  return (y - 0.5) * Math.log(y) - y + 0.5 * Math.log(2 * Math.PI) + series - shift;
}
