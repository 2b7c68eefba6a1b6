// Probabilities of answers that follow from a fault's regimes, or from how often it shows.
import type { FaultRow, FindingRow, RegimeRule, Regimes } from "../knowledge/schema.ts";

/** No regime is quite without a chance. */
const LEAST_SCORE = 0.03;

/** Distribution over the options of a choice, or the chance of a presence; undefined without a rule. */
export function fromRegimes(
  fault: FaultRow,
  finding: FindingRow,
): Readonly<Record<string, number>> | undefined {
  if (finding.byShows) {
    return Object.fromEntries(
      Object.entries(finding.byShows).map(([option, [never, always]]) => [
        option,
        never + (always - never) * fault.shows,
      ]),
    );
  }
  const rules = finding.byRegime;
  if (!rules) return undefined;
  const sharpness = finding.sharpness ?? 1;
  if (finding.kind === "presence") {
    return Object.fromEntries(
      Object.entries(rules).map(([option, rule]) => [
        option,
        sharpness * score(fault.regimes, rule) ** 2,
      ]),
    );
  }
  const scores = Object.entries(rules).map(
    ([option, rule]) =>
      [
        option,
        (rule.times ?? 1) * Math.max(LEAST_SCORE, score(fault.regimes, rule)) ** sharpness,
      ] as const,
  );
  const sum = scores.reduce((total, [, value]) => total + value, 0);
  return Object.fromEntries(scores.map(([option, value]) => [option, value / sum]));
}

function score(regimes: Regimes, rule: RegimeRule): number {
  const values = rule.of.map((regime) => regimes[regime]);
  if (rule.how === "most") return Math.max(...values);
  if (rule.how === "least") return Math.min(...values);
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
