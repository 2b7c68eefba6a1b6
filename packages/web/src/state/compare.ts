// In what do two cases differ? Their answers held against one another, question by question.
import {
  type Answer,
  type Engine,
  type Finding,
  type FindingRow,
  servesAll,
} from "@half-order/core";

/** A question that the two do not answer alike; missing: not answered there. */
export interface Difference extends Pick<Finding, "finding" | "cylinder"> {
  readonly answers: readonly [Answer | undefined, Answer | undefined];
}

export interface Comparison {
  /** In the order of the first case, then what only the second one answers. */
  readonly differences: readonly Difference[];
  /** Questions that both answer alike. */
  readonly alike: number;
}

export function compared(a: readonly Finding[], b: readonly Finding[]): Comparison {
  const [here, there] = [byQuestion(a), byQuestion(b)];
  const keys = [...new Set([...here.keys(), ...there.keys()])];
  const pairs = keys.map((key) => [here.get(key), there.get(key)] as const);
  const differences = pairs.flatMap(([own, other]): readonly Difference[] => {
    const question = own ?? other;
    if (!question || (own && other && isAlike(own.answer, other.answer))) return [];
    const { finding, cylinder } = question;
    const at = cylinder === undefined ? {} : { cylinder };
    return [{ finding, ...at, answers: [own?.answer, other?.answer] }];
  });
  return { differences, alike: pairs.length - differences.length };
}

/** The findings with no cylinder where their thing serves the whole engine, at whichever it was noted. */
export function atWhole(
  findings: readonly Finding[],
  rowOf: (id: string) => FindingRow | undefined,
  engine: Engine,
): readonly Finding[] {
  return findings.map((given) => {
    const row = rowOf(given.finding);
    const { cylinder, ...rest } = given;
    return row && servesAll(engine, row.scope, cylinder) ? rest : given;
  });
}

/** Of two answers to one question the later holds. */
function byQuestion(findings: readonly Finding[]): ReadonlyMap<string, Finding> {
  return new Map(findings.map((each) => [`${each.finding} ${each.cylinder ?? ""}`, each]));
}

/** The order of several options, of codes and of counts says nothing. */
function isAlike(a: Answer, b: Answer): boolean {
  return JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}

function sorted(answer: Answer): unknown {
  if (Array.isArray(answer)) return [...answer].sort();
  return typeof answer === "object" ? Object.entries(answer).sort(byName) : answer;
}

function byName([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number {
  return a < b ? -1 : 1;
}
