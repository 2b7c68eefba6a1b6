// How good are forecasts? Rank, Brier score, log loss, calibration.
//
// Ties: forecasts that are equal stand in random order; every rank figure is its expectation over that
// order. Brier scores are sums over causes, 0 to 2, not halves.

/** Probabilities of causes of which exactly one is true. */
export interface Forecast {
  readonly probabilities: ArrayLike<number>;
  readonly truth: number;
}

/** The probability of a single statement, and whether it was true. */
export interface Statement {
  readonly probability: number;
  readonly isTrue: boolean;
}

/** Part of the forecasts that have the truth among their first k. */
export function topK(forecasts: readonly Forecast[], k: number): number {
  return mean(
    forecasts.map((forecast) => {
      const { ahead, level } = standing(forecast);
      return Math.min(1, Math.max(0, (k - ahead) / level));
    }),
  );
}

/** Mean of 1 / rank of the truth. */
export function meanReciprocalRank(forecasts: readonly Forecast[]): number {
  return mean(
    forecasts.map((forecast) => {
      const { ahead, level } = standing(forecast);
      return mean(Array.from({ length: level }, (_, i) => 1 / (ahead + i + 1)));
    }),
  );
}

export function meanProbabilityOfTruth(forecasts: readonly Forecast[]): number {
  return mean(forecasts.map(ofTruth));
}

/** Brier score: Σ over causes of (probability − truth)², mean over forecasts; 0 to 2. */
export function brier(forecasts: readonly Forecast[]): number {
  return mean(
    forecasts.map(({ probabilities, truth }) =>
      total(Array.from(probabilities, (p, i) => (p - (i === truth ? 1 : 0)) ** 2)),
    ),
  );
}

/** Mean of −ln of the truth's probability; `bits` divides by ln 2. */
export function logLoss(forecasts: readonly Forecast[]): {
  readonly nats: number;
  readonly bits: number;
} {
  const nats = mean(forecasts.map((forecast) => -Math.log(ofTruth(forecast))));
  return { nats, bits: nats / Math.LN2 };
}

/** The leading cause of each forecast as a statement. */
export function leading(forecasts: readonly Forecast[]): readonly Statement[] {
  return forecasts.map(({ probabilities, truth }) => {
    const all = Array.from(probabilities);
    const first = all.indexOf(Math.max(...all));
    return { probability: all[first] as number, isTrue: first === truth };
  });
}

export interface Murphy {
  readonly brier: number;
  readonly reliability: number;
  readonly resolution: number;
  readonly uncertainty: number;
}

/**
 * Brier score of statements (0 to 1) = reliability − resolution + uncertainty, statements of equal
 * probability taken together (A. H. Murphy, Journal of Applied Meteorology 12 (1973) 595).
 */
export function murphy(statements: readonly Statement[]): Murphy {
  const base = rateOf(statements);
  const groups = new Map<number, Statement[]>();
  for (const statement of statements) {
    const group = groups.get(statement.probability) ?? [];
    groups.set(statement.probability, group);
    group.push(statement);
  }
  const weighted = (of: (p: number, rate: number) => number): number =>
    total([...groups].map(([p, group]) => group.length * of(p, rateOf(group)))) / statements.length;
  return {
    brier: mean(statements.map(({ probability, isTrue }) => (probability - Number(isTrue)) ** 2)),
    reliability: weighted((p, rate) => (p - rate) ** 2),
    resolution: weighted((_, rate) => (rate - base) ** 2),
    uncertainty: base * (1 - base),
  };
}

export interface Bin {
  /** Statements with low < probability ≤ high; the first bin holds its lower edge too. */
  readonly low: number;
  readonly high: number;
  readonly count: number;
  /** Of the statements in it; 0 where there are none. */
  readonly meanProbability: number;
  readonly rate: number;
}

/** Reliability by bins between ascending edges. */
export function reliabilityBins(
  statements: readonly Statement[],
  edges: readonly number[],
): readonly Bin[] {
  return edges.slice(1).map((high, i) => {
    const low = edges[i] as number;
    const inside = statements.filter(
      ({ probability: p }) => (p > low || (i === 0 && p === low)) && p <= high,
    );
    return {
      low,
      high,
      count: inside.length,
      meanProbability: mean(inside.map(({ probability }) => probability)),
      rate: rateOf(inside),
    };
  });
}

/** Expected calibration error: |rate − mean probability|, weighted by count. */
export function expectedCalibrationError(bins: readonly Bin[]): number {
  const count = total(bins.map((bin) => bin.count));
  return count === 0
    ? 0
    : total(bins.map((bin) => bin.count * Math.abs(bin.rate - bin.meanProbability))) / count;
}

/** Edges of n bins of equal width from 0 to 1. */
export function evenEdges(bins: number): readonly number[] {
  return Array.from({ length: bins + 1 }, (_, i) => i / bins);
}

/** How many causes are ahead of the truth, and how many stand level with it (itself too). */
function standing({ probabilities, truth }: Forecast): { ahead: number; level: number } {
  const own = probabilities[truth] as number;
  let ahead = 0;
  let level = 0;
  for (let i = 0; i < probabilities.length; i++) {
    if ((probabilities[i] as number) > own) ahead++;
    else if (probabilities[i] === own) level++;
  }
  return { ahead, level };
}

function ofTruth({ probabilities, truth }: Forecast): number {
  return probabilities[truth] as number;
}

function rateOf(statements: readonly Statement[]): number {
  return mean(statements.map(({ isTrue }) => Number(isTrue)));
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : total(values) / values.length;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
