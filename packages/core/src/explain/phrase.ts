// Probabilities as people say them.

/** "about 6 in 10", "about 1 in 20", "less than 1 in 100", "almost certain". */
export function sayProbability(probability: number): string {
  if (probability >= 0.97) return "almost certain";
  if (probability >= 0.95) return "about 19 in 20";
  if (probability >= 0.15) {
    const tenths = Math.round(probability * 10);
    return tenths >= 10 ? "almost certain" : `about ${tenths} in 10`;
  }
  if (probability < 0.005) return "less than 1 in 200";
  if (probability < 0.01) return "less than 1 in 100";
  const exact = 1 / probability;
  const step = exact < 12.5 ? 1 : exact < 60 ? 5 : 10;
  return `about 1 in ${Math.round(exact / step) * step}`;
}
