// What may a person answer next? Its rankings are worked out while the question is still being read, so that
// the one that is asked for already stands.
import { type Answer, type EngineProfile, type FindingRow, findingFor } from "@half-order/core";
import { firstQuestions } from "./state/asked.ts";
import { codeOf } from "./state/code.ts";
import type { Question } from "./state/thinker.ts";

/** The same question with each answer to the first question that comes after those answered. */
export function nextQuestions({ findings, ...of }: Question): readonly Question[] {
  const row = rowAfter(of.profile, new Set(findings.map(({ finding }) => finding)));
  if (!row) return [];
  return answersTo(of.profile, row).map((answer) => ({
    ...of,
    findings: [...findings, { finding: row.id, answer }],
  }));
}

function rowAfter(profile: EngineProfile, asked: ReadonlySet<string>): FindingRow | undefined {
  const first = firstQuestions(profile);
  return first[first.findLastIndex(({ id }) => asked.has(id)) + 1];
}

/** Of what takes several taps none and each by itself. */
function answersTo(profile: EngineProfile, row: FindingRow): readonly Answer[] {
  const options = Object.keys(findingFor(profile, row).options);
  switch (row.kind) {
    case "choice":
      return options;
    case "several":
      return [[], ...options.map((option) => [option])];
    case "codes":
      return [[], ...Array.from({ length: profile.cylinders }, (_, c) => [codeOf(c) ?? ""])];
    default:
      return [];
  }
}
