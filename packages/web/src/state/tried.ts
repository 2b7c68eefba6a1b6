// Do two things that were tried speak against one another? A misfire travels with one part only, and at two places
// the same exchange should tell the same.
import type { Finding, FindingRow } from "@half-order/core";

/** What moved with two parts, or moved here and stayed there. */
export type Disagreement = "two-parts" | "two-places";

/** Of what was exchanged; `of`: only where one of these findings has a part in it. */
export function disagreement(
  findings: readonly Finding[],
  rowOf: (id: string) => FindingRow | undefined,
  of?: readonly string[],
): Disagreement | undefined {
  const tries = findings.filter(({ finding }) => rowOf(finding)?.travels !== undefined);
  const hasMoved = ({ finding, answer }: Finding): boolean => answer === rowOf(finding)?.travels;
  const counts = (a: Finding, b: Finding): boolean =>
    !of || of.includes(a.finding) || of.includes(b.finding);
  const pairs = tries.flatMap((a, i) =>
    tries.slice(i + 1).flatMap((b) => (counts(a, b) ? [[a, b] as const] : [])),
  );
  const isTwoParts = pairs.some(
    ([a, b]) => a.cylinder === b.cylinder && a.finding !== b.finding && hasMoved(a) && hasMoved(b),
  );
  if (isTwoParts) return "two-parts";
  const isTwoPlaces = pairs.some(
    ([a, b]) => a.finding === b.finding && hasMoved(a) !== hasMoved(b),
  );
  return isTwoPlaces ? "two-places" : undefined;
}
