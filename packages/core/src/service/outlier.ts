// Which of a few numbers stands apart from the rest? B. Iglewicz and D. C. Hoaglin, "How to Detect and
// Handle Outliers" (ASQC Quality Press, 1993): median and median deviation do not follow the one that is
// off, as mean and standard deviation would.

/** The median deviation of a normal distribution, in standard deviations. */
const MAD_OF_NORMAL = 0.6745;

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const [low = Number.NaN, high = low] = sorted.slice(
    Math.ceil(sorted.length / 2) - 1,
    Math.floor(sorted.length / 2) + 1,
  );
  return (low + high) / 2;
}

/** Median distance from the median (MAD). */
export function deviation(values: readonly number[]): number {
  const middle = median(values);
  return median(values.map((value) => Math.abs(value - middle)));
}

/**
 * Modified z-scores 0.6745·(x − median)/MAD. The spread is never taken as less than the instrument's own
 * standard deviation: where most values are equal, MAD is 0 and the smallest difference would stand out.
 *
 * @param instrument standard deviation of one reading, above 0, in the unit of the values
 */
export function modifiedScores(values: readonly number[], instrument: number): readonly number[] {
  const middle = median(values);
  const spread = Math.max(deviation(values) / MAD_OF_NORMAL, instrument);
  return values.map((value) => (value - middle) / spread);
}
